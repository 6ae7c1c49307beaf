#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"

namespace pourbook {

void declare_sheet(Context& context) {
    auto request = std::make_shared<SheetRequest>();
    CLI::App* c = context.command("sheet", "everything known of one metal");
    c->add_option("METAL", request->metal, "slug, name, alias or designation, or a mix such as \"mix:Ag 92.5 Cu 7.5\"")
        ->required();
    context.with_conditions(c);
    context.metal_words.push_back(&request->metal);
    c->callback([&context, request] {
        context.answer =
            context.under_conditions([&context, request](const Catalogue& catalogue, const Conditions& conditions) {
                request->conditions = conditions;
                return context.answered(
                    sheet(catalogue, *request), [&](const SheetResult& r) { return json_of(r, catalogue); },
                    [&](const SheetResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
