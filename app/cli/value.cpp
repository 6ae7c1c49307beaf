#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"

namespace pourbook {

void declare_value(Context& context) {
    auto request = std::make_shared<ValueRequest>();
    CLI::App* c = context.command("value", "one property of one metal, with uncertainty and sources");
    c->add_option("METAL", request->metal, "slug, name, alias or designation, or a mix such as \"mix:Ag 92.5 Cu 7.5\"")
        ->required();
    c->add_option("PROPERTY", request->property, "such as resistivity, density, liquidus")->required();
    context.with_conditions(c);
    context.metal_words.push_back(&request->metal);
    c->callback([&context, request] {
        context.answer =
            context.under_conditions([&context, request](const Catalogue& catalogue, const Conditions& conditions) {
                request->conditions = conditions;
                return context.answered(
                    value(catalogue, *request), [&](const ValueResult& r) { return json_of(r, catalogue); },
                    [&](const ValueResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
