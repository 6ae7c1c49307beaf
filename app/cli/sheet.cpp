#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "cli/table_words.hpp"

namespace pourbook {

void declare_sheet(Context& context) {
    struct Words {
        SheetRequest request;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("sheet", "everything known of one metal");
    c->add_option("METAL", words->request.metal,
                  "slug, name, alias or designation, or a mix such as \"mix:Ag 92.5 Cu 7.5\"")
        ->required();
    with_table_words(c, words->table);
    context.with_conditions(c);
    context.metal_words.push_back(&words->request.metal);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                return answered(context, catalogue, words->table, sheet(catalogue, words->request),
                                [&](const SheetResult& r) { return json_of(r, catalogue); });
            });
    });
}

} // namespace pourbook
