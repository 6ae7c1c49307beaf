#include "gui/state/ask_desk.hpp"

#include "answers/ask/ask_report.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "gui/actions/actions.hpp"
#include "help/pages.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/pour/defects.hpp"
#include "questions/views.hpp"

#include <algorithm>

namespace pourbook {
namespace {

using EntryKind = AskEntry::Kind;
constexpr std::size_t most_of_a_kind = 3, most_entries = 8;

/// What bears such a name, of every kind; a kind gives its nearest few.
class NamedThings {
public:
    NamedThings(const Catalogue& catalogue, const std::string& words) : catalogue_(catalogue), words_(words) {}

    struct Found {
        Nearness near;
        AskEntry entry;
    };

    std::vector<Found> run() {
        add(
            actions(),
            [](const Action& a) {
                return Findable{{a.label}, a.help};
            },
            [](const Action& a) {
                const bool view = std::string(a.id).starts_with("view.");
                return AskEntry{view ? EntryKind::view : EntryKind::command, a.label, a.help, a.id};
            });
        add(
            catalogue_.metals, [&](const Metal& m) { return names_of(catalogue_, m); },
            [](const Metal& m) {
                return AskEntry{EntryKind::metal, m.name, m.family, m.slug};
            });
        add(
            catalogue_.goals,
            [](const Goal& g) {
                return Findable{{g.label, g.id}, g.sentence};
            },
            [](const Goal& g) {
                return AskEntry{EntryKind::goal, g.label, g.sentence, g.id};
            });
        if (const auto all = defects(catalogue_, ""))
            add(
                *all,
                [](const Defect& d) {
                    return Findable{{d.name}, d.words};
                },
                [](const Defect& d) {
                    return AskEntry{EntryKind::defect, d.name, d.seen, d.name};
                });
        add(
            help_pages(),
            [](const HelpPage& p) {
                return Findable{{"help " + p.name}, is_view(p.name) ? p.text : ""};
            },
            [](const HelpPage& p) {
                return AskEntry{EntryKind::help, "Help: " + p.name, "", p.name};
            });
        add(
            catalogue_.references,
            [](const Reference& r) {
                return Findable{{short_source(r), r.key}, r.authors + " " + r.title};
            },
            [](const Reference& r) {
                return AskEntry{EntryKind::source, short_source(r), r.title, r.key};
            });
        std::stable_sort(found_.begin(), found_.end(), [](const Found& a, const Found& b) { return a.near < b.near; });
        return std::move(found_);
    }

private:
    template <class T, class AsFindable, class AsEntry>
    void add(const std::vector<T>& things, AsFindable findable, AsEntry entry) {
        std::size_t taken = 0;
        for (const T* thing : nearest_first(things, words_, findable)) {
            if (taken++ == most_of_a_kind) return;
            AskEntry one = entry(*thing);
            if (one.kind == EntryKind::help && !is_view(one.id)) continue; // those are printed by the command line
            found_.push_back({nearness(findable(*thing), words_), std::move(one)});
        }
    }

    const Catalogue& catalogue_;
    const std::string& words_;
    std::vector<Found> found_;
};

const char* view_of(Asked asked) {
    switch (asked) {
    case Asked::versus:
        return "Compare";
    case Asked::rank:
        return "Rank";
    case Asked::drop:
        return "Drop";
    case Asked::pour:
        return "Pour";
    case Asked::mix:
        return "Mix";
    case Asked::defect:
        return "Trials";
    default:
        return "Metals";
    }
}

AskEntry question_entry(const QuestionRead& read) {
    const bool several = read.asked == Asked::value && read.metals.size() > 1;
    return {EntryKind::question, several ? "Compare" : view_of(read.asked), joined(read.taken, "; "), ""};
}

/// The sheet of a metal is what its name opens.
bool is_same(const QuestionRead& read, const AskEntry& entry) {
    if (read.asked == Asked::sheet && entry.kind == EntryKind::metal) return entry.id == read.metals.front();
    return read.asked == Asked::defect && entry.kind == EntryKind::defect && entry.id == read.defect;
}

bool is_command(const AskEntry& entry) {
    return entry.kind == EntryKind::view || entry.kind == EntryKind::command;
}

} // namespace

const char* name_of(AskEntry::Kind kind) {
    static constexpr const char* names[] = {"opens", "temperature", "view", "command", "metal",
                                            "goal",  "defect",      "help", "source"};
    return names[static_cast<std::size_t>(kind)];
}

AskFound find_asked(const Catalogue& catalogue, const std::string& words) {
    AskFound out{words, read_question(catalogue, words), {}};
    std::vector<NamedThings::Found> named = NamedThings(catalogue, words).run();
    const auto named_so = [](const NamedThings::Found& f) {
        return f.near == Nearness::is_a_name && is_command(f.entry);
    };
    for (const auto& f : named)
        if (named_so(f)) out.entries.push_back(f.entry);
    if (out.read.asked != Asked::nothing)
        out.entries.push_back(question_entry(out.read));
    else if (!out.read.at.empty())
        out.entries.push_back({EntryKind::temperature, "at " + out.read.at, "in every view", out.read.at});
    for (const auto& f : named)
        if (!named_so(f) && !is_same(out.read, f.entry) && out.entries.size() < most_entries)
            out.entries.push_back(f.entry);
    return out;
}

AskSaid say_asked(const Catalogue& catalogue, const std::string& words, const std::vector<std::string>& shelf,
                  UnitSystem units, const AskUnder& under) {
    AskSaid out{words, {}, {}, {}};
    const Result<AskResult> answer = pourbook::ask(catalogue, {words, shelf, under});
    if (!answer) return out; // no question: only names were found
    out.sentence = sentence_of(*answer, units);
    out.fault = answer->fault;
    if (!answer->cautions.empty()) out.caution = answer->cautions.front();
    return out;
}

const AskFound* AskDesk::found(const std::string& words) {
    const Asked asked{words, UnitSystem::shown, {}, workshop_.serial()};
    return found_.ask(asked, [this, words] { return find_asked(catalogue_, words); });
}

const AskSaid* AskDesk::say(Sentence& by, const std::string& words, UnitSystem units, const AskUnder& under) {
    const std::vector<std::string> shelf = metals_on_the_shelf(workshop_.data());
    return by.ask({words, units, under, workshop_.serial()},
                  [this, words, shelf, units, under] { return say_asked(catalogue_, words, shelf, units, under); });
}

const AskSaid* AskDesk::said(const std::string& words, UnitSystem units, const AskUnder& under) {
    return say(said_, words, units, under);
}

const AskSaid* AskDesk::card(std::size_t i, UnitSystem units, const AskUnder& under) {
    return say(cards_.at(i), start_cards.at(i).words, units, under);
}

} // namespace pourbook
