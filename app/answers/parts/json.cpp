#include "answers/parts/json.hpp"

#include "answers/parts/json_parts.hpp"
#include "questions/say/oldest_price.hpp"

namespace pourbook {
namespace {

Json composition_of(const Metal& metal) {
    Json parts = Json::object();
    for (const Portion& p : metal.composition)
        if (p.wt_percent > 0) parts[p.element] = p.wt_percent;
    return parts;
}

Json head_of(const Metal& m) {
    return {{"slug", m.slug},
            {"name", m.name},
            {"family", m.family},
            {"kind", m.kind},
            {"aliases", m.aliases},
            {"designations", m.designations},
            {"composition_wt_percent", composition_of(m)}};
}

Json source_of(const SourceValue& s) {
    Json out = {{"key", s.key},
                {"locator", s.locator},
                {"value", json_number(s.value_si)},
                {"how_known", name_of(s.how_known)},
                {"printed", s.printed},
                {"record", s.record_id},
                {"chosen", s.chosen}};
    if (!s.through.empty()) out["through"] = s.through;
    return out;
}

Json value_of(const Property& p, const Evaluated& e) {
    Json sources = Json::array();
    for (const SourceValue& s : e.sources) sources.push_back(source_of(s));
    Json out = {{"value", p.is_text ? Json(e.text) : json_number(e.value_si)},
                {"unit", p.si_unit},
                {"standard_uncertainty", p.is_text ? Json(nullptr) : json_number(e.standard_uncertainty_si)},
                {"uncertainty_assumed", e.uncertainty_assumed},
                {"temperature_K", json_number(e.temperature_K)},
                {"condition", e.condition.empty() ? Json(nullptr) : Json(e.condition)},
                {"condition_matches", e.condition_matches},
                {"basis", name_of(e.basis)},
                {"how_known", name_of(e.how_known)},
                {"law", e.law.empty() ? Json(nullptr) : Json(e.law)},
                {"sources", sources},
                {"spread", {{"low", json_number(e.spread_low_si)}, {"high", json_number(e.spread_high_si)}}},
                {"trail", e.trail}};
    return out;
}

void add_money(Json& out, const Property& p, const Evaluated& e, const Catalogue& catalogue) {
    if (p.id != "price" && p.id != "metal_value") return;
    const std::string as_of = oldest_price(e, catalogue);
    out["currency"] = "USD";
    out["stale"] = e.stale;
    out["as_of"] = as_of.empty() ? Json(nullptr) : Json(as_of);
}

Json record_of(const Record& r) {
    Json points = Json::array();
    for (const Point& p : r.points)
        points.push_back({{"temperature_K", json_number(p.temperature_K)},
                          {"value", json_number(p.value_si)},
                          {"printed", p.printed}});
    Json out = {{"id", r.id},         {"property", r.property}, {"phase", name_of(r.phase)}, {"condition", r.condition},
                {"temper", r.temper}, {"unit_printed", r.unit}, {"points", points}};
    if (r.equation) out["equation"] = r.equation_printed;
    for (const auto& [key, text] : {std::pair{"process", r.process},
                                    {"purity", r.purity},
                                    {"text", r.text},
                                    {"none", r.none},
                                    {"uncertainty", r.uncertainty_printed},
                                    {"why", r.why},
                                    {"note", r.note},
                                    {"through", r.citation.through}})
        if (!text.empty()) out[key] = text;
    out["use"] = name_of(r.use);
    out["source"] = r.citation.source;
    out["locator"] = r.citation.locator;
    out["how_known"] = name_of(r.citation.how_known);
    return out;
}

Json reference_of(const Reference& r) {
    Json out = {{"key", r.key}, {"full", r.full()}, {"kind", r.kind}, {"reliability", r.reliability}};
    for (const auto& [key, text] : {std::pair{"address", r.address},
                                    {"doi", r.doi},
                                    {"read_in", r.read_in},
                                    {"reuse", r.reuse},
                                    {"note", r.note}})
        if (!text.empty()) out[key] = text;
    return out;
}

} // namespace

std::string json_of_metals(const std::vector<const Metal*>& metals) {
    Json out = Json::array();
    for (const Metal* m : metals) out.push_back(head_of(*m));
    return json_text(out);
}

std::string json_of(const SheetResult& result, const Catalogue& catalogue) {
    Json out = head_of(*result.metal);
    out["note"] = result.metal->note;
    out["reference_condition"] = result.metal->reference_condition;
    if (!result.metal->composition_citation.source.empty())
        out["composition_source"] = {{"key", result.metal->composition_citation.source},
                                     {"locator", result.metal->composition_citation.locator},
                                     {"how_known", name_of(result.metal->composition_citation.how_known)}};
    Json properties = Json::object();
    for (const SheetRow& row : result.rows) {
        if (row.value) {
            properties[row.property->id] = value_of(*row.property, *row.value);
            add_money(properties[row.property->id], *row.property, *row.value, catalogue);
        } else {
            properties[row.property->id] = {{"value", nullptr}, {"reason", row.value.problem().text}};
        }
    }
    out["properties"] = properties;
    out["hazards"] = Json::array();
    for (const Caution* c : result.cautions)
        out["hazards"].push_back({{"element", c->element},
                                  {"text", c->text},
                                  {"excluded_from_home_casting", c->excludes_home_casting},
                                  {"source", c->citation.source},
                                  {"locator", c->citation.locator},
                                  {"how_known", name_of(c->citation.how_known)}});
    out["records"] = Json::array();
    for (const Record& r : result.metal->records) out["records"].push_back(record_of(r));
    out["sources"] = Json::array();
    for (const Reference* r : result.references) out["sources"].push_back(reference_of(*r));
    out["data_version"] = catalogue.data_version;
    return json_text(out);
}

std::string json_of_references(const std::vector<const Reference*>& references) {
    Json out = Json::array();
    for (const Reference* r : references) out.push_back(reference_of(*r));
    return json_text(out);
}

std::string json_of(const CheckResult& result, const Catalogue& catalogue, bool with_coverage, bool with_conflicts) {
    Json out = {{"metals", result.metals},
                {"elements", result.elements},
                {"alloys", result.alloys},
                {"records", result.records},
                {"values", result.values},
                {"values_read", result.values_read},
                {"values_computed", result.values_computed},
                {"references", result.references},
                {"prices", result.prices},
                {"without_source", result.without_source},
                {"core_answers", result.core_answers},
                {"core_answers_read", result.core_answers_read},
                {"conflicts_count", result.conflicts.size()},
                {"faults", result.faults},
                {"data_version", catalogue.data_version}};
    if (with_coverage) {
        out["coverage"] = Json::array();
        for (const CoverageCell& c : result.coverage)
            if (c.values > 0)
                out["coverage"].push_back({{"metal", c.metal->slug},
                                           {"property", c.property->id},
                                           {"values", c.values},
                                           {"preferred", c.preferred_source},
                                           {"how_known", name_of(c.how_known)}});
    }
    if (with_conflicts) {
        out["conflicts"] = Json::array();
        for (const Conflict& c : result.conflicts) {
            Json sources = Json::array();
            for (const SourceValue& s : c.value.sources) sources.push_back(source_of(s));
            out["conflicts"].push_back({{"metal", c.metal->slug},
                                        {"property", c.property->id},
                                        {"spread_percent", c.spread_percent},
                                        {"value", c.value.value_si},
                                        {"standard_uncertainty", c.value.standard_uncertainty_si},
                                        {"sources", sources}});
        }
    }
    return json_text(out);
}

} // namespace pourbook
