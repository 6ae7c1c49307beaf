#include "answers/writers/document_parts.hpp"

#include "core/quantity/format.hpp"
#include "questions/say/casting_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

/// "property of metal: reason" without what the row and column say already.
std::string reason_of(const std::string& problem) {
    const std::size_t colon = problem.find(": ");
    return colon == std::string::npos ? problem : problem.substr(colon + 2);
}

std::string unit_of(const Property& property, UnitSystem units) {
    return property.is_text ? "" : shown_unit(property, units);
}

} // namespace

Document start_document(const std::string& title, const DocumentSetting& setting) {
    Document out;
    out.title = title;
    out.data_version = setting.catalogue.data_version;
    out.date = setting.date;
    return out;
}

Document start_document(const std::string& title, const Conditions& conditions, const DocumentSetting& setting,
                        double to_K) {
    Document out = start_document(title, setting);
    out.figures = {{"temperature_K", conditions.temperature_K}, {"condition", conditions.condition}};
    out.figures.emplace_back("temperature_to_K", number_or_null(to_K),
                             in::program | (std::isfinite(to_K) ? in::file : 0));
    if (!conditions.temper.empty()) out.figures.emplace_back("temper", conditions.temper, in::file);
    if (conditions.price_form != "exchange") out.figures.emplace_back("price_form", conditions.price_form, in::file);
    if (const std::string rate = shown_rate(setting.catalogue); !rate.empty() && setting.units != UnitSystem::base)
        out.figures.emplace_back("money_shown_at", rate, in::file);
    if (conditions.rrr) out.figures.emplace_back("purity_rrr", *conditions.rrr, in::file);
    return out;
}

void add_state(Document& out, const Conditions& conditions) {
    const bool casting = of_casting(conditions);
    out.figures.emplace_back("state", casting ? casting_words(*conditions.casting) : "handbook", in::program);
    if (casting) out.say("For a part " + state_line(*conditions.casting) + ".", in::text | in::file);
}

DataColumn column_of(const Property& property, UnitSystem units) {
    return {property.id, property.label, unit_of(property, units), !property.is_text, true};
}

DataColumn money_column(const std::string& id, const std::string& title, const ShownCurrency& money) {
    std::string code = money.name;
    for (char& c : code) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return {id + code, title, money.name, true};
}

DataCell cell_of(const Property& property, const Evaluated& e, UnitSystem units) {
    const double u = shown_uncertainty(property, e.value_si, e.standard_uncertainty_si, units);
    DataCell cell = property.is_text
                        ? DataCell::words(e.text)
                        : DataCell::figure(shown_number(property, e.value_si, units), shown_value(property, e, units));
    if (!property.is_text) cell.uncertainty = DataCell::figure(u, "").number;
    cell.basis = name_of(e.basis);
    cell.how_known = name_of(e.how_known);
    cell.condition = e.condition;
    if (e.stale) cell.mark = "stale price";
    for (const bool chosen : {true, false}) {
        for (const SourceValue& s : e.sources)
            if (s.chosen == chosen && std::find(cell.sources.begin(), cell.sources.end(), s.key) == cell.sources.end())
                cell.sources.push_back(s.key);
        if (chosen) cell.deciding = cell.sources.size();
    }
    return cell;
}

DataCell cell_of(const Property& property, const Result<Evaluated>& value, UnitSystem units) {
    if (value) return cell_of(property, *value, units);
    DataCell cell;
    cell.reason = reason_of(value.problem().text);
    return cell;
}

std::vector<const Property*> input_properties(const std::vector<RankInput>& inputs, const Catalogue& catalogue) {
    std::vector<const Property*> out;
    for (const RankInput& i : inputs)
        if (const Property* p = catalogue.property(i.property)) out.push_back(p);
    return out;
}

void add_input_cells(std::vector<DataCell>& row, const std::vector<const Property*>& properties,
                     const std::vector<RankInput>& inputs, UnitSystem units) {
    for (const Property* p : properties) {
        const auto input =
            std::find_if(inputs.begin(), inputs.end(), [&](const RankInput& i) { return i.property == p->id; });
        row.push_back(input == inputs.end() ? DataCell{} : cell_of(*p, input->value, units));
    }
}

MeritCells::MeritCells(const std::string& formula, const std::string& unit, const DocumentSetting& setting)
    : shown_(setting.catalogue, formula, unit, setting.units) {}

void MeritCells::add_columns(DataTable& table, const std::string& id, const std::string& title) const {
    table.columns.push_back({id + "median", title + "median", shown_.unit(), true});
    table.columns.push_back({id + "low90", title + "90 % low", shown_.unit(), true});
    table.columns.push_back({id + "high90", title + "90 % high", shown_.unit(), true});
}

void MeritCells::add_cells(std::vector<DataCell>& row, const Place& place) const {
    for (const std::size_t which : {0u, 1u, 2u}) row.push_back(cell(place, which));
}

DataCell MeritCells::cell(const Place& place, std::size_t which) const {
    const double a = shown_.number(place.low90), b = shown_.number(place.high90); // a conductivity in uohm.cm falls
    const double x = which == 0 ? shown_.number(place.median) : which == 1 ? std::min(a, b) : std::max(a, b);
    const bool known = std::isfinite(a) && std::isfinite(b);
    return DataCell::figure(x, known ? rounded_to(x, std::abs(b - a) / 2, 4) : significant(x, 4));
}

std::string MeritCells::interval(const Place& place) const {
    const std::string low = cell(place, 1).text, high = cell(place, 2).text;
    return low.empty() ? "" : low + "–" + high;
}

void add_metal_columns(DataTable& table) {
    table.columns.push_back({"metal", "metal"});
    table.columns.push_back({"name", "name", "", false, false, in::file});
}

void add_metal_cells(std::vector<DataCell>& row, const Metal& metal) {
    row.push_back(DataCell::words(metal.slug));
    row.push_back(DataCell::words(metal.name));
}

void add_left_out(Document& document, const std::string& title, const std::string& id, const std::vector<LeftOut>& list,
                  unsigned shown_in) {
    DataTable part{title, {}, {}, list.empty() ? in::program : shown_in, id, TableLook::lines};
    add_metal_columns(part);
    part.columns.push_back({"reason", "reason"});
    part.columns.push_back({"missing", "missing", "", false, false, in::program});
    if (id == "excluded") part.columns.pop_back(); // nothing is missing: it is not wanted
    for (const LeftOut& l : list) {
        part.rows.emplace_back();
        add_metal_cells(part.rows.back(), *l.metal);
        part.rows.back().push_back(DataCell::words(l.reason));
        if (id != "excluded") part.rows.back().push_back(DataCell::both("", l.missing));
    }
    document.parts.push_back(std::move(part));
}

} // namespace pourbook
