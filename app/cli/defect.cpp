#include "cli/context.hpp"

#include "answers/pour/defect_report.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/workshop/own_pour.hpp"

namespace pourbook {
namespace {

struct WhatWasSeen {
    std::vector<std::string> words;
    Stated plan = Stated(pour_question()); // of the part that went wrong; no metal: none
};

/// A field of pour's as an option here, with a help of its own.
CLI::Option* with_field(CLI::App* c, Stated& plan, const std::string& name, const std::string& help) {
    return c->add_option_function<std::string>(
        "--" + name, [&plan, name](const std::string& text) { plan.set(name, text); }, help);
}

int answer_defect(const Context& context, const WhatWasSeen& asked, const Catalogue& catalogue) {
    std::string all;
    for (const std::string& word : asked.words) all += (all.empty() ? "" : " ") + word;
    const auto found = defects(catalogue, all);
    if (!asked.plan.states("metal"))
        return context.answered(
            found, [](const auto& list) { return json_of(list); },
            [](const auto& list, UnitSystem) { return text_of(list); });
    const Result<PourRequest> request = pour_request_from(asked.plan, context.read_mesh, catalogue);
    if (!request) return context.failed(request.problem());
    const Result<PourResult> plan =
        pour_in_workshop(catalogue, with_own_pour(catalogue, *request, context.own), context.own);
    if (!plan) return context.failed(plan.problem());
    return context.answered(
        found, [&](const auto& list) { return json_of(list, &*plan); },
        [&](const auto& list, UnitSystem) { return text_of(list, &*plan); });
}

} // namespace

void declare_defect(Context& context) {
    auto asked = std::make_shared<WhatWasSeen>();
    CLI::App* c = context.command("defect", "what was seen on a casting, and what to change next time");
    c->add_option("SEEN", asked->words, "what was seen, in your words: sunk top, crack at a corner, pinholes ...");
    with_field(c, asked->plan, "metal", "with --part: what the plan of that casting says on it");
    c->add_option_function<Texts>(
        "--part", [plan = &asked->plan](const Texts& parts) { plan->set_all("part", parts); },
        "the part, as in `pourbook pour`");
    with_field(c, asked->plan, "process", "shell (default), sand, plaster, permanent")
        ->check(CLI::IsMember({"shell", "sand", "plaster", "permanent"}));
    with_field(c, asked->plan, "mould-temperature", "as it was poured");
    with_field(c, asked->plan, "superheat", "as it was poured");
    context.stated.push_back(&asked->plan);
    c->callback([&context, asked] {
        context.answer = [&context, asked](const Catalogue& catalogue) {
            return answer_defect(context, *asked, catalogue);
        };
    });
}

} // namespace pourbook
