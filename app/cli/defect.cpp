#include "cli/context.hpp"

#include "answers/pour/defect_report.hpp"

namespace pourbook {

void declare_defect(Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    CLI::App* c = context.command("defect", "what was seen on a casting, and what to change next time");
    c->add_option("SEEN", *words, "what was seen: holes, seam, blisters ... or gas, shrinkage, cold run, moisture");
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            std::string all;
            for (const std::string& word : *words) all += (all.empty() ? "" : " ") + word;
            return context.answered(
                defects(catalogue, all), [](const auto& list) { return json_of(list); },
                [](const auto& list, UnitSystem) { return text_of(list); });
        };
    });
}

} // namespace pourbook
