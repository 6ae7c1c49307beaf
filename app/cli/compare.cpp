#include "cli/context.hpp"

#include "cli/table_words.hpp"

namespace pourbook {

void declare_compare(Context& context) {
    struct Words {
        CompareRequest request;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CompareRequest& request = words->request;
    CLI::App* c = context.command("compare", "metals side by side, each figure with its uncertainty and sources");
    c->add_option("METAL", request.metals, "one or more metals")->required();
    c->add_option("--show", request.properties, "properties, separated by commas")->delimiter(',')->required();
    with_table_words(c, words->table);
    context.with_conditions(c);
    context.metal_lists.push_back(&request.metals);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                CompareRequest asked = words->request;
                asked.conditions = conditions;
                const Result<CompareResult> result = compare(catalogue, asked);
                if (!result) return context.failed(result.problem());
                return answer_table(context, catalogue, words->table,
                                    [&](const DocumentSetting& s) { return document_of(*result, s); });
            });
    });
}

} // namespace pourbook
