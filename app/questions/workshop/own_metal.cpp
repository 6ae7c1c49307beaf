#include "questions/workshop/own_metal.hpp"

#include "core/materials/names.hpp"
#include "core/quantity/unit.hpp"
#include "questions/mix/mix_words.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

Problem wrong(const std::string& field, const std::string& text, const std::string& remedy,
              Problem::Kind kind = Problem::Kind::unreadable) {
    return {kind, field + " '" + text + "': " + remedy, 0};
}

Citation citation_of(const OwnValue& v) {
    std::string locator = v.from.empty() ? "entered by the user" : v.from;
    if (!v.date.empty()) locator += ", " + v.date;
    return {own_values_key, locator, HowKnown::own, ""};
}

/// The unit as written behind the number; the property's own where there is none.
std::string unit_behind(const std::string& written, const Property& property) {
    std::string_view rest = written;
    double number = 0;
    take_number(rest, number);
    const std::size_t first = rest.find_first_not_of(' ');
    return first == std::string_view::npos ? property.si_unit : std::string(rest.substr(first));
}

std::string number_in(const std::string& written) {
    std::string_view rest = written;
    double number = 0;
    take_number(rest, number);
    const std::string text = written.substr(0, written.size() - rest.size());
    return text.substr(0, text.find_last_not_of(' ') + 1);
}

/// "2 %" or a figure in a unit of the property (a difference, where that unit is a temperature).
Result<bool> read_uncertainty(const OwnValue& v, const Property& property, Record& r) {
    if (v.uncertainty.empty()) return true;
    const Problem bad =
        wrong("uncertainty", v.uncertainty, "2 % or a figure with a unit of " + property.id + " is expected");
    std::string_view rest = v.uncertainty;
    double number = 0;
    if (!take_number(rest, number) || !(number > 0)) return bad;
    const Result<Unit> unit = parse_unit(unit_behind(v.uncertainty, property));
    const bool relative = rest.find('%') != std::string_view::npos && rest.find("IACS") == std::string_view::npos;
    if (!unit || (!relative && !(unit->dimension == property.dimension))) return bad;
    (relative ? r.uncertainty_relative : r.uncertainty_si) = number * unit->scale;
    r.uncertainty_printed = v.uncertainty + ", standard";
    return true;
}

Result<bool> read_figure(const OwnValue& v, const Property& property, Record& r) {
    Point p;
    const Result<double> si = parse_si(v.written, property.dimension, property.id);
    if (!si)
        return wrong("value", v.written,
                     si.problem().text + "; write it with its unit, such as 12 " + property.si_unit);
    p.value_si = *si;
    if (*si < property.plausible_low_si || *si > property.plausible_high_si)
        return wrong("value", v.written,
                     "outside what is plausible for " + property.id + ": check unit and decimal point",
                     Problem::Kind::out_of_range);
    p.printed = number_in(v.written);
    if (v.temperature_K) p.temperature_K = *v.temperature_K;
    r.unit = unit_behind(v.written, property);
    r.points.push_back(p);
    if (property.id == "linear_expansion") r.from_K = room_temperature_K;
    return read_uncertainty(v, property, r);
}

void read_condition(const OwnValue& v, Record& r) {
    const bool named = is_among(v.condition, condition_names);
    (named ? r.condition : r.temper) = v.condition;
}

const Property& recorded_as(const Catalogue& catalogue, const Property& asked) {
    const Property* recorded = asked.from.empty() ? nullptr : catalogue.property(asked.from);
    return recorded ? *recorded : asked;
}

Result<bool> may_be_entered(const Property& property) {
    if (property.id == "price" || property.id == "metal_value")
        return wrong("property", property.id, "prices have a list of their own: `pourbook price add`",
                     Problem::Kind::refused);
    return true;
}

Result<bool> read_composition(const Catalogue& catalogue, const OwnMetal& own, Metal& m) {
    if (own.composition.empty()) return true;
    const Result<Composition> composition = composition_from(catalogue, own.composition);
    if (!composition)
        return wrong("composition", own.composition, composition.problem().text, composition.problem().kind);
    m.composition.clear();
    for (const Share& share : composition->shares()) m.composition.push_back({share.element, share.wt_percent, ""});
    m.composition_citation = {own_values_key, "entered by the user", HowKnown::own, ""};
    return true;
}

bool speaks_of(const Record& r, const Record& own) {
    static const std::array electrical = {"resistivity", "conductivity"};
    const auto is_electrical = [](const std::string& id) {
        return std::find(electrical.begin(), electrical.end(), id) != electrical.end();
    };
    const bool same = r.property == own.property || (is_electrical(r.property) && is_electrical(own.property));
    return same && (r.phase == own.phase || r.phase == Phase::any || own.phase == Phase::any);
}

} // namespace

Result<Metal> own_metal(const Catalogue& catalogue, const OwnMetal& own) {
    return own_metal(catalogue, own, catalogue.metal(own.like));
}

Result<Metal> own_metal(const Catalogue& catalogue, const OwnMetal& own, const Metal* like) {
    if (const Metal* there = catalogue.metal(own.name); there && !there->own)
        return wrong("name", own.name, "the reference calls " + there->slug + " so: choose another",
                     Problem::Kind::refused);
    Metal m;
    if (!own.like.empty()) {
        if (!like) return wrong("like", own.like, "unknown metal", Problem::Kind::unknown);
        m = *like;
    }
    m.own = true;
    m.slug = own.name;
    m.name = own.name + " (own)";
    m.kind = "alloy";
    m.aliases.clear();
    m.designations.clear();
    if (!own.family.empty()) m.family = own.family;
    if (m.family.empty()) m.family = "own";
    if (m.reference_condition.empty()) m.reference_condition = "as-cast";
    m.note = "The user's own metal" + (own.like.empty() ? "" : ", like " + own.like) +
             (own.note.empty() ? "." : ": " + own.note);
    const Result<bool> composition = read_composition(catalogue, own, m);
    if (!composition) return composition.problem();
    return m;
}

Result<Record> own_record(const Catalogue& catalogue, const OwnValue& v) {
    const Property* asked = catalogue.property(v.property);
    if (!asked) return wrong("property", v.property, "unknown property", Problem::Kind::unknown);
    const Result<bool> may = may_be_entered(*asked);
    if (!may) return may.problem();
    const Property& property = recorded_as(catalogue, *asked);
    Record r;
    r.id = v.metal + "." + property.id + ".own";
    r.property = property.id;
    r.phase = asked->phase != Phase::any ? asked->phase : phase_named(v.phase).value_or(Phase::any);
    r.note = v.note;
    r.citation = citation_of(v);
    read_condition(v, r);
    if (property.is_text) {
        r.text = v.written;
        return r;
    }
    const Result<bool> figure = read_figure(v, property, r);
    if (!figure) return figure.problem();
    return r;
}

void add_own_value(Metal& metal, Record record) {
    metal.records.erase_if(
        [&](const Record& r) { return r.citation.source != own_values_key && speaks_of(r, record); });
    metal.records.push_back(std::move(record));
}

} // namespace pourbook
