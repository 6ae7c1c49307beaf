// What each view answers, in the sentence that the command line says too.
#include "answers/ask/short_answer.hpp"
#include "charts/words.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
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

/// The figure with its 90 % interval; empty where there is none.
std::string figure_at_90(Ui& ui, const std::string& slug, const Property& property) {
    const Result<SheetResult>& sheet = ui.session.sheet(slug);
    const auto row = static_cast<std::size_t>(&property - ui.session.catalogue.properties.data());
    if (!sheet || row >= sheet->rows.size() || !sheet->rows[row].value) return {};
    return shown_full(property, *sheet->rows[row].value, ui.session.units());
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
    std::string figures;
    for (const std::string& slug : ui.view().pins)
        if (const Metal* metal = ui.session.catalogue.metal(slug))
            if (const std::string figure = figure_at_90(ui, slug, *property); !figure.empty())
                figures += (figures.empty() ? "" : "; ") + metal->name + " " + figure;
    const std::string at = " at " + temperature_text(ui.session.conditions().temperature_K) + how_sure + ": ";
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

Answer of_drop(Ui& ui) {
    if (ui.view().pins.empty()) return {};
    if (ui.view().drop.against) {
        const Result<AgainstResult>* two = ui.session.drop.against(ui.session.part_conditions());
        return two && *two ? Answer{(*two)->sentence, (*two)->p_longer} : Answer{};
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
    return {capital(metal) + figure_of(page, ": ", "Temperatures", "") + figure_of(page, ", ", "Charge", " to melt") +
            figure_of(page, ", pattern ", "Pattern", "") + figure_of(page, ", freezes in ", "Freezing", "") +
            figure_of(page, ", heat and metal cost ", "Heat and cost", "") + "."};
}

Answer of_mix(Ui& ui) {
    const MixSheet* sheet = ui.session.mix();
    if (!sheet || !sheet->answer) return {};
    const MixResult& mix = *sheet->answer;
    std::string words = "The melt is " + short_words(mix.composition);
    const Property* density = ui.session.catalogue.property("density");
    if (density && mix.density)
        words += "; density about " +
                 significant(shown_number(*density, mix.density->value_si, ui.session.units()), 3) + " " +
                 pretty_unit(shown_unit(*density, ui.session.units()));
    if (mix.resistivity)
        words +=
            "; conductivity about " + significant(100 / mix.resistivity->estimate.value_si / iacs_S_m, 3) + " %IACS";
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
    std::size_t figures = 0, read = 0;
    for (const Metal& metal : ui.session.catalogue.metals)
        for (const Record& record : metal.records) {
            ++figures;
            read += record.citation.how_known == HowKnown::read ? 1 : 0;
        }
    return {std::to_string(figures) + " figures of metals from " +
            std::to_string(ui.session.catalogue.references.size()) + " sources, " +
            significant(100 * static_cast<double>(read) / static_cast<double>(std::max<std::size_t>(figures, 1)), 2) +
            " % of them read in the source itself, the others remembered or common practice and marked so."};
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
        if (ui.view().view == v.view) answer_band(ui, v.answer(ui));
}

} // namespace pourbook
