#include "gui/actions/actions.hpp"

#include "questions/metals/find_words.hpp"

namespace pourbook {
namespace {

void find_metal_by_name(Session& s) {
    s.view.view = "metals";
    s.passing.focus_find = true;
}

void open_finder(Session& s) {
    s.passing.finder_open = !s.passing.finder_open;
    s.passing.finder_text.clear();
    s.passing.finder_at = 0;
}

} // namespace

const std::vector<Action>& actions() {
    static const std::vector<Action> table = {
        {"view.metals",
         "Metals",
         "find a metal and read its sheet",
         {false, false, keys::f1},
         [](Session& s) { s.view.view = "metals"; }},
        {"view.rank",
         "Rank",
         "which metal does the job best",
         {false, false, keys::f1 + 1},
         [](Session& s) { s.view.view = "rank"; }},
        {"view.curves",
         "Curves",
         "a property against temperature",
         {false, false, keys::f1 + 2},
         [](Session& s) { s.view.view = "curves"; }},
        {"view.compare",
         "Compare",
         "the pinned metals side by side",
         {false, false, keys::f1 + 3},
         [](Session& s) { s.view.view = "compare"; }},
        {"view.drop",
         "Drop",
         "a magnet falling through a tube: times, drag, how thick is thick enough",
         {false, false, keys::f1 + 4},
         [](Session& s) { s.view.view = "drop"; }},
        {"view.mix",
         "Mix",
         "what a blend of stocks or a composition is, and is worth",
         {false, false, keys::f1 + 5},
         [](Session& s) { s.view.view = "mix"; }},
        {"view.pour",
         "Pour",
         "a casting plan: pattern, charge, temperatures, cost",
         {false, false, keys::f1 + 6},
         [](Session& s) { s.view.view = "pour"; }},
        {"view.trials",
         "Trials",
         "what was measured, what is on the shelf, what the workshop can do",
         {false, false, keys::f1 + 7},
         [](Session& s) { s.view.view = "trials"; }},
        {"view.sources",
         "Sources",
         "where the numbers come from",
         {false, false, keys::f1 + 8},
         [](Session& s) { s.view.view = "sources"; }},
        {"help",
         "Help",
         "what this view answers, how to use it, and the equation behind it",
         {false, false, keys::f1 + 9},
         [](Session& s) { s.view.help = !s.view.help; }},
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
        {"undo",
         "Undo",
         "back to the choices before",
         {true, false, 'Z'},
         [](Session& s) { s.view = s.history.undo(); }},
        {"redo", "Redo", "", {true, true, 'Z'}, [](Session& s) { s.view = s.history.redo(); }},
        {"finder", "Command finder", "every command by name", {true, false, 'K'}, open_finder},
        {"quit",
         "Quit",
         "what is chosen comes back next time",
         {true, false, 'Q'},
         [](Session& s) { s.passing.quit = true; }},
    };
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
