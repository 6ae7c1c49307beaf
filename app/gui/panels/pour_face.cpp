// Pour's face: the mould in section with its limits; and the pouring mode, large letters for across the room.
#include "charts/pour_drawing.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// The mean temperature of the mould's wall so long after it left the kiln.
double mould_after(const casting::Carry& carry, double seconds) {
    if (carry.seconds.empty()) return no_number;
    if (seconds >= carry.seconds.back()) return carry.mould_K.back();
    for (std::size_t i = 1; i < carry.seconds.size(); ++i) {
        if (carry.seconds[i] < seconds) continue;
        const double share = (seconds - carry.seconds[i - 1]) / (carry.seconds[i] - carry.seconds[i - 1]);
        return carry.mould_K[i - 1] + share * (carry.mould_K[i] - carry.mould_K[i - 1]);
    }
    return carry.mould_K.front();
}

void large(Ui& ui, const std::string& id, const std::string& name, const std::string& figure, Colour colour) {
    {
        const TextLook look(ui.fonts.large, ui.colours().dim);
        text(name);
    }
    if (!ui.narrow()) ImGui::SameLine(ui.px(330));
    const TextLook look(ui.fonts.clock, colour);
    text(figure);
    ui.probe.item("pouring." + id, figure);
}

/// How long the mould may still be carried: until it is colder than the plan's mould.
void draw_carry(Ui& ui, const PourSheet& sheet) {
    Pouring& p = ui.pouring;
    if (p.counting) {
        p.left_s -= static_cast<double>(ImGui::GetIO().DeltaTime);
        ui.moving = true;
    }
    const bool late = p.left_s < 0;
    large(ui, "clock", "carry the mould", trimmed(std::max(std::ceil(p.left_s), 0.0), 4) + " s",
          late ? ui.colours().warning : ui.colours().ink);
    if (late) {
        const TextLook look(ui.fonts.large, ui.colours().warning);
        wrapped_text("The time is up: back into the kiln rather than a cold mould.", ui.colours().warning);
    }
    const double wall_K = sheet.plan.carry ? mould_after(*sheet.plan.carry, p.carry_s - p.left_s) : no_number;
    if (std::isfinite(wall_K))
        large(ui, "mould", "mould now about", furnace_temperature(std::round(wall_K), ui.session.units()),
              ui.colours().ink);
    if (ImGui::Button(p.counting ? "Stop the clock" : "Start the clock")) p.counting = !p.counting;
    ui.probe.item("pouring.go", p.counting ? "stop" : "start");
    for (const double carry_s : {30.0, 60.0, 120.0}) {
        const std::string seconds = trimmed(carry_s, 3) + " s";
        flow(button_width(seconds));
        if (ImGui::Button(seconds.c_str())) p = {p.open, false, carry_s, carry_s};
        ui.probe.item("pouring." + trimmed(carry_s, 3), "");
    }
}

} // namespace

void draw_pour_drawing(Ui& ui, const PourSheet& sheet) {
    const std::string key = sheet.page.title + std::to_string(ui.session.pour_serial());
    if (ImGui::Button("Pouring mode")) ui.pouring.open = true;
    ui.probe.item("pour.mode", "Pouring mode");
    if (ImGui::IsItemHovered()) hover_text(ui, "Pouring mode\nlarge letters and a clock for the carry");
    chart_view(ui, "pour.drawing", key, rest_of_panel(ui, 460), [&](const Canvas& canvas) {
        return layout(pour_drawing(ui.session.catalogue, sheet.plan, sheet.limits, ui.session.units()), canvas);
    });
}

void draw_pouring_mode(Ui& ui) {
    const Result<PourSheet>* sheet = ui.pouring.open ? ui.session.pour_sheet() : nullptr;
    if (!sheet || !*sheet) return;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
    ImGui::Begin("pouring", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
    ui.probe.tab.cover();
    if (word_button(ui, "pouring.close", "close  Esc", false) ||
        ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape)))
        ui.pouring = {};
    const PourResult& plan = (**sheet).plan;
    if (const std::string& refusal = (**sheet).refusal; !refusal.empty()) {
        ImGui::PushFont(ui.fonts.large);
        wrapped_text("Not as your workshop stands: " + refusal, ui.colours().warning);
        ImGui::PopFont();
        ui.probe.item("pouring.refusal", refusal);
    }
    large(ui, "metal", "metal", plan.metal->name, ui.colours().ink);
    large(ui, "pour", "pour at", furnace_temperature(plan.heat.pour.value_si, ui.session.units()), ui.colours().accent);
    if (std::isfinite(plan.mould_K))
        large(ui, "mould_at", "mould at", furnace_temperature(plan.mould_K, ui.session.units()), ui.colours().ink);
    large(ui, "charge", "charge", mass_text(plan.charge.charge_kg, ui.session.units()), ui.colours().ink);
    draw_carry(ui, **sheet);
    ImGui::Spacing();
    ImGui::PushFont(ui.fonts.large);
    for (const casting::Warning& w : plan.cautions)
        wrapped_text("Caution: " + in_units_of(ui.session.units(), w.text), ui.colours().warning);
    ImGui::PopFont();
    ImGui::End();
}

} // namespace pourbook
