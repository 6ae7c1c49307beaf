// stock, price, trial, goal, profile ...: one command for each kind of entry of the workshop's own file, all made from
// the table of kinds.
#include "cli/context.hpp"

#include "answers/workshop/entries_report.hpp"
#include "answers/workshop/trial_report.hpp"
#include "questions/workshop/keep.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct EntryWords {
    const Kind* kind = nullptr;
    std::vector<std::string> values; // as the options give them, in the order of the fields
    std::vector<bool> given;
    std::string which;              // edit
    std::vector<std::string> these; // remove
    std::string find;
    bool csv = false;
};

struct CommandName {
    const char* command;
    const char* kind;
};
constexpr CommandName commands[] = {{"stock", "stock"},     {"price", "price"},       {"rate", "rate"},
                                    {"trial", "trial"},     {"goal", "goal"},         {"pin", "pin"},
                                    {"profile", "profile"}, {"crucible", "crucible"}, {"mould", "mould"},
                                    {"own-metal", "metal"}, {"own-value", "value"}};

std::string option_name(const Field& field) {
    std::string name = "--" + field.name;
    std::replace(name.begin(), name.end(), '_', '-');
    return name;
}

std::string help_of(const Field& field) {
    std::string help = field.meaning;
    if (!field.example.empty()) help += ": " + field.example;
    return help;
}

/// Options for the fields; the required ones by their place where `placed`.
void with_fields(CLI::App* c, EntryWords& words, bool placed) {
    const Kind& kind = *words.kind;
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const Field& field = kind.fields[i];
        const bool by_place = placed && field.required && field.type != FieldType::date && field.name != "source";
        const auto set = [&words, i](const std::string& text) {
            words.values[i] = text;
            words.given[i] = true;
        };
        CLI::Option* option =
            c->add_option_function<std::string>(by_place ? field.name : option_name(field), set, help_of(field));
        option->required(by_place);
    }
}

/// "add stock shelf-2"; one without a name yet by what it is: "add stock copper 1 kg".
std::string spoken(const Kind& kind, const char* verb, const Entry& entry) {
    std::string words = std::string(verb) + " " + title_of(kind, entry);
    if (kind.key.size() != 1 || !text_of(kind, entry, kind.key[0]).empty()) return words;
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (kind.fields[i].required) words += " " + entry.values[i];
    return words;
}

/// Trials are listed with what they show.
int listed_trials(const Context& context, const Catalogue& catalogue, const std::vector<Entry>& entries) {
    std::vector<ShownTrial> trials;
    for (const Entry& entry : entries) trials.push_back({entry, show_trial(catalogue, trial_from(entry))});
    return context.printed(context.json ? json_of_trials(trials) : text_of_trials(trials));
}

int said(const Context& context, const Catalogue& catalogue, const Kind& kind, const std::string& verb,
         const std::vector<Entry>& entries) {
    if (kind.name == "trial") return listed_trials(context, catalogue, entries);
    if (context.json) return context.printed(json_of_entries(kind, entries));
    return context.printed(verb + "\n" + text_of_entries(kind, entries));
}

int kept(const Context& context, const Catalogue& catalogue, const Kind& kind, Entry entry, const char* verb) {
    const Result<Entry> fit = sound(catalogue, kind, std::move(entry));
    if (!fit) return context.failed(fit.problem());
    const Result<Kept> done = keep(*context.workshop, kind, *fit, spoken(kind, verb, *fit));
    if (!done) return context.failed(done.problem());
    const char* outcome = done->outcome == Put::added     ? "Added:"
                          : done->outcome == Put::changed ? "Changed:"
                                                          : "Already there:";
    return said(context, catalogue, kind, outcome, {done->entry});
}

int add(const Context& context, const EntryWords& words, const Catalogue& catalogue) {
    Entry entry{0, words.values};
    const std::size_t date = words.kind->at("date");
    if (date < entry.values.size() && entry.values[date].empty()) entry.values[date] = context.date;
    return kept(context, catalogue, *words.kind, std::move(entry), "add");
}

int edit(const Context& context, const EntryWords& words, const Catalogue& catalogue, const Result<Entry>& old) {
    if (!old) return context.failed(old.problem());
    Entry entry = *old;
    for (std::size_t i = 0; i < entry.values.size(); ++i)
        if (words.given[i]) entry.values[i] = words.values[i];
    return kept(context, catalogue, *words.kind, std::move(entry), "edit");
}

/// The profile is one entry: set again, it changes.
int add_or_set(const Context& context, const EntryWords& words, const Catalogue& catalogue) {
    if (!words.kind->single) return add(context, words, catalogue);
    const Result<std::vector<Entry>> there = context.workshop->entries(*words.kind);
    if (!there) return context.failed(there.problem());
    return there->empty() ? add(context, words, catalogue) : edit(context, words, catalogue, there->front());
}

int remove_these(const Context& context, const EntryWords& words, const Catalogue& catalogue) {
    std::vector<Entry> entries;
    std::string spoken_words = "remove";
    for (const std::string& which : words.these) {
        const Result<Entry> entry = context.workshop->entry(*words.kind, which);
        if (!entry) return context.failed(entry.problem());
        entries.push_back(*entry);
        spoken_words += " " + title_of(*words.kind, *entry);
    }
    const Result<bool> done = remove(*context.workshop, *words.kind, entries, spoken_words);
    if (!done) return context.failed(done.problem());
    return said(context, catalogue, *words.kind, "Removed (`pourbook undo` brings back):", entries);
}

int list(const Context& context, const EntryWords& words, const Catalogue& catalogue) {
    Result<std::vector<Entry>> entries = context.workshop->entries(*words.kind);
    if (!entries) return context.failed(entries.problem());
    if (!words.find.empty())
        std::erase_if(*entries, [&](const Entry& entry) {
            return std::none_of(entry.values.begin(), entry.values.end(),
                                [&](const std::string& v) { return v.find(words.find) != std::string::npos; });
        });
    if (words.csv) return context.printed(csv_of_entries(*words.kind, *entries));
    if (words.kind->name == "trial") return listed_trials(context, catalogue, *entries);
    if (context.json) return context.printed(json_of_entries(*words.kind, *entries));
    return context.printed(text_of_entries(*words.kind, *entries));
}

void declare_kind(Context& context, const CommandName& name) {
    auto words = std::make_shared<EntryWords>();
    words->kind = &known_kind(name.kind);
    words->values.resize(words->kind->fields.size());
    words->given.resize(words->kind->fields.size());
    CLI::App* c = context.command(name.command, "your own: " + words->kind->meaning + "; add, list, edit, remove");
    c->require_subcommand(0, 1);
    const auto listing = [&context, words] {
        context.answer = [&context, words](const Catalogue& k) { return list(context, *words, k); };
    };
    c->add_flag("--csv", words->csv, "list as CSV, to be imported again");
    c->add_option("--find", words->find, "list only what contains this text");
    c->callback([c, listing] {
        if (c->get_subcommands().empty()) listing();
    });
    CLI::App* l = c->add_subcommand("list", "all of them");
    l->callback(listing);
    CLI::App* a = c->add_subcommand(words->kind->single ? "set" : "add", "enter " + words->kind->meaning);
    with_fields(a, *words, !words->kind->single);
    a->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& k) { return add_or_set(context, *words, k); };
    });
    if (words->kind->single) return;
    CLI::App* e = c->add_subcommand("edit", "change fields of one entry; \"\" empties a field");
    e->add_option("which", words->which, "its name or number")->required();
    with_fields(e, *words, false);
    e->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& k) {
            return edit(context, *words, k, context.workshop->entry(*words->kind, words->which));
        };
    });
    CLI::App* r = c->add_subcommand("remove", "remove entries");
    r->add_option("which", words->these, "names or numbers")->required();
    r->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& k) { return remove_these(context, *words, k); };
    });
}

} // namespace

void declare_entries(Context& context) {
    for (const CommandName& name : commands) declare_kind(context, name);
}

} // namespace pourbook
