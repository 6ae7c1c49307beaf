#include "cli/context.hpp"

#include "cli/table_words.hpp"
#include "core/quantity/format.hpp"
#include "questions/rank/goal_plan.hpp"

namespace pourbook {
namespace {

/// What the usual goal weighs, and where the metal melts.
std::vector<std::string> usual_properties(const Context& context, const Catalogue& catalogue) {
    std::vector<std::string> out;
    if (const Goal* goal = usual_goal(catalogue))
        if (const Result<Formula> formula = Formula::parse(goal->formula, catalogue)) out = formula->names();
    for (const char* more : {"solidus", "liquidus"})
        if (catalogue.property(more)) out.emplace_back(more);
    if (!context.json)
        context.err << "pourbook: no properties were named, so " << joined(out)
                    << " are shown; --show P,P takes others\n";
    return out;
}

} // namespace

void declare_compare(Context& context) {
    struct Words {
        CompareRequest request;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CompareRequest& request = words->request;
    CLI::App* c = context.command("compare", "metals side by side, each figure with its uncertainty and sources");
    c->add_option("METAL", request.metals, "one or more metals")->required();
    c->add_option("--show", request.properties, "properties, separated by commas")->delimiter(',');
    with_table_words(c, words->table);
    context.with_conditions(c);
    context.metal_lists.push_back(&request.metals);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                CompareRequest asked = words->request;
                asked.conditions = conditions;
                if (asked.properties.empty()) asked.properties = usual_properties(context, catalogue);
                const Result<CompareResult> result = compare(catalogue, asked);
                if (!result) return context.failed(result.problem());
                return answer_table(context, catalogue, words->table,
                                    [&](const DocumentSetting& s) { return document_of(*result, s); });
            });
    });
}

} // namespace pourbook
