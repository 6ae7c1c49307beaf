// A figure at every temperature and no blank cell without a reason.
#include "core/evaluate/candidate.hpp"
#include "core/evaluate/evaluate.hpp"
#include "questions/rank/rank.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <set>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

RankResult ranked(const std::string& goal, double kelvin) {
    RankRequest request;
    request.goal.goal = goal;
    request.conditions.temperature_K = kelvin;
    request.samples = 0;
    return *rank(real_catalogue(), request);
}

std::set<std::string> slugs(const RankResult& r) {
    std::set<std::string> out;
    for (const auto& place : r.ranked) out.insert(place.metal->slug);
    return out;
}

bool brakes_there(const Metal& m, double kelvin) {
    const Catalogue& c = real_catalogue();
    return phase_at(c, m, kelvin) == Phase::solid && superconducting_at(c, m, kelvin).empty() &&
           !ferromagnetic_at(c, m, kelvin);
}

} // namespace

TEST_CASE("law: what ranks at 20 degC ranks wherever it is solid, not superconducting and not ferromagnetic") {
    const std::set<std::string> at_room = slugs(ranked("strongest-brake", 293.15));
    REQUIRE(at_room.size() > 100);
    CHECK(slugs(ranked("strongest-brake", 298.15)).size() >= at_room.size());
    for (const char* goal : {"strongest-brake", "braking-per-cost", "braking-per-mass"}) {
        const std::set<std::string> room = slugs(ranked(goal, 293.15));
        for (const double kelvin : {4.0, 77.0, 194.65, 373.15, 473.15, 673.15}) {
            const RankResult there = ranked(goal, kelvin);
            const std::set<std::string> now = slugs(there);
            for (const std::string& slug : room) {
                INFO(goal << " at " << kelvin << " K: " << slug);
                CHECK(now.contains(slug) == brakes_there(*real_catalogue().metal(slug), kelvin));
            }
            for (const LeftOut& out : there.excluded) CHECK_FALSE(out.reason.empty());
        }
    }
}

TEST_CASE("law: sheets answer at least 98 % of fourteen core questions, each with its basis") {
    constexpr std::array core = {"resistivity",
                                 "conductivity",
                                 "temperature_coefficient",
                                 "thermal_conductivity",
                                 "density",
                                 "density_liquid",
                                 "solidus",
                                 "liquidus",
                                 "latent_heat",
                                 "specific_heat",
                                 "linear_expansion",
                                 "solidification_contraction",
                                 "pouring_temperature",
                                 "contraction_allowance"};
    std::size_t answered = 0, asked = 0;
    for (const Metal& m : real_catalogue().metals)
        for (const char* property : core) {
            const Result<Evaluated> e = evaluate(real_catalogue(), m, property, {});
            ++asked;
            answered += static_cast<bool>(e);
            if (!e) CHECK_FALSE(e.problem().text.empty());
            if (e && e->basis != Basis::cited) {
                INFO(m.slug << " " << property);
                CHECK_FALSE(e->law.empty());
            }
        }
    INFO(answered << " of " << asked);
    CHECK(static_cast<double>(answered) >= 0.98 * static_cast<double>(asked));
}

TEST_CASE("law: a carried or estimated figure never hides a cited one") {
    const Catalogue& c = real_catalogue();
    for (const Metal& m : c.metals)
        for (const Property& p : c.properties) {
            Conditions cited_only;
            cited_only.cited_only = true;
            const Result<Evaluated> cited = evaluate(c, m, p.id, cited_only), any = evaluate(c, m, p.id, {});
            if (!cited || p.is_text || cited->basis != Basis::cited) continue;
            INFO(m.slug << " " << p.id);
            REQUIRE(any);
            CHECK(any->basis == Basis::cited);
        }
}

TEST_CASE("law: no headline is coarser in print than an equally good record beside it") {
    const Catalogue& c = real_catalogue();
    const Conditions conditions;
    for (const Metal& m : c.metals)
        for (const Property& p : c.properties) {
            if (p.is_text || p.id == "price" || p.id == "metal_value" || p.id == "conductivity") continue;
            const Question q{c,         m, p, p.varies_with_temperature ? Phase::solid : p.phase, room_temperature_K,
                             conditions};
            const std::vector<Candidate> all = candidates(q);
            for (std::size_t i = 1; i < all.size(); ++i) {
                const bool as_good = all[i].fit == all[0].fit && all[i].record->use == all[0].record->use &&
                                     all[i].cover == all[0].cover &&
                                     all[i].record->citation.how_known == all[0].record->citation.how_known &&
                                     (all[i].record->note.find("near grade") == std::string::npos);
                INFO(m.slug << " " << p.id << ": " << all[0].record->id << " before " << all[i].record->id);
                if (as_good) CHECK(coarseness(all[0]) <= coarseness(all[i]));
            }
        }
}
