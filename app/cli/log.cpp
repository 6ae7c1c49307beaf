// Viewers' questions with their answers, so that one can be asked again after an update and compared.
#include "cli/context.hpp"

#include "answers/parts/json_difference.hpp"
#include "answers/workshop/entries_report.hpp"
#include "questions/workshop/keep.hpp"

#include <sstream>

namespace pourbook {
namespace {

struct LogWords {
    std::string question, command, name, note;
    bool renew = false;
};

/// "rank --where 'a < 1'" into words; quotes hold blanks together.
std::vector<std::string> split_words(const std::string& text) {
    std::vector<std::string> out;
    char quote = 0;
    bool open = false;
    for (const char c : text) {
        if (quote ? c == quote : c == '"' || c == '\'') {
            quote = quote ? 0 : c;
            open = open || quote;
            if (open && out.empty()) out.emplace_back();
            continue;
        }
        if (c == ' ' && !quote) {
            open = false;
            continue;
        }
        if (!open) out.emplace_back();
        open = true;
        out.back() += c;
    }
    return out;
}

/// The answer of a command in a form, "--json" or "--short"; as text where none is named. Errors: whatever it answers
/// with.
Result<std::string> answer_of(const Context& context, const std::string& command, const std::string& form = "--json") {
    std::vector<std::string> words = split_words(command);
    if (!words.empty() && words.front() == "pourbook") words.erase(words.begin());
    if (words.empty() || words.front() == "log" || words.front().starts_with("-"))
        return Problem{Problem::Kind::unreadable,
                       "--command '" + command + "': a command that answers, such as \"rank --goal braking-per-cost\"",
                       0};
    words.insert(words.end(), {"--workshop", context.workshop->path()});
    if (!form.empty()) words.push_back(form);
    std::ostringstream out, err;
    const int code = run_command_line(context.setup, words, out, err);
    if (code == 0) return out.str();
    std::string text = err.str();
    while (!text.empty() && text.back() == '\n') text.pop_back();
    return Problem{Problem::Kind::unreadable, "--command '" + command + "': " + text, 0};
}

int add_question(const Context& context, const LogWords& words, const Catalogue& catalogue) {
    const Result<std::string> answer = answer_of(context, words.command);
    if (!answer) return context.failed(answer.problem());
    const Kind& kind = known_kind("question");
    Entry entry = new_entry(kind);
    for (const auto& [field, text] : {std::pair<const char*, std::string>{"name", words.name},
                                      {"question", words.question},
                                      {"command", words.command},
                                      {"answer", *answer},
                                      {"data_version", catalogue.data_version},
                                      {"date", context.date},
                                      {"note", words.note}})
        text_of(kind, entry, field) = text;
    const Result<Entry> fit = sound(catalogue, kind, entry);
    if (!fit) return context.failed(fit.problem());
    const Result<Kept> kept = keep(*context.workshop, kind, *fit, "log " + words.question);
    if (!kept) return context.failed(kept.problem());
    if (context.json) return context.printed(json_of_entries(kind, {kept->entry}));
    const Result<std::string> told = answer_of(context, words.command, "");
    return context.printed((told ? *told + "\n" : "") + "Kept as " + text_of(kind, kept->entry, "name") + ".\n");
}

int ask_again(const Context& context, const LogWords& words, const Catalogue& catalogue) {
    const Kind& kind = known_kind("question");
    const Result<Entry> entry = context.workshop->entry(kind, words.name);
    if (!entry) return context.failed(entry.problem());
    const ViewerQuestion q = question_from(*entry);
    const Result<std::string> now = answer_of(context, q.command);
    if (!now) return context.failed(now.problem());
    const AnswerAgain again{q.name,
                            q.question,
                            q.command,
                            q.date,
                            q.data_version,
                            catalogue.data_version,
                            json_differences(q.answer, *now)};
    if (words.renew) {
        Entry renewed = *entry;
        text_of(kind, renewed, "answer") = *now;
        text_of(kind, renewed, "data_version") = catalogue.data_version;
        text_of(kind, renewed, "date") = context.date;
        const Result<Entry> fit = sound(catalogue, kind, renewed);
        const Result<Kept> kept =
            fit ? keep(*context.workshop, kind, *fit, "log renew " + q.name) : Result<Kept>(fit.problem());
        if (!kept) return context.failed(kept.problem());
    }
    if (context.json) return context.printed(json_of(again));
    const Result<std::string> sentence = answer_of(context, q.command, "--short"); // not every command has one
    return context.told(text_of(again) + (sentence ? *sentence : ""));
}

int list_questions(const Context& context) {
    const auto entries = context.workshop->entries(known_kind("question"));
    if (!entries) return context.failed(entries.problem());
    return context.printed(context.json ? json_of_entries(known_kind("question"), *entries)
                                        : text_of_entries(known_kind("question"), *entries));
}

int remove_question(const Context& context, const LogWords& words) {
    const Result<Entry> entry = context.workshop->entry(known_kind("question"), words.name);
    if (!entry) return context.failed(entry.problem());
    const Result<bool> done = remove(*context.workshop, known_kind("question"), {*entry}, "log remove " + words.name);
    return done ? context.printed("Removed " + words.name + ".\n") : context.failed(done.problem());
}

} // namespace

void declare_log(Context& context) {
    auto words = std::make_shared<LogWords>();
    CLI::App* c = context.command("log", "viewers' questions with their answers: add, list, ask again, remove");
    c->require_subcommand(0, 1);
    const auto answer = [&context, words](auto f) {
        return [&context, words, f] {
            context.answer = [&context, words, f](const Catalogue& k) { return f(context, *words, k); };
        };
    };
    const auto listing = answer([](const Context& x, const LogWords&, const Catalogue&) { return list_questions(x); });
    c->callback([c, listing] {
        if (c->get_subcommands().empty()) listing();
    });
    c->add_subcommand("list", "all of them")->callback(listing);
    CLI::App* a = c->add_subcommand("add", "answer a question now and keep it with the answer");
    a->add_option("question", words->question, "the viewer's words")->required();
    a->add_option("--command", words->command, "the command that answers it: \"rank --goal braking-per-cost\"")
        ->required();
    a->add_option("--name", words->name, "a name for it");
    a->add_option("--note", words->note, "a remark");
    a->callback(answer(add_question));
    CLI::App* again = c->add_subcommand("again", "ask again and say what has changed");
    again->add_option("name", words->name, "its name or number")->required();
    again->add_flag("--renew", words->renew, "keep the new answer");
    again->callback(answer(ask_again));
    CLI::App* r = c->add_subcommand("remove", "remove a question");
    r->add_option("name", words->name, "its name or number")->required();
    r->callback(answer([](const Context& x, const LogWords& w, const Catalogue&) { return remove_question(x, w); }));
}

} // namespace pourbook
