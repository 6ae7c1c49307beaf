#include "gui/widgets/value_label.hpp"

#include "gui/actions/actions.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {
namespace {

constexpr const char* hollow = "○ ";

/// Read in a source and cited as it stands; anything else looks different.
bool is_firm(const Evaluated& e) {
    return e.how_known != HowKnown::memory && e.basis == Basis::cited;
}

std::string label_text(const Property& property, const Result<Evaluated>& value, UnitSystem units, ValueStyle style) {
    if (!value) return "no value";
    const std::string unit = shown_unit(property, units);
    std::string text =
        style.plus_minus ? shown_full(property, *value, units) : pretty_number(shown_value(property, *value, units));
    if (style.unit && !style.plus_minus && !unit.empty()) text += " " + unit;
    return is_firm(*value) ? text : value->basis == Basis::cited ? hollow + text : "~ " + text;
}

} // namespace

void value_label(Ui& ui, const std::string& id, const Metal& metal, const Property& property,
                 const Result<Evaluated>& value, ValueStyle style) {
    const UnitSystem units = ui.session.units();
    const std::string words = label_text(property, value, units, style);
    const bool plain = value && is_firm(*value);
    {
        const TextLook look(plain ? ui.fonts.body : ui.fonts.italic, plain ? ui.colours().ink : ui.colours().dim);
        style.right ? text_right(words) : text(words);
    }
    ui.probe.item(id, words);
    if (!ImGui::IsItemHovered()) return;
    hover_text(ui, explain(ui.session.catalogue, metal, property, value, units).text());
    if (style.opens && value && !value->sources.empty() && ImGui::IsMouseClicked(0))
        show_source(ui.session, value->sources.front().key);
}

void source_chip(Ui& ui, const std::string& id, const std::string& key) {
    if (key.empty()) return;
    const TextLook look(ui.fonts.small, ui.colours().dim);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {ui.px(6), ui.px(1)});
    if (ImGui::Button((key + "##" + id).c_str())) show_source(ui.session, key);
    ImGui::PopStyleVar();
    ui.probe.item(id, key);
    if (!ImGui::IsItemHovered()) return;
    const Reference* reference = ui.session.catalogue.reference(key);
    hover_text(ui, reference ? key + "\n" + reference_text(*reference) : key + "\nnot in the list of sources");
}

float chip_width(const Ui& ui, const std::string& key) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    return ImGui::CalcTextSize(key.c_str()).x + 2 * ui.px(6);
}

void source_chips(Ui& ui, const std::string& id, const std::vector<std::string>& keys) {
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    for (const std::string& key : keys) {
        const float gap = ui.px(6);
        if (&key != &keys.front() && ImGui::GetItemRectMax().x + gap + chip_width(ui, key) <= right)
            ImGui::SameLine(0, gap);
        source_chip(ui, id + "." + key, key);
    }
}

} // namespace pourbook
