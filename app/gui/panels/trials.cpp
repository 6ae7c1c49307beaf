// The workshop's own file: what was measured, what is on the shelf, what it cost, what the workshop can do.
#include "answers/workshop/entries_report.hpp"
#include "charts/measured_chart.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/bench.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/pasted.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct Shelf {
    const char* kind;
    const char* label;
};

/// What lies on the shelf, what the workshop can do, what was measured and is one's own.
struct BenchTab {
    const char* name;
    std::vector<Shelf> shelves;
};

const std::vector<BenchTab>& benches() {
    static const std::vector<BenchTab> all = {{"shelf", {{"stock", "stock"}, {"price", "own prices"}}},
                                              {"workshop",
                                               {{"profile", "furnace and money"},
                                                {"crucible", "crucibles"},
                                                {"mould", "moulds"},
                                                {"rate", "rates of exchange"}}},
                                              {"measured",
                                               {{"trial", "trials"},
                                                {"value", "own values"},
                                                {"metal", "own metals"},
                                                {"goal", "own goals"},
                                                {"question", "questions"}}}};
    return all;
}

bool holds(const BenchTab& bench, const std::string& kind) {
    return std::any_of(bench.shelves.begin(), bench.shelves.end(), [&](const Shelf& s) { return kind == s.kind; });
}

const BenchTab& bench_of(const std::string& kind) {
    for (const BenchTab& bench : benches())
        if (holds(bench, kind)) return bench;
    return benches().back();
}

/// A form nobody has written in follows the file; what was written stays, and says why it can't be kept.
void follow_file(Ui& ui, const Kind& kind) {
    EntryDesk& open = entry_desk(ui);
    if (open.serial == ui.session.workshop.serial()) return;
    open.serial = ui.session.workshop.serial();
    const auto& entries = ui.session.workshop.entries(kind);
    const bool still_there = std::any_of(entries.begin(), entries.end(), [&](const Entry& e) {
        return e.id == open.as_opened.id && e.values == open.as_opened.values;
    });
    if (!still_there && open.entry.values == open.as_opened.values) open_kind(ui, kind);
}

/// The name of a kind, to open its form.
void draw_shelf_name(Ui& ui, const Shelf& shelf) {
    const Kind& kind = known_kind(shelf.kind);
    const std::size_t count = ui.session.workshop.entries(kind).size();
    const std::string words = std::string(shelf.label) + (count && !kind.single ? "  " + std::to_string(count) : "");
    if (word_button(ui, std::string("shelf.") + shelf.kind, words, ui.view().shelf == shelf.kind)) {
        ui.view().shelf = shelf.kind;
        open_kind(ui, kind);
    }
    if (ImGui::IsItemHovered()) hover_text(ui, std::string(shelf.label) + "\n" + kind.meaning);
}

void draw_benches(Ui& ui) {
    const BenchTab& now = bench_of(ui.view().shelf);
    for (const BenchTab& bench : benches()) {
        if (&bench != &benches().front()) ImGui::SameLine();
        const TextLook look(ui.fonts.heading, ui.colours().ink);
        if (word_button(ui, std::string("bench.") + bench.name, bench.name, &bench == &now) && &bench != &now) {
            ui.view().shelf = bench.shelves.front().kind;
            open_kind(ui, known_kind(bench.shelves.front().kind));
        }
    }
    if (!ui.narrow()) ImGui::SameLine();
    small_fitted_text(ui, ui.session.workshop.available() ? "kept in " + ui.session.workshop.path()
                                                          : "this window has no workshop file");
}

/// What tells an entry apart, and a word of what it is.
std::string line_of(const Kind& kind, const Entry& entry, const Catalogue& catalogue) {
    std::string out;
    for (std::size_t i = 0; i < kind.fields.size() && i < 6; ++i) {
        const bool metal = kind.fields[i].type == FieldType::metal;
        const std::string words = metal ? metal_name(catalogue, entry.values[i]) : entry.values[i];
        if (!words.empty()) out += (out.empty() ? "" : "  ") + words;
    }
    return out;
}

/// A list that the import reads again without loss.
void draw_leave(Ui& ui, const Kind& kind, const std::vector<Entry>& entries) {
    Leaving l;
    l.name = kind.name;
    l.endings = ".csv or .json, to be imported again";
    l.made = [&](const std::string& file) -> Result<std::string> {
        if (file.ends_with(".json")) return json_of_entries(kind, entries);
        if (file.ends_with(".csv")) return csv_of_entries(kind, entries);
        return Problem{Problem::Kind::unreadable, "'" + file + "': a list's name ends in .csv or .json", 0};
    };
    l.words = [&] { return tabs_of_entries(kind, entries); };
    leave_row(ui, "entries.table", l);
}

void draw_list(Ui& ui, const Kind& kind) {
    const auto& entries = ui.session.workshop.entries(kind);
    if (!entries.empty()) draw_leave(ui, kind, entries);
    if (!kind.single) {
        if (ImGui::Button("new")) open_entry(ui, kind, fresh_entry(ui, kind));
        ui.probe.item("entry.new", "new");
    }
    if (entries.empty()) wrapped_text("Nothing here yet: fill in the form and keep it.", ui.colours().dim);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(entries.size()));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const Entry& entry = entries[static_cast<std::size_t>(i)];
            const std::string words =
                fitted(line_of(kind, entry, ui.session.catalogue), ImGui::GetContentRegionAvail().x);
            const std::string id = "entry." + std::to_string(entry.id);
            if (ImGui::Selectable((words + "##" + id).c_str(), entry_desk(ui).entry.id == entry.id && entry.id != 0))
                open_entry(ui, kind, entry);
            ui.probe.item(id, words);
        }
}

/// The measured conductivity across those of the metals one owns, and what that says.
void draw_beside(Ui& ui, const TrialLines& trial) {
    if (!trial.beside) return;
    wrapped_text(trial.beside->sentence, ui.colours().ink);
    ui.probe.say("trial." + trial.name + ".sentence", trial.beside->sentence);
    const MeasuredChart chart{"Measured: " + trial.name, *trial.beside};
    const float height = ui.px(height_of(chart)) + ImGui::GetFrameHeightWithSpacing();
    const std::string key = std::to_string(ui.session.workshop.serial()) + "|" + std::to_string(trial.id);
    const std::string clicked =
        chart_view(ui, "measured." + trial.name, key, {ImGui::GetContentRegionAvail().x, height},
                   [&](const Canvas& canvas) { return layout(chart, canvas); });
    if (!clicked.empty()) show_metal(ui.session, clicked);
}

void draw_what_trials_show(Ui& ui) {
    const std::vector<TrialLines>* trials = ui.session.trials();
    if (!trials) {
        dim_text(ui, "Working it out …");
        return;
    }
    if (trials->empty())
        wrapped_text("A drop, a four-wire resistance, a weighing or a casting: what it says of the metal appears here, "
                     "beside what was predicted.",
                     ui.colours().dim);
    for (const TrialLines& t : *trials) {
        const TextLook look(entry_desk(ui).entry.id == t.id ? ui.fonts.strong : ui.fonts.body, ui.colours().ink);
        text(t.name);
        draw_beside(ui, t);
        std::string all;
        for (const std::string& line : t.lines) {
            ImGui::Indent(ui.px(12));
            wrapped_text(line, ui.colours().dim);
            ImGui::Unindent(ui.px(12));
            all += (all.empty() ? "" : "\n") + line;
        }
        ui.probe.say("trial." + t.name, all);
        ImGui::Spacing();
    }
}

/// What is open now: a click on a name or a row may have opened another kind in this frame.
const Kind& open_kind_now(Ui& ui) {
    const Result<const Kind*> found = kind_named(ui.view().shelf);
    const Kind& kind = found ? **found : known_kind("trial");
    if (entry_desk(ui).kind != kind.name) open_kind(ui, kind);
    return kind;
}

/// Grids one above the other, the form of what is open beside them.
void draw_grids(Ui& ui, const BenchTab& bench) {
    const float room = ImGui::GetContentRegionAvail().x;
    std::vector<Shelf> grids;
    for (const Shelf& shelf : bench.shelves)
        if (!grid_fields(known_kind(shelf.kind)).empty()) grids.push_back(shelf);
    begin_panel(ui, "grids", {split_width(ui, std::string("bench.") + bench.name, room * 0.62F, 480, 330), 0});
    const float name = ImGui::GetFrameHeightWithSpacing();
    constexpr double narrow_grid = 260;
    const float height = ui.narrow()
                             ? ui.px(narrow_grid)
                             : ImGui::GetContentRegionAvail().y / static_cast<float>(grids.size()) - name - ui.px(6);
    for (const Shelf& shelf : bench.shelves) {
        draw_shelf_name(ui, shelf);
        if (!grid_fields(known_kind(shelf.kind)).empty()) draw_grid(ui, known_kind(shelf.kind), height);
    }
    end_panel(ui);
    split_edge(ui, std::string("bench.") + bench.name);
    begin_panel(ui, "form");
    const Kind& open = open_kind_now(ui);
    if (!open.single && ImGui::Button("new")) open_entry(ui, open, fresh_entry(ui, open));
    if (!open.single) ui.probe.item("entry.new", "new");
    const auto& entries = ui.session.workshop.entries(open);
    if (!entries.empty()) draw_leave(ui, open, entries);
    draw_entry_form(ui, open);
    end_panel(ui);
}

void draw_lists(Ui& ui, const BenchTab& bench) {
    for (const Shelf& shelf : bench.shelves) {
        if (&shelf != &bench.shelves.front()) flow(button_width(shelf.label));
        draw_shelf_name(ui, shelf);
    }
    const Kind& kind = open_kind_now(ui);
    const float room = ImGui::GetContentRegionAvail().x;
    const bool trials = kind.name == "trial";
    begin_panel(ui, "entries", {room * (trials ? 0.17F : 0.26F), 0});
    draw_list(ui, kind);
    end_panel(ui);
    beside(ui, 14);
    begin_panel(ui, "form", {trials ? room * 0.33F : room * 0.5F, 0});
    draw_entry_form(ui, kind);
    end_panel(ui);
    if (!trials) return;
    beside(ui, 14);
    begin_panel(ui, "shown");
    draw_what_trials_show(ui);
    end_panel(ui);
}

} // namespace

void draw_trials(Ui& ui) {
    draw_benches(ui); // may change what is open
    const Kind& kind = open_kind_now(ui);
    follow_file(ui, kind);
    if (!ui.session.workshop.fault().empty()) warning_text(ui, ui.session.workshop.fault());
    for (const std::string& remark : ui.session.remarks()) {
        warning_text(ui, remark);
        ui.probe.item("remark", remark);
    }
    const BenchTab& bench = bench_of(kind.name);
    std::string(bench.name) == "measured" ? draw_lists(ui, bench) : draw_grids(ui, bench);
}

} // namespace pourbook
