#include "questions/say/casting_words.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/laws/casting_value.hpp"
#include "core/laws/host.hpp"
#include "core/laws/traces.hpp"
#include "core/materials/names.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

std::string treatment_words(const CastingState& state) {
    if (state.treatment.empty() || state.treatment == "as-cast") return "as cast";
    return "cast and " + state.treatment;
}

std::string feedstock_words(const CastingState& state) {
    if (!state.contents.empty()) return "";
    if (state.feedstock.empty()) return ", feedstock not stated";
    const bool plain = state.feedstock == "ingot" || state.feedstock == "scrap";
    return " from " + (state.feedstock == "scrap" ? std::string("mixed ") : "") + state.feedstock +
           (plain ? "" : " scrap");
}

std::string percent_range(double low, double high) {
    return (low == high ? trimmed(low, 3) : trimmed(low, 3) + " to " + trimmed(high, 3)) + " %";
}

/// What a trace adds at most, or nothing where no increment is kept.
double most_added_si(const Catalogue& catalogue, const Metal& metal, const Trace& trace) {
    const Metal* host = main_element(catalogue, metal);
    if (!host || !trace.dissolved) return 0;
    const Result<Estimate> k = increment_per_wt(catalogue, symbol_of(*host), trace.element);
    return k ? k->value_si * trace.high_wt : 0;
}

} // namespace

std::string element_word(const Catalogue& catalogue, const std::string& symbol) {
    if (const Metal* element = catalogue.element(symbol)) {
        std::string name = element->name;
        return name.substr(0, name.find(" ("));
    }
    return symbol == "P" ? "phosphorus" : symbol == "O" ? "oxygen" : symbol == "S" ? "sulphur" : symbol;
}

std::string casting_words(const CastingState& state) {
    std::string text = treatment_words(state) + feedstock_words(state);
    for (const ContentRange& c : state.contents) text += ", " + c.element + " " + percent_range(c.low_wt, c.high_wt);
    if (state.porosity) text += ", porosity " + percent_range(100 * state.porosity->low, 100 * state.porosity->high);
    return text;
}

std::string state_line(const CastingState& state) {
    return casting_words(state) + "; handbook metal: --as handbook";
}

bool of_casting(const Conditions& conditions) {
    return conditions.casting && conditions.condition == reference_condition_name && conditions.temper.empty();
}

std::string casting_words(const Catalogue& catalogue, const Metal& metal, const CastingState& state) {
    std::string text = treatment_words(state) + feedstock_words(state);
    const Trace* first = nullptr;
    const std::vector<Trace> traces = traces_of(catalogue, metal, state);
    double most = 0;
    for (const Trace& t : traces) {
        const double added = most_added_si(catalogue, metal, t);
        if (added > most) first = &t;
        most = std::max(most, added);
    }
    if (first)
        text += ", " + element_word(catalogue, first->element) + " " + percent_range(first->low_wt, first->high_wt);
    const CastPorosity pores = porosity_of(catalogue, metal, state);
    const bool own = pores.practice && pores.practice->citation.how_known == HowKnown::own;
    return text + ", porosity " + percent_range(100 * pores.range.low, 100 * pores.range.high) +
           (own ? " (" + pores.practice->citation.locator + "; --own-trials off leaves them out)" : "");
}

} // namespace pourbook
