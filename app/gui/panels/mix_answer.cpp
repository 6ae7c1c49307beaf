// What the mix is: composition, estimates with interval and rule, phases, money, what to add, impurities, hazards.
#include "answers/mix/mix_report.hpp"
#include "answers/writers/page.hpp"
#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

void section(Ui& ui, const char* words) {
    ImGui::Spacing();
    const TextLook look(ui.fonts.strong, ui.colours().ink);
    text(words);
}

std::string hover_of(const Estimate& e) {
    std::string out = "\nan estimate from the composition\nrule: " + e.rule;
    if (!e.range.empty()) out += "\nholds for: " + e.range;
    if (!e.error.empty()) out += "\nerror: " + e.error;
    if (!e.trail.empty()) out += "\n\nTrail";
    for (const std::string& step : e.trail) out += "\n" + step;
    out += "\n\nSources";
    for (const Citation& c : e.sources)
        out += "\n" + c.source + ", " + c.locator + " (" + how_known_text(c.how_known) + ")";
    return in_print(std::move(out));
}

/// "51.0 MS/m" and the ends of the 90 % interval, in the unit shown.
class Figure {
public:
    Figure(const Property& p, UnitSystem units) : property_(p), units_(units) {}

    std::string value(const Estimate& e) const {
        const double u = shown_uncertainty(property_, e.value_si, e.standard_uncertainty_si, units_);
        return pretty_number(rounded_to(shown_number(property_, e.value_si, units_), u)) + " " +
               shown_unit(property_, units_);
    }
    std::string interval(const Estimate& e) const {
        const double a = shown_number(property_, e.low90_si, units_), b = shown_number(property_, e.high90_si, units_);
        return pretty_number(significant(std::min(a, b), 3)) + " to " + pretty_number(significant(std::max(a, b), 3));
    }

private:
    const Property& property_;
    UnitSystem units_;
};

void estimate_row(Ui& ui, const std::string& id, const char* property_id, const Result<Estimate>& e, UnitSystem units,
                  const char* short_label = nullptr) {
    const Property* p = ui.session.catalogue.property(property_id);
    if (!p) return;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    text(short_label ? short_label : p->label);
    ImGui::TableNextColumn();
    const Figure figure(*p, units);
    text(e ? figure.value(*e) : "no value");
    ui.probe.item("mix." + id, e ? figure.value(*e) : "no value");
    if (ImGui::IsItemHovered())
        hover_text(ui,
                   p->label + ": " + (e ? figure.value(*e) + hover_of(*e) : "no value\n" + in_print(e.problem().text)));
    ImGui::TableNextColumn();
    if (e) small_dim_text(ui, figure.interval(*e));
}

/// Of a resistivity the conductivity.
Result<Estimate> inverse_of(Result<Estimate> e) {
    if (!e) return e;
    const double low = 1 / e->high90_si, high = 1 / e->low90_si;
    e->standard_uncertainty_si /= e->value_si * e->value_si;
    e->value_si = 1 / e->value_si;
    e->low90_si = low;
    e->high90_si = high;
    return e;
}

void draw_estimates(Ui& ui, const MixResult& r) {
    section(ui, "Estimates");
    if (!ui.narrow()) ImGui::SameLine();
    small_dim_text(ui, "with the 90 % interval; hover for rule, error and sources");
    if (!ImGui::BeginTable("estimates", 3, ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthStretch, ui.narrow() ? 1.75F : 1.25F);
    ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 1);
    ImGui::TableSetupColumn("interval", ImGuiTableColumnFlags_WidthStretch, 1);
    const UnitSystem units = ui.session.units();
    const Result<Estimate> rho = r.resistivity ? Result<Estimate>(r.resistivity->estimate) : r.resistivity.problem();
    const auto end = [&](Estimate MeltingEstimate::*which) {
        return r.melting ? Result<Estimate>((*r.melting).*which) : Result<Estimate>(r.melting.problem());
    };
    estimate_row(ui, "conductivity", "conductivity", inverse_of(rho), units);
    estimate_row(ui, "resistivity", "resistivity", rho, UnitSystem::shown);
    estimate_row(ui, "thermal_conductivity", "thermal_conductivity", r.thermal_conductivity, units);
    estimate_row(ui, "density", "density", r.density, units);
    estimate_row(ui, "linear_expansion_at", "linear_expansion_at", r.linear_expansion, units, "linear expansion");
    estimate_row(ui, "solidus", "solidus", end(&MeltingEstimate::solidus), units);
    estimate_row(ui, "liquidus", "liquidus", end(&MeltingEstimate::liquidus), units);
    ImGui::EndTable();
}

void cell(const std::string& words) {
    ImGui::TableNextColumn();
    text_right(words);
}

void draw_composition(Ui& ui, const MixResult& r) {
    std::string head = short_words(r.composition);
    if (!r.precious.empty()) head = r.precious + " " + trimmed(r.composition.fineness(r.precious), 4) + " fine";
    heading(ui, head);
    ui.probe.item("mix.head", head);
    std::string sub = "estimate from the composition, " + std::string(name_of(r.treatment));
    if (r.composition.wt("Au") > 0) sub += " · " + trimmed(r.composition.karat(), 4) + " karat";
    if (r.blend) sub += " · " + trimmed(r.blend->mass_kg(), 6) + " kg in, " + trimmed(r.mass_kg, 6) + " kg out";
    small_dim_text(ui, sub);
    if (!ImGui::BeginTable("elements", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchSame)) return;
    for (const char* name : {"element", "wt%", "at%", r.blend ? "kg in" : "##none"}) ImGui::TableSetupColumn(name);
    header_row(ui, 1);
    for (const Share& s : r.composition.shares()) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        text(s.element);
        cell(trimmed(s.wt_percent, 4));
        ui.probe.item("mix.wt." + s.element, trimmed(s.wt_percent, 4));
        cell(trimmed(s.at_percent, 4));
        std::string mass;
        if (r.blend)
            for (const ElementMass& e : r.blend->elements)
                if (e.element == s.element)
                    mass = e.kg() < 1e-3 ? pretty_number(significant(e.kg(), 2)) : trimmed(e.kg(), 6);
        cell(mass);
    }
    ImGui::EndTable();
}

/// A sentence where there is one.
void say(Ui& ui, const std::string& id, const std::string& words, Colour colour) {
    if (words.empty()) return;
    wrapped_text(words, colour);
    ui.probe.item(id, words);
}

void draw_phases(Ui& ui, const MixResult& r) {
    const Catalogue& c = ui.session.catalogue;
    say(ui, "mix.phases", phases_sentence(r, c, ui.session.units()), ui.colours().ink);
    say(ui, "mix.freezing", freezing_sentence(r, c, ui.session.units()), ui.colours().dim);
}

void draw_money(Ui& ui, const MixSheet& sheet) {
    const MixResult& r = *sheet.answer;
    section(ui, "Worth");
    if (!r.metal_value) {
        wrapped_text("no value: " + r.metal_value.problem().text, ui.colours().dim);
        return;
    }
    const auto money = [&](double usd, int figures) {
        return shown_money(ui.session.catalogue, usd, figures, ui.session.units());
    };
    const NamedUnit each = price_mass_unit(ui.session.units());
    std::string words = "Metal " + money(r.metal_value->value_si * each.si, 3) + "/" + each.name;
    if (!std::isnan(sheet.worth_usd)) words += ", " + money(sheet.worth_usd, 4) + " in the melt after losses";
    if (!std::isnan(sheet.paid_usd)) words += "; paid " + money(sheet.paid_usd, 4);
    if (!sheet.paid_fault.empty()) words += "; " + sheet.paid_fault;
    wrapped_text(words, ui.colours().ink);
    ui.probe.item("mix.worth", words);
    if (ImGui::IsItemHovered()) {
        std::string hover = words;
        for (const std::string& step : r.metal_value->trail) hover += "\n" + step;
        hover_text(ui, hover);
    }
    const std::string rate = shown_rate(ui.session.catalogue);
    const TextLook look(ui.fonts.small, ui.colours().dim);
    wrapped_text("prices as old as " + r.value_as_of + (rate.empty() ? "" : ", " + rate) +
                     "; without premium, making or refining",
                 ui.colours().dim);
}

void draw_addition(Ui& ui, const MixResult& r) {
    const std::string words = addition_sentence(r, ui.session.units());
    if (words.empty()) return;
    section(ui, "To bring it there");
    say(ui, "mix.addition", words, ui.colours().ink);
}

void draw_impurities(Ui& ui, const char* title, const std::string& id, const std::vector<ImpurityEffect>& list) {
    const Property* p = ui.session.catalogue.property("conductivity");
    if (list.empty() || !p) return;
    section(ui, title);
    const std::string alone = shown_unit(*p, ui.session.units()) + " alone";
    if (!ImGui::BeginTable(id.c_str(), 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchSame)) return;
    for (const char* name : {"element", "wt%", "90 %", alone.c_str()}) ImGui::TableSetupColumn(name);
    header_row(ui, 1);
    const auto number = [](double x) { return std::isnan(x) ? std::string() : significant(x, 2); };
    for (const ImpurityEffect& i : list) {
        const bool too_much = i.content_wt > i.most_wt;
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        too_much ? dim_text(ui, i.element + " *") : text(i.element);
        if (ImGui::IsItemHovered())
            hover_text(ui, i.element + (too_much ? ": more than can dissolve (" + number(i.most_wt) + " %)" : "") +
                               hover_of(i.per_wt));
        cell(number(i.content_wt));
        ui.probe.item(id + "." + i.element, number(i.content_wt));
        cell(std::isnan(i.low90_wt) ? "" : number(i.low90_wt) + "–" + number(i.high90_wt));
        cell(significant(shown_number(*p, 1 / i.resistivity_si, ui.session.units()), 3));
    }
    ImGui::EndTable();
    const bool any = std::any_of(list.begin(), list.end(), [](const auto& i) { return i.content_wt > i.most_wt; });
    if (any) small_dim_text(ui, "* more than the host can dissolve");
}

void draw_hazards(Ui& ui, const MixSheet& sheet) {
    if (sheet.cautions.empty()) return;
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().warning);
        text("Hazards");
    }
    for (const Caution* c : sheet.cautions) {
        wrapped_text(c->element + ": " + c->text, ui.colours().ink);
        source_chip(ui, "mix.caution." + c->element, c->citation.source);
    }
}

} // namespace

void draw_mix_answer(Ui& ui, const MixSheet& sheet) {
    const MixResult& r = *sheet.answer;
    draw_composition(ui, r);
    table_row(ui, "mix", [&](const DocumentSetting& setting) { return document_of(r, setting); });
    draw_estimates(ui, r);
    draw_phases(ui, r);
    draw_addition(ui, r);
    draw_money(ui, sheet);
    draw_impurities(ui, "With a dissolved impurity", "mix.impurity", r.impurities);
    draw_impurities(ui, "What would explain the measured figure", "mix.equivalent", r.equivalents);
    draw_hazards(ui, sheet);
    section(ui, "Sources");
    source_chips(ui, "mix.source", r.sources);
}

} // namespace pourbook
