// The evidence for one value, docked at the right: how sure and why, each source on a number line and in full, the way
// from print to here.
#include "charts/evidence_chart.hpp"
#include "core/quantity/constants.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/scene_painter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/say/sureness.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

struct AskedFor {
    const Metal* metal = nullptr;
    const Property* property = nullptr;
};

AskedFor asked_of(Ui& ui) {
    const Evidence& e = ui.evidence;
    return {ui.session.catalogue.metal(e.metal), ui.session.catalogue.property(e.property)};
}

/// At the right of the line.
void draw_close(Ui& ui) {
    const std::string close = "close  " + action("evidence")->shortcut.text();
    ImGui::SameLine(ImGui::GetContentRegionMax().x - ImGui::CalcTextSize(close.c_str()).x -
                    2 * ImGui::GetStyle().FramePadding.x);
    if (word_button(ui, "evidence.close", close, false)) ui.evidence.open = false;
}

/// Another figure of the metal, also without a pointer.
void draw_other_figures(Ui& ui, const AskedFor& asked) {
    const std::string label = shown_label(*asked.property, ui.session.units());
    const std::string metal = asked.metal->slug;
    if (begin_combo("evidence.property", label, ImGui::GetContentRegionAvail().x)) {
        const Result<SheetResult>& sheet = ui.session.sheet(metal);
        for (std::size_t row = 0; sheet && row < sheet->rows.size(); ++row) {
            const Property& property = ui.session.catalogue.properties[row];
            if (!sheet->rows[row].value) continue;
            if (ImGui::Selectable(shown_label(property, ui.session.units()).c_str(), &property == asked.property))
                ui.evidence.show(metal, property.id);
            ui.probe.item("evidence.property." + property.id, property.id);
        }
        end_combo();
    }
    ui.probe.item("evidence.property", asked.property->id);
}

void draw_head(Ui& ui, const AskedFor& asked) {
    Evidence& e = ui.evidence;
    if (!e.earlier.empty()) {
        if (word_button(ui, "evidence.back", "back", false)) e.go_back();
        ImGui::SameLine();
    }
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "Evidence");
    draw_close(ui);
    draw_other_figures(ui, asked);
    const TextLook look(ui.fonts.heading, ui.colours().ink);
    wrapped_text(asked.metal->name, ui.colours().ink);
}

/// Whose figure it is; beside a casting's what the handbook says.
void draw_state(Ui& ui, const AskedFor& asked, const Evaluated& value) {
    std::string words = state_word(ui.session.view_conditions());
    if (std::isfinite(value.handbook_si)) {
        Evaluated handbook = value;
        handbook.value_si = value.handbook_si;
        words += "; handbook metal " + shown_value(*asked.property, handbook, ui.session.units()) + " " +
                 shown_unit(*asked.property, ui.session.units());
    }
    dim_text(ui, words);
    ui.probe.say("evidence.state", words);
}

void draw_value(Ui& ui, const AskedFor& asked, const Evaluated& value) {
    const UnitSystem units = ui.session.units();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        const std::string words = asked.property->is_text ? value.text : shown_full(*asked.property, value, units);
        wrapped_text(words + (asked.property->is_text ? "" : "  (90 %)"), ui.colours().ink);
        ui.probe.say("evidence.value", words);
    }
    draw_state(ui, asked, value);
    const Sureness sure = sureness_of(ui.session.catalogue, value);
    wrapped_text(sure.word + ": " + sure.reason, ui.colours().ink);
    ui.probe.say("evidence.sure", sure.word + ": " + sure.reason);
    for (const std::string& fact : explain(ui.session.catalogue, *asked.metal, *asked.property, value, units).facts)
        wrapped_text(fact, ui.colours().dim);
}

void draw_line(Ui& ui, const AskedFor& asked, const Evaluated& value) {
    if (asked.property->is_text) return;
    const EvidenceChart chart = evidence_chart(ui.session.catalogue, *asked.property, value, ui.session.units());
    if (chart.dots.empty()) return;
    const FontMeasure measure(ui);
    const double width = static_cast<double>(ImGui::GetContentRegionAvail().x / ui.scale);
    const Scene scene = layout(chart, {width, height_of(chart), ui.colours(), measure});
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    ImGui::Dummy({ui.px(scene.width), ui.px(scene.height)});
    paint(ui, scene, *ImGui::GetWindowDrawList(), origin);
    ui.probe.item("evidence.line", std::to_string(chart.dots.size()));
}

/// Author, year, table; the figure as printed; open and copy.
void draw_source(Ui& ui, const SourceValue& s, std::size_t number) {
    const std::string id = "evidence.source." + std::to_string(number);
    const Reference* reference = ui.session.catalogue.reference(s.key);
    ImGui::Spacing();
    {
        const TextLook look(s.chosen ? ui.fonts.strong : ui.fonts.body, ui.colours().ink);
        wrapped_text(short_source(ui.session.catalogue, s.key) + ", " + s.locator, ui.colours().ink);
    }
    const bool stated = !s.condition.empty() && s.condition != "unstated";
    wrapped_text("printed: " + s.printed + (stated ? " (" + s.condition + ")" : "") +
                     (s.how_known == HowKnown::memory ? ", remembered, not read" : "") +
                     (s.chosen ? ", the one used" : "") + (s.through.empty() ? "" : ", through " + s.through),
                 ui.colours().dim);
    if (reference)
        wrapped_text(reference->title + (reference->where.empty() ? "" : ". " + reference->where), ui.colours().dim);
    if (ImGui::SmallButton(("open##" + id).c_str())) show_source(ui.session, s.key);
    ui.probe.item(id + ".open", s.key);
    ImGui::SameLine();
    if (ImGui::SmallButton(("copy##" + id).c_str()))
        ImGui::SetClipboardText(
            ((reference ? reference->full() : s.key) + ", " + s.locator + ": " + s.printed).c_str());
    ui.probe.item(id + ".copy", s.key);
}

void draw_trail(Ui& ui, const Evaluated& value) {
    if (value.trail.empty()) return;
    ImGui::Spacing();
    const bool open = ImGui::CollapsingHeader("From print to here###evidence.trail");
    ui.probe.item("evidence.trail", std::to_string(value.trail.size()));
    if (!open) return;
    for (const std::string& line : value.trail) wrapped_text(line, ui.colours().dim);
}

void draw_body(Ui& ui, const AskedFor& asked) {
    const Result<Evaluated> value =
        evaluate(ui.session.catalogue, *asked.metal, asked.property->id, ui.session.view_conditions());
    if (!value) {
        wrapped_text("no value: " + value.problem().text, ui.colours().ink);
        ui.probe.say("evidence.value", "no value");
        return;
    }
    draw_value(ui, asked, *value);
    ImGui::Spacing();
    draw_line(ui, asked, *value);
    for (std::size_t i = 0; i < value->sources.size(); ++i) draw_source(ui, value->sources[i], i);
    draw_trail(ui, *value);
    ImGui::Spacing();
    if (ImGui::Button("copy all of it"))
        ImGui::SetClipboardText(
            explain(ui.session.catalogue, *asked.metal, *asked.property, value, ui.session.units()).text().c_str());
    ui.probe.item("evidence.copy", "");
}

} // namespace

void draw_evidence(Ui& ui) {
    ImGui::PushStyleColor(ImGuiCol_ChildBg, u32(ui.colours().raised));
    ImGui::BeginChild("evidence", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    ImGui::PopStyleColor();
    const AskedFor asked = asked_of(ui);
    if (asked.metal && asked.property) {
        draw_head(ui, asked);
        draw_body(ui, asked);
    } else {
        draw_close(ui);
        wrapped_text("Click a figure: its sources, how sure it is and why appear here.", ui.colours().dim);
    }
    ui.probe.say("evidence.of", ui.evidence.metal + "." + ui.evidence.property);
    ImGui::EndChild();
}

} // namespace pourbook
