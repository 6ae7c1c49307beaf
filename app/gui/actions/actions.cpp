#include "gui/actions/actions.hpp"

#include "questions/metals/find_words.hpp"
#include "questions/views.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace pourbook {
namespace {

void find_metal_by_name(Session& s) {
    s.view.view = "metals";
    s.passing.sheet_open = false;
    s.passing.focus_find = true;
}

void go_to_ask(Session& s) {
    s.passing.ask.focus = true;
}

/// One for each view.
template <std::size_t... I> std::vector<Action> view_actions(std::index_sequence<I...>) {
    static const std::array<std::string, sizeof...(I)> ids = {("view." + std::string(view_names[I].name))...};
    return {Action{ids[I].c_str(),
                   view_names[I].label,
                   view_names[I].answers,
                   {false, false, keys::f1 + view_names[I].function_key - 1},
                   [](Session& s) { s.view.view = view_names[I].name; }}...};
}

std::vector<Action> other_actions() {
    return {
        {"help",
         "Help",
         "what this view answers, how to use it, and the equation behind it",
         {false, false, keys::f1 + 9},
         [](Session& s) { s.view.help = !s.view.help; }},
        {"evidence",
         "Evidence",
         "the sources of a figure, how sure it is and why; of the selected metal where none was clicked",
         {true, false, 'I'},
         [](Session& s) { s.passing.evidence = true; }},
        {"find", "Find a metal", "type part of a name, alias or designation", {true, false, 'F'}, find_metal_by_name},
        {"pin",
         "Pin or unpin the selected metal",
         "pinned metals appear in every view",
         {true, false, 'P'},
         [](Session& s) { toggle_pin(s.view, s.view.selected); }},
        {"unpin.all", "Unpin all metals", "empty the strip", {}, [](Session& s) { s.view.pins.clear(); }},
        {"units",
         "Switch units",
         "between SI and workshop units",
         {true, false, 'U'},
         [](Session& s) { s.view.workshop_units = !s.view.workshop_units; }},
        {"letters.larger",
         "Larger letters",
         "and everything with them",
         {true, false, '='},
         [](Session& s) { s.view.letters = std::min(largest_letters, s.view.letters + 0.1); }},
        {"letters.smaller",
         "Smaller letters",
         "and everything with them",
         {true, false, '-'},
         [](Session& s) { s.view.letters = std::max(smallest_letters, s.view.letters - 0.1); }},
        {"letters.usual", "Letters as usual", "", {true, false, '0'}, [](Session& s) { s.view.letters = 1; }},
        {"theme", "Switch dark and light", "", {true, false, 'L'}, [](Session& s) { s.view.dark = !s.view.dark; }},
        {"rank.unusual",
         "Include unusual metals in the ranking",
         "also those unfit for home casting",
         {},
         [](Session& s) { s.view.rank.include_unusual = !s.view.rank.include_unusual; }},
        {"rank.pinned",
         "Rank only the pinned metals",
         "",
         {},
         [](Session& s) { s.view.rank.only_pinned = !s.view.rank.only_pinned; }},
        {"curves.log",
         "Curves: switch linear and logarithmic",
         "",
         {},
         [](Session& s) { s.view.curves.log = !s.view.curves.log; }},
        {"curves.celsius",
         "Curves: switch K and °C",
         "",
         {},
         [](Session& s) { s.view.curves.celsius = !s.view.curves.celsius; }},
        {"save.picture",
         "Save the picture",
         "the chart as PNG, SVG or PDF",
         {true, false, 'S'},
         [](Session& s) { s.passing.leaving = "save picture"; }},
        {"save.table",
         "Save the table",
         "as CSV, Markdown, HTML, JSON or XLSX, with its sources",
         {true, true, 'S'},
         [](Session& s) { s.passing.leaving = "save table"; }},
        {"frame",
         "Picture for a video",
         "16:9, 9:16, square or a sheet, with title and credit",
         {true, false, 'E'},
         [](Session& s) { s.passing.leaving = "frame"; }},
        {"copy.picture",
         "Copy the picture",
         "onto the clipboard, for another program to paste",
         {},
         [](Session& s) { s.passing.leaving = "copy picture"; }},
        {"copy.table",
         "Copy the table",
         "tab-separated, for a spreadsheet",
         {true, true, 'C'},
         [](Session& s) { s.passing.leaving = "copy table"; }},
        {"copy.link",
         "Copy a link to this view",
         "an address that opens the page of Pourbook with what is chosen here; `pourbook --link` opens it too",
         {true, true, 'L'},
         [](Session& s) { s.passing.leaving = "copy link"; }},
        {"undo",
         "Undo",
         "what was done last, a choice or a change of the workshop's file",
         {true, false, 'Z'},
         [](Session& s) { s.undo_last(); }},
        {"redo", "Redo", "", {true, true, 'Z'}, [](Session& s) { s.redo_last(); }},
        {"ask", "Ask", "a question, or the name of anything", {true, false, 'K'}, go_to_ask},
        {"quit",
         "Quit",
         "what is chosen comes back next time",
         {true, false, 'Q'},
         [](Session& s) { s.passing.quit = true; }},
    };
}

} // namespace

const std::vector<Action>& actions() {
    static const std::vector<Action> table = [] {
        std::vector<Action> all = view_actions(std::make_index_sequence<view_names.size()>());
        for (const Action& a : other_actions()) all.push_back(a);
        return all;
    }();
    return table;
}

const Action* action(const std::string& id) {
    for (const Action& a : actions())
        if (id == a.id) return &a;
    return nullptr;
}

std::vector<const Action*> matching_actions(const std::string& words) {
    return nearest_first(actions(), words, [](const Action& a) { return Findable{{a.label}, a.help}; });
}

void show_metal(Session& session, const std::string& slug) {
    session.view.selected = slug;
    session.view.view = "metals";
    session.passing.scroll_to_selected = true;
    session.passing.sheet_open = true;
}

void show_goal(Session& session, const std::string& id) {
    session.view.rank.goal = id;
    session.view.view = "rank";
}

void show_defect(Session& session, const std::string& name) {
    session.passing.seen = name;
    session.view.shelf = "trial";
    session.view.view = "trials";
}

void show_help(Session& session, const std::string& page) {
    session.view.view = page;
    session.view.help = true;
}

void show_source(Session& session, const std::string& key) {
    session.view.source = key;
    session.view.view = "sources";
}

std::string Shortcut::text() const {
    if (!key) return "";
    const std::string name =
        key >= keys::f1 ? "F" + std::to_string(key - keys::f1 + 1) : std::string(1, static_cast<char>(key));
    return std::string(ctrl ? "Ctrl+" : "") + (shift ? "Shift+" : "") + name;
}

} // namespace pourbook
