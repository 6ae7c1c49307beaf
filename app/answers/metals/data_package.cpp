#include "answers/metals/data_package.hpp"

#include "answers/parts/citation.hpp"
#include "answers/parts/document.hpp"
#include "answers/parts/json_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>
#include <utility>

namespace pourbook {
namespace {

struct Column {
    const char* name;
    const char* type; // string | number | integer
    const char* meaning;
};

/// One CSV table with its description; a row is filled left to right.
class CsvTable {
public:
    CsvTable(std::string name, std::string title, std::vector<Column> columns, std::vector<std::string> key)
        : name_(std::move(name)), title_(std::move(title)), columns_(std::move(columns)), key_(std::move(key)) {
        for (std::size_t i = 0; i < columns_.size(); ++i) csv_ += (i ? "," : "") + std::string(columns_[i].name);
        csv_ += "\r\n";
    }

    template <class... Cells> void row(const Cells&... cells) {
        bool first = true;
        ((csv_ += (std::exchange(first, false) ? "" : ",") + cell(cells)), ...);
        csv_ += "\r\n";
    }
    void refers(const std::string& field, const std::string& table, const std::string& to) {
        foreign_.push_back({{"fields", field}, {"reference", {{"resource", table}, {"fields", to}}}});
    }

    std::string file() const { return name_ + ".csv"; }
    const std::string& csv() const { return csv_; }
    Json described() const {
        Json fields = Json::array();
        for (const Column& c : columns_)
            fields.push_back({{"name", c.name}, {"type", c.type}, {"description", c.meaning}});
        Json schema = {{"fields", fields}, {"primaryKey", key_}, {"missingValues", Json::array({""})}};
        if (!foreign_.empty()) schema["foreignKeys"] = foreign_;
        return {
            {"name", name_},           {"path", file()},      {"title", title_}, {"profile", "tabular-data-resource"},
            {"mediatype", "text/csv"}, {"encoding", "utf-8"}, {"schema", schema}};
    }

private:
    /// RFC 4180, to the letter: this table is read by programs, so nothing is put before a minus sign.
    static std::string cell(const std::string& text) {
        if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
        std::string out = "\"";
        for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
        return out + "\"";
    }
    static std::string cell(std::size_t count) { return std::to_string(count); }
    static std::string cell(double number) { return std::isnan(number) ? std::string() : exact(number); }

    std::string name_, title_, csv_;
    std::vector<Column> columns_;
    std::vector<std::string> key_;
    Json foreign_ = Json::array();
};

constexpr const char* between_texts = "; ";

std::string composition_of(const Metal& m) {
    std::vector<std::string> parts;
    for (const Portion& p : m.composition) parts.push_back(p.element + " " + exact(p.wt_percent));
    return joined(parts, between_texts);
}

std::string limits_of(const Metal& m) {
    std::vector<std::string> parts;
    for (const Portion& p : m.composition)
        if (!p.limits.empty()) parts.push_back(p.element + " " + p.limits);
    return joined(parts, between_texts);
}

CsvTable metals(const Catalogue& c) {
    CsvTable t("metals", "Metals and alloys",
               {{"slug", "string", "name in the program and in records.csv"},
                {"name", "string", "usual name"},
                {"kind", "string", "element or alloy"},
                {"family", "string", "family of the trade"},
                {"designations", "string", "of standards, separated by semicolons"},
                {"aliases", "string", "other names, separated by semicolons"},
                {"composition_wt_percent", "string", "nominal, element and per cent by mass"},
                {"limits_wt_percent", "string", "as a standard prints them"},
                {"composition_source", "string", "key in sources.csv"},
                {"composition_locator", "string", "where in the source"},
                {"composition_how_known", "string", "read, memory, common practice or computed"},
                {"reference_condition", "string", "state that is compared"},
                {"reference_temper", "string", "temper that is compared"},
                {"note", "string", "what surprises people"}},
               {"slug"});
    for (const Metal& m : c.metals) {
        if (m.own) continue;
        const bool cited = !m.composition_citation.source.empty();
        t.row(m.slug, m.name, m.kind, m.family, joined(m.designations, between_texts), joined(m.aliases, between_texts),
              composition_of(m), limits_of(m), m.composition_citation.source, m.composition_citation.locator,
              std::string(cited ? name_of(m.composition_citation.how_known) : ""), m.reference_condition,
              m.reference_temper, m.note);
    }
    return t;
}

std::vector<Column> record_columns() {
    return {{"id", "string", "of the record, given once and never used again"},
            {"position", "integer", "of the figure within the record, from 0"},
            {"metal", "string", "slug in metals.csv"},
            {"property", "string", "id in properties.csv"},
            {"phase", "string", "solid, liquid or any"},
            {"condition", "string", "annealed, as-cast ...; empty: not stated"},
            {"temper", "string", "designation of the temper"},
            {"process", "string", "sand, die ..."},
            {"purity", "string", "as stated"},
            {"temperature_K", "number", "of the figure"},
            {"value_si", "number", "middle of a range"},
            {"low_si", "number", "lower end or lower bound"},
            {"high_si", "number", "upper end or upper bound"},
            {"half_digit_si", "number", "half a unit of the last printed digit"},
            {"printed", "string", "the figure in the unit beside it; an equation's coefficients"},
            {"unit", "string", "of the printed figure"},
            {"from_K", "number", "lower end of a mean over a range"},
            {"coefficients_si", "string", "of value = sum c[i] (T - offset_K)^i, blank between them"},
            {"offset_K", "number", "of the equation"},
            {"equation_low_K", "number", "lower end of the equation"},
            {"equation_high_K", "number", "upper end of the equation"},
            {"valid_low_K", "number", "range the source states"},
            {"valid_high_K", "number", "range the source states"},
            {"uncertainty_printed", "string", "as stated"},
            {"uncertainty_relative", "number", "standard uncertainty, relative"},
            {"uncertainty_si", "number", "standard uncertainty, absolute"},
            {"text", "string", "of a property in words"},
            {"none", "string", "searched for and not found: what was looked for"},
            {"use", "string", "alternate, preferred, disputed or superseded"},
            {"why", "string", "of the use"},
            {"note", "string", "with the figure as printed where it was converted"},
            {"source", "string", "key in sources.csv"},
            {"locator", "string", "where in the source"},
            {"how_known", "string", "read, memory, common practice or computed"},
            {"through", "string", "transcription it was read in"}};
}

std::string coefficients_of(const Polynomial& p) {
    std::string out;
    for (const double c : p.coefficient_si) out += (out.empty() ? "" : " ") + exact(c);
    return out;
}

void add_figure(CsvTable& t, const Metal& m, const Record& r, std::size_t position, const Point& p,
                const std::string& printed) {
    const Polynomial none{{}, no_number, no_number, no_number};
    const Polynomial& e = r.equation ? *r.equation : none;
    t.row(r.id, position, m.slug, r.property, std::string(name_of(r.phase)), r.condition, r.temper, r.process, r.purity,
          p.temperature_K, p.value_si, p.low_si, p.high_si, p.printed.empty() ? no_number : p.half_digit_si, printed,
          r.unit, r.from_K, coefficients_of(e), e.offset_K, e.low_K, e.high_K, r.valid_low_K, r.valid_high_K,
          r.uncertainty_printed, r.uncertainty_relative, r.uncertainty_si, r.text, r.none, std::string(name_of(r.use)),
          r.why, r.note, r.citation.source, r.citation.locator, std::string(name_of(r.citation.how_known)),
          r.citation.through);
}

CsvTable records(const Catalogue& c) {
    CsvTable t("records", "Published figures, a row each", record_columns(), {"id", "position"});
    t.refers("metal", "metals", "slug");
    t.refers("property", "properties", "id");
    t.refers("source", "sources", "key");
    for (const Metal& m : c.metals) {
        if (m.own) continue;
        for (const Record& r : m.records) {
            for (std::size_t i = 0; i < r.points.size(); ++i) add_figure(t, m, r, i, r.points[i], r.points[i].printed);
            if (r.points.empty()) add_figure(t, m, r, 0, Point{}, r.equation_printed);
        }
    }
    return t;
}

CsvTable properties(const Catalogue& c) {
    CsvTable t("properties", "Dictionary of properties",
               {{"id", "string", "name in records.csv"},
                {"label", "string", "usual name"},
                {"meaning", "string", "definition"},
                {"si_unit", "string", "of value_si in records.csv; empty for words"}},
               {"id"});
    for (const Property& p : c.properties) t.row(p.id, p.label, p.meaning, p.si_unit);
    return t;
}

CsvTable sources(const Catalogue& c) {
    CsvTable t("sources", "Sources",
               {{"key", "string", "name in the other tables"},
                {"kind", "string", "standard, handbook, data sheet ..."},
                {"reliability", "string", "A, B, C; M for memory"},
                {"authors", "string", ""},
                {"title", "string", ""},
                {"place", "string", "journal, publisher, page"},
                {"year", "string", ""},
                {"doi", "string", ""},
                {"address", "string", ""},
                {"read_in", "string", "what was read"},
                {"reuse", "string", "terms of the source"},
                {"note", "string", ""}},
               {"key"});
    for (const Reference& r : c.references)
        t.row(r.key, r.kind, r.reliability, r.authors, r.title, r.where, r.year, r.doi, r.address, r.read_in, r.reuse,
              r.note);
    return t;
}

CsvTable prices(const Catalogue& c) {
    CsvTable t("prices", "Dated prices of metal",
               {{"set", "string", "price set"},
                {"metal", "string", "slug in metals.csv"},
                {"usd_per_kg", "number", "US dollars per kilogram"},
                {"low_usd_per_kg", "number", ""},
                {"high_usd_per_kg", "number", ""},
                {"printed", "string", "as printed"},
                {"unit", "string", "of the printed figure"},
                {"as_of", "string", "date of the price"},
                {"fresh_until", "string", "year and month after which it is stale"},
                {"form", "string", "market and form"},
                {"grade", "string", "not empty: less pure than the metal of metals.csv; prices alloys only"},
                {"source", "string", "key in sources.csv"},
                {"locator", "string", "where in the source"},
                {"how_known", "string", "read, memory, common practice or computed"}},
               {"set", "metal"});
    t.refers("metal", "metals", "slug");
    t.refers("source", "sources", "key");
    for (const PriceSet& set : c.price_sets)
        for (const Price& p : set.prices)
            t.row(set.id, p.metal, p.usd_per_kg, p.low_usd_per_kg, p.high_usd_per_kg, p.printed, p.unit, p.as_of,
                  p.fresh_until, p.form, p.grade, p.citation.source, p.citation.locator,
                  std::string(name_of(p.citation.how_known)));
    return t;
}

} // namespace

std::vector<PackageFile> data_package(const Catalogue& catalogue) {
    std::vector<PackageFile> files;
    Json resources = Json::array();
    for (const CsvTable& t :
         {metals(catalogue), records(catalogue), properties(catalogue), sources(catalogue), prices(catalogue)}) {
        files.push_back({t.file(), t.csv()});
        resources.push_back(t.described());
    }
    const Json licence = {{"name", "CC0-1.0"},
                          {"title", "CC0 1.0 Universal; exceptions in the LICENSE file of the data"},
                          {"path", "https://creativecommons.org/publicdomain/zero/1.0/"}};
    const Json package = {{"profile", "tabular-data-package"},
                          {"name", "pourbook-reference"},
                          {"title", "Pourbook: cited properties of metals and alloys"},
                          {"version", catalogue.data_version},
                          {"description", "To cite: " + how_to_cite(catalogue.data_version)},
                          {"licenses", Json::array({licence})},
                          {"resources", resources}};
    files.insert(files.begin(), {"datapackage.json", package.dump(2) + "\n"});
    return files;
}

} // namespace pourbook
