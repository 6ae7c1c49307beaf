#include "gui/state/explain.hpp"

#include "answers/writers/page.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>
#include <cstdlib>
#include <set>

namespace pourbook {
namespace {

/// Another source's value, to the figures that the uncertainty of the chosen one supports.
std::string figure(const Property& property, double si, const Evaluated& chosen, UnitSystem units) {
    Evaluated one = chosen;
    one.value_si = si;
    const std::string unit = shown_unit(property, units);
    return shown_value(property, one, units) + (unit.empty() ? "" : " " + unit);
}

bool is_stated(const std::string& condition) {
    return !condition.empty() && condition != "unstated";
}

std::string source_line(const SourceValue& s, const Property& property, const Evaluated& value, UnitSystem units) {
    std::string line = s.key + ", " + s.locator + ": " + s.printed;
    if (!property.is_text && std::isfinite(s.value_si)) {
        const double number = shown_number(property, s.value_si, units);
        const bool as_printed = std::abs(std::strtod(s.printed.c_str(), nullptr) - number) < 1e-6 * std::abs(number);
        if (!as_printed) line += " = " + figure(property, s.value_si, value, units);
    }
    line += " (" + how_known_text(s.how_known) + (is_stated(s.condition) ? ", " + s.condition : "") + ")";
    if (!s.through.empty()) line += ", through " + s.through;
    return line;
}

/// Each source in full once, behind the first figure taken from it.
void add_sources(Explained& out, const Catalogue& catalogue, const Property& property, const Evaluated& e,
                 UnitSystem units) {
    std::set<std::string> told;
    for (const SourceValue& s : e.sources) {
        out.sources.push_back(source_line(s, property, e, units));
        const Reference* reference = s.chosen ? catalogue.reference(s.key) : nullptr;
        if (reference && told.insert(s.key).second) out.sources.back() += "\n" + reference->full();
    }
}

std::string one_sigma(const Property& property, const Evaluated& e, UnitSystem units) {
    const double u = shown_uncertainty(property, e.value_si, e.standard_uncertainty_si, units);
    return u == 0 ? "none, exact" : "± " + significant(u, 2) + " " + shown_unit(property, units);
}

void add_facts(Explained& out, const Property& property, const Evaluated& e, UnitSystem units) {
    if (!property.is_text)
        out.facts.push_back("standard uncertainty: " + one_sigma(property, e, units) +
                            (e.uncertainty_assumed ? ", assumed by us" : ""));
    if (const std::string rate = shown_rate(property); !rate.empty()) out.facts.push_back("shown at " + rate);
    if (!std::isnan(e.temperature_K)) out.facts.push_back("at " + celsius_text(e.temperature_K));
    if (is_stated(e.condition))
        out.facts.push_back("condition: " + e.condition + (e.condition_matches ? "" : " (the asked one is not cited)"));
    out.facts.push_back(std::string("basis: ") + name_of(e.basis) + (e.law.empty() ? "" : ", by " + e.law));
    out.facts.push_back("how known: " + how_known_text(e.how_known));
    if (!property.is_text && e.spread_high_si > e.spread_low_si)
        out.facts.push_back("spread among sources: " + figure(property, e.spread_low_si, e, units) + " to " +
                            figure(property, e.spread_high_si, e, units));
}

} // namespace

std::string Explained::text() const {
    std::string out = head;
    const auto add = [&](const char* title, const std::vector<std::string>& lines) {
        if (lines.empty()) return;
        out += title;
        for (const std::string& line : lines) out += "\n" + line;
    };
    add("", facts);
    add("\n\nSources", sources);
    add("\n\nTrail", trail);
    return in_print(std::move(out));
}

Explained explain(const Catalogue& catalogue, const Metal& metal, const Property& property,
                  const Result<Evaluated>& value, UnitSystem units) {
    const std::string name = shown_label(property, units) + " of " + metal.name;
    if (!value) return {name + ": no value", {value.problem().text}, {}, {}};
    Explained out;
    out.head = name + ": " + shown_with_level(property, *value, units);
    add_facts(out, property, *value, units);
    add_sources(out, catalogue, property, *value, units);
    out.trail = value->trail;
    return out;
}

std::string reference_text(const Reference& r) {
    std::string text = r.full() + "\n" + r.kind + ", " + reliability_text(r.reliability);
    if (!r.read_in.empty()) text += "\nread in: " + r.read_in;
    return text;
}

std::string reliability_text(const std::string& grade) {
    if (grade == "A") return "A: standard or critical evaluation in good text";
    if (grade == "B") return "B: handbook or sheet that agrees with a second source";
    if (grade == "C") return "C: usable, rounded or of unclear origin";
    if (grade == "M") return "M: memory only";
    return "not graded";
}

} // namespace pourbook
