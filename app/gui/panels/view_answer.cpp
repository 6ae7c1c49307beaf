// What each view answers, in the sentence that the command line says too.
#include "answers/ask/short_answer.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/answer_band.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::array main_figures = {"conductivity", "density", "solidus", "liquidus", "price"};

std::string capital(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

/// Null without a sheet.
const Result<Evaluated>* value_on_sheet(Ui& ui, const std::string& slug, const Property& property) {
    const Result<SheetResult>& sheet = ui.session.sheet(slug);
    const auto row = static_cast<std::size_t>(&property - ui.session.catalogue.properties.data());
    return sheet && row < sheet->rows.size() ? &sheet->rows[row].value : nullptr;
}

/// The figure with its 90 % interval; empty where there is none.
std::string figure_at_90(Ui& ui, const std::string& slug, const Property& property) {
    const Result<Evaluated>* value = value_on_sheet(ui, slug, property);
    return value && *value ? shown_full(property, **value, ui.session.units()) : "";
}

constexpr const char* how_sure = " (± at 90 %)";

Answer of_metals(Ui& ui) {
    const Metal* metal = ui.session.catalogue.metal(ui.view().selected);
    if (!metal) return {};
    std::string figures;
    for (const char* id : main_figures)
        if (const Property* property = ui.session.catalogue.property(id))
            if (const std::string figure = figure_at_90(ui, metal->slug, *property); !figure.empty())
                figures += (figures.empty() ? "" : "; ") + shown_label(*property, ui.session.units()) + " " + figure;
    return {figures.empty() ? "" : capital(metal->name) + ": " + figures + how_sure + "."};
}

Answer of_curves(Ui& ui) {
    const Property* property = ui.session.catalogue.property(ui.view().curves.property);
    if (!property) return {};
    std::vector<std::pair<double, const Metal*>> known; // the lowest and the highest are enough for a sentence
    for (const std::string& slug : ui.view().pins)
        if (const Metal* metal = ui.session.catalogue.metal(slug))
            if (const Result<Evaluated>* value = value_on_sheet(ui, slug, *property); value && *value)
                known.emplace_back((**value).value_si, metal);
    std::sort(known.begin(), known.end());
    const auto figure = [&](const Metal* m) { return m->name + " " + figure_at_90(ui, m->slug, *property); };
    const std::string figures =
        known.empty()       ? ""
        : known.size() == 1 ? figure(known.front().second)
                            : "lowest " + figure(known.front().second) + ", highest " + figure(known.back().second);
    const std::string at = " at " + celsius_text(ui.session.conditions().temperature_K) + how_sure + ": ";
    return {figures.empty() ? "" : capital(shown_label(*property, ui.session.units())) + at + figures + "."};
}

/// The first three, and how likely the first is first.
Answer of_rank(Ui& ui) {
    const Result<RankResult>* result = ui.session.ranking();
    if (!result || !*result || (*result)->ranked.empty()) return {};
    const std::vector<RankedMetal>& ranked = (*result)->ranked;
    const double p = ranked.front().place.p_first;
    std::string words = "First is " + ranked[0].metal->name;
    if (std::isfinite(p)) words += " (" + significant(100 * p, 2) + " % likely)";
    if (ranked.size() > 1) words += ", then " + ranked[1].metal->name;
    if (ranked.size() > 2) words += " and " + ranked[2].metal->name;
    return {words + ".", p};
}

Answer of_compare(Ui& ui) {
    if (ui.view().pins.size() < 2) return {};
    const Result<VersusResult>* result = ui.session.versus();
    if (!result || !*result) return {};
    return {(*result)->sentence, (*result)->p_winner};
}

/// The two set-ups as A and B: the whole sentence stands below.
Answer of_two_set_ups(Ui& ui, const AgainstResult& r) {
    const bool alike =
        ui.view().drop.second == ui.view().drop_setup && ui.session.drop.metal() == ui.session.drop.second_metal();
    if (alike) return {"Two set-ups, still alike: change one thing of the second and see what it does."};
    const auto time = [](const DropResult& d) { return significant(d.fall.time_s, 3) + " s"; };
    const std::string a = time(r.first), b = time(r.second);
    if (r.tie)
        return {"A holds the magnet for " + a + ", B for " + b + ": the data can't tell them apart.", r.p_longer};
    return {std::string(r.second_longer ? "B holds the magnet " : "A holds the magnet ") +
                significant(r.ratio_median, 3) + " times as long as " + (r.second_longer ? "A" : "B") +
                " (90 %: " + significant(r.ratio_low90, 3) + " to " + significant(r.ratio_high90, 3) +
                "): " + (r.second_longer ? b + " against " + a : a + " against " + b) + ".",
            r.p_longer};
}

Answer of_drop(Ui& ui) {
    if (ui.view().pins.empty()) return {};
    if (ui.view().drop.against) {
        const Result<AgainstResult>* two = ui.session.drop.against(ui.session.part_conditions());
        return two && *two ? of_two_set_ups(ui, **two) : Answer{};
    }
    const DropQuestions::Falls* falls = ui.session.drop.falls(ui.session.part_conditions());
    if (!falls || !*falls) return {};
    for (const DropOfMetal& d : (**falls).drops)
        if (d.metal->slug == ui.session.drop.metal() && d.result) return {sentence_of(*d.result)};
    return {};
}

/// The figure of a section of the sheet, between these words; empty where the sheet has none.
std::string figure_of(const Page& page, const char* before, const char* section, const char* behind) {
    for (const PageSection& s : page.sections)
        if (s.title == section && !s.figure.empty()) return before + s.figure + behind;
    return {};
}

Answer of_pour(Ui& ui) {
    const Result<PourSheet>* sheet = ui.session.pour_sheet();
    if (!sheet || !*sheet) return {};
    const Page& page = (*sheet)->page;
    const std::string metal = (*sheet)->plan.metal->name;
    const std::string& refusal = (*sheet)->refusal;
    return {(refusal.empty() ? "" : "Not as your workshop stands: " + refusal + ". Without that limit: ") +
            capital(metal) + figure_of(page, ": ", "Temperatures", "") + figure_of(page, ", ", "Charge", " to melt") +
            figure_of(page, ", pattern ", "Pattern", "") + figure_of(page, ", freezes in ", "Freezing", "") +
            figure_of(page, ", heat and metal cost ", "Heat and cost", "") + "."};
}

Answer of_mix(Ui& ui) {
    const MixSheet* sheet = ui.session.mix();
    if (!sheet || !sheet->answer) return {};
    const MixResult& mix = *sheet->answer;
    std::string words = "The melt is " + short_words(mix.composition);
    const auto about = [&](const char* id, double si) {
        const Property* p = ui.session.catalogue.property(id);
        return p ? std::string(" about ") + significant(shown_number(*p, si, ui.session.units()), 3) + " " +
                       pretty_unit(shown_unit(*p, ui.session.units()))
                 : "";
    };
    if (mix.density) words += "; density" + about("density", mix.density->value_si);
    if (mix.resistivity) words += "; conductivity" + about("conductivity", 1 / mix.resistivity->estimate.value_si);
    return {words + " (estimates from its composition)."};
}

Answer of_trials(Ui& ui) {
    const std::vector<TrialLines>* trials = ui.session.trials();
    if (!trials) return {};
    if (trials->empty() || trials->back().lines.empty())
        return {"Nothing has been measured yet: a timed fall says which metal a casting is."};
    return {trials->back().name + ": " + trials->back().lines.front()};
}

Answer of_sources(Ui& ui) {
    const CheckResult* check = ui.session.self_check();
    if (!check) return {};
    const double share =
        static_cast<double>(check->values_read) / static_cast<double>(std::max<std::size_t>(check->values, 1));
    return {
        std::to_string(check->values) + " published values of metals from " + std::to_string(check->references) +
        " sources, " + significant(100 * share, 2) +
        " % of them read in the source itself, the others worked out, remembered or common practice and marked so."};
}

/// Whose figures the answer holds; empty where they are of no metal's record.
std::string state_of(Ui& ui, const std::string& view) {
    const bool of_part = view == "rank" || view == "compare" || view == "drop",
               of_sheet = view == "metals" || view == "curves";
    if (!of_part && !of_sheet) return "";
    return state_word(of_part ? ui.session.part_conditions() : ui.session.conditions());
}

struct ViewAnswer {
    const char* view;
    Answer (*answer)(Ui&);
};
constexpr ViewAnswer view_answers[] = {{"metals", of_metals},   {"rank", of_rank},     {"curves", of_curves},
                                       {"compare", of_compare}, {"drop", of_drop},     {"pour", of_pour},
                                       {"mix", of_mix},         {"trials", of_trials}, {"sources", of_sources}};

} // namespace

void draw_view_answer(Ui& ui) {
    for (const ViewAnswer& v : view_answers)
        if (ui.view().view == v.view) {
            Answer answer = v.answer(ui);
            answer.state = state_of(ui, v.view);
            answer_band(ui, answer);
        }
}

} // namespace pourbook
