#include "cli/context.hpp"

#include "answers/pour/defect_report.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/pour/pour_words.hpp"

namespace pourbook {
namespace {

struct WhatWasSeen {
    std::vector<std::string> words;
    PourWords plan; // of the part that went wrong; empty metal: none
};

int answer_defect(const Context& context, const WhatWasSeen& asked, const Catalogue& catalogue) {
    std::string all;
    for (const std::string& word : asked.words) all += (all.empty() ? "" : " ") + word;
    const auto found = defects(catalogue, all);
    if (asked.plan.metal.empty())
        return context.answered(
            found, [](const auto& list) { return json_of(list); },
            [](const auto& list, UnitSystem) { return text_of(list); });
    const Result<PourRequest> request = pour_request_from(asked.plan, context.read_mesh);
    if (!request) return context.failed(request.problem());
    const Result<PourResult> plan = pour_in_workshop(catalogue, *request, context.own);
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
    c->add_option("--metal", asked->plan.metal, "with --part: what the plan of that casting says on it");
    c->add_option("--part", asked->plan.parts, "the part, as in `pourbook pour`");
    c->add_option("--process", asked->plan.process, "shell (default), sand, plaster, permanent")
        ->check(CLI::IsMember({"shell", "sand", "plaster", "permanent"}));
    c->add_option("--mould-temperature", asked->plan.mould_temperature, "as it was poured");
    c->add_option("--superheat", asked->plan.superheat, "as it was poured");
    context.metal_words.push_back(&asked->plan.metal);
    c->callback([&context, asked] {
        context.answer = [&context, asked](const Catalogue& catalogue) {
            return answer_defect(context, *asked, catalogue);
        };
    });
}

} // namespace pourbook
