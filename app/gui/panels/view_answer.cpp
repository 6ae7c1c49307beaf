// What each view answers, in the sentence that the command line says too.
#include "answers/ask/short_answer.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/answer_band.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr std::array main_figures = {"conductivity", "density", "solidus", "liquidus", "price"};

std::vector<ValueResult> values_of(Ui& ui, const std::string& slug, const std::vector<std::string>& properties) {
    std::vector<ValueResult> out;
    const Result<SheetResult>& sheet = ui.session.sheet(slug);
    const Metal* metal = ui.session.catalogue.metal(slug);
    if (!sheet || !metal) return out;
    for (const std::string& id : properties)
        for (std::size_t row = 0; row < sheet->rows.size(); ++row)
            if (ui.session.catalogue.properties[row].id == id && sheet->rows[row].value)
                out.push_back(
                    {metal, &ui.session.catalogue.properties[row], *sheet->rows[row].value, ui.session.conditions()});
    return out;
}

Answer of_metals(Ui& ui) {
    return {
        sentence_of(values_of(ui, ui.view().selected, {main_figures.begin(), main_figures.end()}), ui.session.units())};
}

Answer of_rank(Ui& ui) {
    const Result<RankResult>* result = ui.session.ranking();
    if (!result || !*result || (*result)->ranked.empty()) return {};
    return {sentence_of(**result), (*result)->ranked.front().place.p_first};
}

Answer of_curves(Ui& ui) {
    std::vector<ValueResult> values;
    for (const std::string& slug : ui.view().pins)
        for (ValueResult& v : values_of(ui, slug, {ui.view().curves.property})) values.push_back(std::move(v));
    const std::string at = "at " + temperature_text(ui.session.conditions().temperature_K) + ": ";
    return {values.empty() ? "" : at + sentence_of(values, ui.session.units())};
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

Answer of_pour(Ui& ui) {
    const Result<PourSheet>* sheet = ui.session.pour_sheet();
    if (!sheet || !*sheet) return {};
    std::string words = (*sheet)->page.title;
    for (const PageSection& section : (*sheet)->page.sections)
        if (!section.figure.empty() && section.part != PageSection::Part::limits)
            words += (words == (*sheet)->page.title ? ": " : "; ") + section.title + " " + section.figure;
    return {words + "."};
}

Answer of_mix(Ui& ui) {
    const MixSheet* sheet = ui.session.mix();
    if (!sheet || !sheet->answer) return {};
    const MixResult& mix = *sheet->answer;
    std::string words = "The melt is " + short_words(mix.composition);
    const Property *density = ui.session.catalogue.property("density"),
                   *conductivity = ui.session.catalogue.property("conductivity");
    if (density && mix.density)
        words += "; density about " +
                 significant(shown_number(*density, mix.density->value_si, ui.session.units()), 3) + " " +
                 pretty_unit(shown_unit(*density, ui.session.units()));
    if (conductivity && mix.resistivity)
        words +=
            "; conductivity about " +
            significant(shown_number(*conductivity, 1 / mix.resistivity->estimate.value_si, ui.session.units()), 2) +
            " " + pretty_unit(shown_unit(*conductivity, ui.session.units()));
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
