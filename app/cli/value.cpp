#include "cli/context.hpp"

#include "cli/short_words.hpp"
#include "cli/table_words.hpp"

namespace pourbook {

void declare_value(Context& context) {
    struct Words {
        ValueRequest request;
        TableWords table;
        ShortWords brief;
    };
    auto words = std::make_shared<Words>();
    ValueRequest& request = words->request;
    CLI::App* c = context.command("value", "one property of one metal, with uncertainty and sources");
    c->add_option("METAL", request.metal, "slug, name, alias or designation, or a mix such as \"mix:Ag 92.5 Cu 7.5\"")
        ->required();
    c->add_option("PROPERTY", request.property, "such as resistivity, density, liquidus")->required();
    with_table_words(c, words->table);
    with_short_words(c, words->brief);
    context.with_conditions(c);
    context.metal_words.push_back(&request.metal);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                if (words->brief.asked())
                    return answered_shortly(context, catalogue, words->brief, value(catalogue, words->request));
                return answered(context, catalogue, words->table, value(catalogue, words->request));
            });
    });
}

} // namespace pourbook
