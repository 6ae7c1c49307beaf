#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"
#include "questions/rank/rank.hpp"

namespace pourbook {

void declare_metals(Context& context) {
    struct Words {
        std::vector<std::string> where;
        std::string find;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("metals", "the metals known, or those that meet conditions");
    c->add_option("--where", words->where, "a condition, such as \"liquidus < 1100 degC\"; may be repeated");
    c->add_option("--find", words->find, "words in name, alias or designation");
    context.with_conditions(c);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                return context.answered(
                    list_metals(catalogue, words->find, words->where, conditions),
                    [](const auto& m) { return json_of_metals(m); },
                    [](const auto& m, UnitSystem) { return text_of_metals(m); });
            });
    });
}

} // namespace pourbook
