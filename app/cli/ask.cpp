#include "cli/context.hpp"

#include "answers/ask/ask_report.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {

void declare_ask(Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    CLI::App* c =
        context.command("ask", "a question in your own words: the answer's sentence and the command for the whole");
    c->add_option("WORDS", *words, "such as: is gunmetal a better brake than silicon bronze at 77K")->required();
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            const AskRequest request{joined(*words, " "), metals_on_the_shelf(context.own)};
            return context.answered(
                ask(catalogue, request), [](const AskResult& r) { return json_of(r); },
                [](const AskResult& r, UnitSystem u) { return text_of(r, u); });
        };
    });
}

} // namespace pourbook
