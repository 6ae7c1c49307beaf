#include "gui/widgets/value_label.hpp"

#include "gui/actions/actions.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/text.hpp"
#include "questions/say/sureness.hpp"

#include <algorithm>
#include <cmath>

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

/// Author and year, as far as a chip is wide; in the font at hand.
std::string chip_name(const Ui& ui, const std::string& key) {
    constexpr double widest = 120;
    return fitted(short_source(ui.session.catalogue, key), ui.px(widest));
}

/// Value, how sure, from whom: the rest is in the evidence.
std::string three_lines(Ui& ui, const Metal& metal, const Property& property, const Result<Evaluated>& value) {
    const UnitSystem units = ui.session.units();
    const std::string name = shown_label(property, units) + " of " + metal.name + ": ";
    if (!value) return name + "no value\n" + value.problem().text;
    const Sureness sure = sureness_of(ui.session.catalogue, *value);
    const bool casting = std::isfinite(value->handbook_si); // what is alike in both says nothing
    const std::string figure = shown_with_level(property, *value, units) + (casting ? ", as a casting" : "");
    const std::string from =
        value->sources.empty() ? "" : short_source(ui.session.catalogue, value->sources.front().key);
    return name + figure + "\n" + sure.word + ": " + sure.reason + (from.empty() ? "" : "\n" + from);
}

std::string with_source(Ui& ui, const Metal& metal, const Property& property, const Result<Evaluated>& value) {
    std::string line = three_lines(ui, metal, property, value);
    std::replace(line.begin(), line.end(), '\n', ';');
    return line + (value && !value->sources.empty() ? ", " + value->sources.front().locator : "");
}

/// Under the right button.
void draw_menu(Ui& ui, const std::string& id, const Metal& metal, const Property& property,
               const Result<Evaluated>& value, const std::string& words) {
    const std::string popup = id + ".menu";
    if (ImGui::IsItemHovered() && ImGui::IsMouseReleased(1)) ImGui::OpenPopup(popup.c_str());
    if (!ImGui::BeginPopup(popup.c_str())) return;
    const auto offer = [&](const char* name, const char* part, const auto& run) {
        if (ImGui::MenuItem(name)) run();
        ui.probe.item(popup + "." + part, name);
    };
    offer("copy the value", "value", [&] { ImGui::SetClipboardText(words.c_str()); });
    offer("copy it with its source", "source",
          [&] { ImGui::SetClipboardText(with_source(ui, metal, property, value).c_str()); });
    offer("show the evidence", "evidence", [&] { ui.evidence.show(metal.slug, property.id); });
    offer(is_pinned(ui.view(), metal.slug) ? "unpin the metal" : "pin the metal", "pin",
          [&] { toggle_pin(ui.view(), metal.slug); });
    offer("open the metal's sheet", "open", [&] { show_metal(ui.session, metal.slug); });
    ImGui::EndPopup();
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
    const bool hovered = ImGui::IsItemHovered();
    draw_menu(ui, id, metal, property, value, words);
    if (!hovered) return;
    hover_text(ui, three_lines(ui, metal, property, value));
    if (style.opens && ImGui::IsMouseClicked(0)) ui.evidence.show(metal.slug, property.id);
}

void source_chip(Ui& ui, const std::string& id, const std::string& key) {
    if (key.empty()) return;
    const TextLook look(ui.fonts.small, ui.colours().dim);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {ui.px(6), ui.px(1)});
    const std::string name = chip_name(ui, key);
    if (ImGui::Button((name + "##" + id).c_str())) show_source(ui.session, key);
    ImGui::PopStyleVar();
    ui.probe.item(id, key);
    if (!ImGui::IsItemHovered()) return;
    const Reference* reference = ui.session.catalogue.reference(key);
    hover_text(ui, reference ? key + "\n" + reference_text(*reference) : key + "\nnot in the list of sources");
}

float chip_width(const Ui& ui, const std::string& key) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    return ImGui::CalcTextSize(chip_name(ui, key).c_str()).x + 2 * ui.px(6);
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
