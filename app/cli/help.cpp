#include "cli/context.hpp"

#include "answers/help/help_report.hpp"
#include "help/pages.hpp"

namespace pourbook {
namespace {

std::string list_of_pages() {
    std::string list;
    for (const HelpPage& page : help_pages()) list += page.name + "\t" + plain_text(page.blocks.front()) + "\n";
    return list;
}

Result<std::string> page_named(const std::string& name) {
    if (name.empty()) return list_of_pages();
    if (const HelpPage* page = help_page(name)) return page->text;
    return Problem{Problem::Kind::unknown, "unknown page '" + name + "': see `pourbook help`", 0};
}

} // namespace

void declare_help(Context& context) {
    auto name = std::make_shared<std::string>();
    CLI::App* c =
        context.command("help", "what a view answers, its equation, cautions; without a page: which there are");
    c->add_option("PAGE", *name, "metals, rank, drop, drop-in-full ...");
    c->callback([&context, name] {
        context.answer_unopened = [&context, name](const std::string&) {
            return context.answered(
                page_named(*name), [&](const std::string& text) { return json_of_help(*name, text); },
                [](const std::string& text, UnitSystem) { return text; });
        };
    });
}

} // namespace pourbook
