#include "answers/workshop/entries_report.hpp"

#include "answers/parts/table.hpp"
#include "answers/workshop/entry_json.hpp"
#include "answers/writers/csv_cell.hpp"
#include "answers/writers/writers.hpp"
#include "core/workshop/check_entry.hpp"

namespace pourbook {
namespace {

std::string unit_suffix(const std::string& unit) {
    return unit == "1" ? "" : unit == "1/s" ? "_per_s" : "_" + unit;
}

void add_si(const Field& field, const std::string& text, Json& si) {
    if (text.empty()) return;
    const std::string key = field.name + unit_suffix(field.unit);
    if (field.type == FieldType::quantity) {
        if (const auto value = quantity_si(field, text)) si[key] = json_number(*value);
    } else if (field.type == FieldType::quantities) {
        if (const auto values = quantities_si(field, text)) si[key] = *values;
    } else if (field.type == FieldType::money) {
        if (const auto money = money_from(text))
            si[field.name] = {{"per_kg", money->per_kg}, {"currency", money->currency}};
    }
}

std::string cell(const std::string& text) {
    return csv_cell(text, ",\"\r\n;\t|"); // whatever parts the columns for the reader
}

bool is_used(const std::vector<Entry>& entries, std::size_t field) {
    for (const Entry& entry : entries)
        if (!entry.values[field].empty()) return true;
    return false;
}

std::string short_line(std::string text) {
    constexpr std::size_t widest = 60;
    for (char& c : text)
        if (c == '\n' || c == '\t') c = ' ';
    if (text.size() <= widest) return text;
    std::size_t end = widest - 3;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end; // never inside a character
    return text.substr(0, end) + "...";
}

} // namespace

Json json_of_entry(const Kind& kind, const Entry& entry) {
    Json out = {{"number", entry.id}};
    Json si = Json::object();
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        out[kind.fields[i].name] = entry.values[i];
        add_si(kind.fields[i], entry.values[i], si);
    }
    if (!si.empty()) out["si"] = si;
    return out;
}

std::string json_of_entries(const Kind& kind, const std::vector<Entry>& entries) {
    Json out = Json::array();
    for (const Entry& entry : entries) out.push_back(json_of_entry(kind, entry));
    return json_text(out);
}

std::string csv_of_entries(const Kind& kind, const std::vector<Entry>& entries) {
    std::string out;
    for (std::size_t i = 0; i < kind.fields.size(); ++i) out += (i ? "," : "") + kind.fields[i].name;
    out += "\r\n";
    for (const Entry& entry : entries) {
        for (std::size_t i = 0; i < entry.values.size(); ++i) out += (i ? "," : "") + cell(entry.values[i]);
        out += "\r\n";
    }
    return out;
}

std::string tabs_of_entries(const Kind& kind, const std::vector<Entry>& entries) {
    DataTable table{kind.name, {}, {}};
    for (const Field& f : kind.fields) table.columns.push_back({f.name, f.name});
    for (const Entry& entry : entries) {
        std::vector<DataCell>& row = table.rows.emplace_back();
        for (const std::string& text : entry.values) row.push_back(DataCell::words(text));
    }
    return tab_separated(table);
}

std::string text_of_entries(const Kind& kind, const std::vector<Entry>& entries) {
    if (entries.empty()) return "Nothing yet: see `pourbook --help` on how to add " + kind.meaning + ".\n";
    DataTable table;
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (is_used(entries, i)) shown.push_back(i);
    table.columns.push_back(titled("number", true));
    for (const std::size_t i : shown) table.columns.push_back(titled(kind.fields[i].name));
    for (const Entry& entry : entries) {
        std::vector<std::string> row = {std::to_string(entry.id)};
        for (const std::size_t i : shown) row.push_back(short_line(entry.values[i]));
        table.add_words(row);
    }
    return as_text(table);
}

std::string json_of_changes(const std::vector<Change>& changes) {
    Json out = Json::array();
    for (const Change& c : changes)
        out.push_back({{"number", c.number}, {"at", c.at}, {"words", c.words}, {"undone", c.undone}});
    return json_text(out);
}

std::string text_of_changes(const std::vector<Change>& changes) {
    if (changes.empty()) return "Nothing was changed yet.\n";
    DataTable table;
    table.columns = {titled("number", true), titled("at"), titled("what"), titled("")};
    for (const Change& c : changes)
        table.add_words({std::to_string(c.number), c.at, short_line(c.words), c.undone ? "undone" : ""});
    return as_text(table);
}

} // namespace pourbook
