// Laws of versus: what its answer must hold whatever the metals, the goal and the temperature are.
#include "questions/rank/versus.hpp"
#include "questions/rank/deciding.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <random>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

bool says_no_number(const std::string& sentence) {
    std::string word;
    for (const char c : sentence + " ") {
        if (std::isalpha(static_cast<unsigned char>(c))) {
            word += c;
            continue;
        }
        if (word == "inf" || word == "nan") return true;
        word.clear();
    }
    return false;
}

/// The worse metal's merit once it has the better one's figure; solidus and liquidus go together.
double with_figure_of_better(const Merit& merit, const VersusResult& r, const std::string& property) {
    std::vector<double> values = nominal(r.worse.inputs);
    const bool range = property == "liquidus" && has_melting_range(r.worse.inputs);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const std::string& id = r.worse.inputs[i].property;
        if (id == property || (range && id == "solidus")) values[i] = r.better.inputs[i].value.value_si;
    }
    return merit.value(values);
}

void check_reasons(const GoalPlan& plan, const VersusResult& r) {
    if (!r.deciding.empty()) CHECK(plan.worse(r.worse.merit, with_figure_of_better(plan.merit, r, r.deciding)));
    for (const std::string& against : r.in_spite_of) {
        CHECK(plan.worse(with_figure_of_better(plan.merit, r, against), r.worse.merit));
        CHECK(r.reason.find(r.tie ? "against it" : "in spite of") != std::string::npos);
        CHECK(against != r.deciding);
    }
}

void check_margin(const VersusResult& r) {
    if (std::isnan(r.ratio_median)) {
        CHECK(std::isfinite(r.difference_low90));
        CHECK((r.difference_low90 <= r.difference_median && r.difference_median <= r.difference_high90));
        CHECK(r.difference_median >= 0);
        return;
    }
    CHECK((r.ratio_low90 > 0 && std::isfinite(r.ratio_high90)));
    CHECK((r.ratio_low90 <= r.ratio_median && r.ratio_median <= r.ratio_high90));
    CHECK(r.ratio_median >= 1);
    CHECK(std::isnan(r.difference_median));
}

/// POURBOOK_VERSUS=10000 for the campaign.
int asked_for() {
    const char* n = std::getenv("POURBOOK_VERSUS");
    return n ? std::atoi(n) : 500;
}

} // namespace

TEST_CASE("law: 500 random versus say no inf or nan, no negative ratio, and no reason that counts against the winner") {
    const Catalogue& c = real_catalogue();
    std::mt19937 random(18); // its numbers are the same everywhere; distributions are not
    const auto pick = [&](std::size_t n) { return random() % n; };
    int answered = 0, refused = 0, by_difference = 0;
    const int wanted = asked_for();
    while (answered < wanted && refused < 10 * wanted) {
        VersusRequest q{c.metals[pick(c.metals.size())].slug, c.metals[pick(c.metals.size())].slug, {}, {}, 200, 1};
        const Goal& goal = c.goals[pick(c.goals.size())];
        q.goal.goal = goal.id;
        if (needs_setup(c, q.goal)) continue; // asks for a magnet and a tube
        q.conditions.temperature_K = std::array{77.355, 200.0, 293.15, 423.15}[pick(4)];
        const Result<VersusResult> r = versus(c, q);
        ++(r ? answered : refused);
        if (!r || q.a == q.b) continue;
        INFO(q.a << " " << q.b << " " << goal.id << " " << q.conditions.temperature_K << ": " << r->sentence);
        CHECK_FALSE(says_no_number(r->sentence));
        CHECK(r->p_winner >= 0.5);
        check_margin(*r);
        check_reasons(*plan_goal(c, q.goal), *r);
        by_difference += std::isnan(r->ratio_median) ? 1 : 0;
    }
    WARN(answered << " answered, " << refused << " refused, " << by_difference << " by a difference");
    CHECK(answered == wanted);
    CHECK(by_difference > wanted / 25); // both kinds of margin were met
    CHECK(by_difference < wanted * 4 / 5);
}
