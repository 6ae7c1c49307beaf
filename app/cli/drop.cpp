#include "cli/context.hpp"

#include "answers/drop/against_report.hpp"
#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"
#include "cli/setup_words.hpp"

namespace pourbook {
namespace {

struct DropWords {
    DropRequest request;
    DropRequest against; // what is different in the second set-up
    std::string against_at, against_condition;
};

void with_against(CLI::App* c, DropWords& words) {
    SetupWords& s = words.against.setup;
    const auto add = [&](const char* option, std::string& word, const char* help) {
        c->add_option(option, word, help)->group("A second set-up, the same but for");
    };
    add("--against-tube", s.tube, "another tube, ID:OD:LENGTH");
    add("--against-metal", words.against.metal, "another metal");
    add("--against-resistivity", words.against.resistivity, "another resistivity or conductivity");
    add("--against-magnet", s.magnet, "another magnet");
    add("--against-grade", s.grade, "another grade");
    add("--against-br", s.br, "another remanence");
    add("--against-magnet-mass", s.magnet_mass, "another mass of the magnet");
    add("--against-slits", s.slits, "another number of slits");
    add("--against-at", words.against_at, "another temperature of the tube");
    add("--against-condition", words.against_condition, "another condition of the metal");
}

void replace(std::string& word, const std::string& other) {
    if (!other.empty()) word = other;
}

/// The first set-up with what was said to be different.
DropRequest second_of(const DropWords& words) {
    DropRequest r = words.request;
    const SetupWords& s = words.against.setup;
    if (!words.against.metal.empty() || !words.against.resistivity.empty()) {
        r.metal = words.against.metal;
        r.resistivity = words.against.resistivity;
    }
    if (!s.grade.empty() || !s.br.empty()) {
        r.setup.grade = s.grade;
        r.setup.br = s.br;
        r.setup.surface_field.clear();
    }
    if (!s.magnet.empty()) r.setup.magnet_mass.clear(); // another magnet, another mass
    replace(r.setup.magnet, s.magnet);
    replace(r.setup.magnet_mass, s.magnet_mass);
    replace(r.setup.tube, s.tube);
    replace(r.setup.slits, s.slits);
    return r;
}

bool asks_for_two(const DropWords& words) {
    const DropRequest& a = words.against;
    return !(a.setup == SetupWords{} && a.metal.empty() && a.resistivity.empty() && words.against_at.empty() &&
             words.against_condition.empty());
}

Result<AgainstRequest> two_of(const DropWords& words, ConditionWords conditions) {
    AgainstRequest r{words.request, second_of(words)};
    replace(conditions.at, words.against_at);
    replace(conditions.condition, words.against_condition);
    const Result<Conditions> second = conditions_from(conditions);
    if (!second) return second.problem();
    r.second.conditions = *second;
    return r;
}

int answer_drop(const Context& context, const Catalogue& catalogue, const DropWords& words) {
    if (!asks_for_two(words))
        return context.answered(
            drop(catalogue, words.request), [&](const DropResult& r) { return json_of(r, catalogue); },
            [&](const DropResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
    const Result<AgainstRequest> two = two_of(words, context.words);
    if (!two) return context.failed(two.problem());
    return context.answered(
        against(catalogue, *two), [&](const AgainstResult& r) { return json_of(r, catalogue); },
        [&](const AgainstResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
}

} // namespace

void declare_drop(Context& context) {
    auto words = std::make_shared<DropWords>();
    DropRequest& request = words->request;
    CLI::App* c = context.command("drop", "how long a magnet falls through a tube, or through either of two");
    with_setup(c, request.setup);
    with_tube_metal(c, request.metal, request.resistivity);
    c->add_option("--samples", request.samples, "samples for the interval (default 1000)")
        ->check(CLI::Range(10, 100000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    with_against(c, *words);
    context.with_conditions(c);
    context.metal_words.insert(context.metal_words.end(), {&request.metal, &words->against.metal});
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                return answer_drop(context, catalogue, *words);
            });
    });
}

} // namespace pourbook
