#include "cli/context.hpp"

#include "answers/help/help_report.hpp"
#include "answers/parts/citation.hpp"
#include "cli/completion.hpp"
#include "cli/manual.hpp"
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
    struct Words {
        std::string page, shell;
        bool manual = false;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c =
        context.command("help", "what a view answers, its equation, cautions; without a page: which there are");
    c->add_option("PAGE", words->page, "metals, rank, drop, drop-in-full ...");
    c->add_flag("--manual", words->manual, "the manual page, for man(1)");
    c->add_option("--completion", words->shell, "completion of commands and options for bash, zsh or fish")
        ->check(CLI::IsMember({"bash", "zsh", "fish"}));
    c->callback([&context, words] {
        context.answer_unopened = [&context, words](const std::string&) {
            if (!words->shell.empty()) return context.printed(completion(context.app, words->shell));
            if (words->manual) return context.printed(manual_page(context.app, program_version(), context.date));
            return context.answered(
                page_named(words->page), [&](const std::string& text) { return json_of_help(words->page, text); },
                [](const std::string& text, UnitSystem) { return text; });
        };
    });
}

} // namespace pourbook
