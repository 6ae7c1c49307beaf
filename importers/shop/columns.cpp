#include "importers/shop/columns.hpp"

#include <algorithm>
#include <cctype>

namespace pourbook {
namespace {

std::string plain(const std::string& text) {
    std::string out;
    for (const char c : text) {
        const bool blank = c == '_' || c == '-' || c == ' ' || c == '\t' || c == '\r' || c == '\n';
        if (!blank) out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        if (blank && !out.empty() && out.back() != ' ') out += ' ';
    }
    while (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

/// "price [EUR/kg]" -> "price" and "EUR/kg".
std::string take_unit(std::string& header) {
    for (const auto& [open, close] : {std::pair{'[', ']'}, {'(', ')'}}) {
        const std::size_t from = header.find(open), to = header.rfind(close);
        if (from == std::string::npos || to == std::string::npos || to < from || from == 0) continue;
        const std::string unit = header.substr(from + 1, to - from - 1);
        header.erase(from);
        return unit;
    }
    return {};
}

/// The right side of the "left=right" whose left side fits; nothing where none does.
const std::string* said_of(const std::vector<std::string>& words, const std::string& left, std::string& place) {
    for (const std::string& word : words) {
        const std::size_t sign = word.find('=');
        if (sign == std::string::npos || plain(word.substr(0, sign)) != plain(left)) continue;
        place = word.substr(sign + 1);
        return &place;
    }
    return nullptr;
}

bool has_unit(const Field& field) {
    return field.type == FieldType::quantity || field.type == FieldType::quantities || field.type == FieldType::money ||
           field.name == "value";
}

std::size_t field_named(const Kind& kind, const std::string& name) {
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (plain(kind.fields[i].name) == name) return i;
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        for (const std::string& other : kind.fields[i].other_names)
            if (other == name) return i;
    return kind.fields.size();
}

/// The field that a column "unit" belongs to: the first required one that has a unit.
std::size_t main_quantity(const Kind& kind) {
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (kind.fields[i].required && has_unit(kind.fields[i])) return i;
    return kind.fields.size();
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Nothing but a number, a list of numbers or blanks.
bool is_bare(const std::string& text) {
    return text.find_first_not_of("0123456789+-.,;eE ") == std::string::npos &&
           std::any_of(text.begin(), text.end(), is_digit);
}

/// In a list only commas between digits can be decimal marks, and only where no point is.
void plain_list(std::string& text, bool decimal_comma) {
    if (!decimal_comma || text.find('.') != std::string::npos) return;
    for (std::size_t i = 1; i + 1 < text.size(); ++i)
        if (text[i] == ',' && is_digit(text[i - 1]) && is_digit(text[i + 1])) text[i] = '.';
}

/// "1.234,5" of "1.234,5 EUR/kg"; of "$5/kg" nothing.
std::string number_in_front(const std::string& text) {
    std::string number = text.substr(0, text.find_first_not_of("0123456789+-., "));
    return number.substr(0, number.find_last_not_of(' ') + 1);
}

/// "4.2, 4.3" with unit s -> "4.2 s, 4.3 s".
std::string with_unit(const std::string& text, const std::string& unit) {
    std::string out;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find_first_of(",;", from), text.size());
        std::string one = text.substr(from, end - from);
        const std::size_t first = one.find_first_not_of(' ');
        if (first != std::string::npos)
            out += (out.empty() ? "" : ", ") + one.substr(first, one.find_last_not_of(' ') - first + 1) + " " + unit;
        from = end + 1;
    }
    return out;
}

bool needs_unit(const Field& field) {
    return has_unit(field) && field.unit != "1" && field.unit != "1/s" && field.name != "value";
}

} // namespace

Columns::Column Columns::recognised(const std::string& header, const ColumnWords& words) const {
    Column column;
    column.header = header;
    column.field = kind_->fields.size();
    std::string name = header, said;
    column.unit = take_unit(name);
    name = plain(name);
    if (said_of(words.map, header, said) || said_of(words.map, name, said)) {
        if (said != "-") column.field = field_named(*kind_, plain(said));
        return column;
    }
    column.field = field_named(*kind_, name);
    if (column.field < kind_->fields.size() || !name.ends_with("unit")) return column;
    column.is_unit = true;
    const std::string of = plain(name.substr(0, name.size() - 4));
    column.field = of.empty() ? main_quantity(*kind_) : field_named(*kind_, of);
    return column;
}

Result<bool> Columns::add(const std::string& header, const ColumnWords& words) {
    Column column = recognised(header, words);
    const bool known = column.field < kind_->fields.size();
    if (!known) ignored_.push_back(header);
    for (const Column& other : columns_)
        if (known && other.field == column.field && other.is_unit == column.is_unit)
            return Problem{Problem::Kind::unreadable,
                           "columns '" + other.header + "' and '" + header + "' are both " +
                               kind_->fields[column.field].name + ": leave one out with --map \"" + header + "=-\"",
                           0};
    std::string unit;
    if (known && said_of(words.units, kind_->fields[column.field].name, unit)) column.unit = unit;
    columns_.push_back(std::move(column));
    return true;
}

Result<Columns> Columns::from(const Kind& kind, const std::vector<std::string>& headers, const ColumnWords& words) {
    for (const std::string& word : words.map) {
        const std::size_t sign = word.find('=');
        const std::string right = sign == std::string::npos ? "" : word.substr(sign + 1);
        if (right != "-" && field_named(kind, plain(right)) == kind.fields.size())
            return Problem{Problem::Kind::unreadable,
                           "--map '" + word + "': COLUMN=FIELD is expected, with a field of " + kind.name, 0};
    }
    Columns columns(kind);
    columns.fixed_ = words.fixed;
    for (const std::string& header : headers) {
        const Result<bool> added = columns.add(header, words);
        if (!added) return added.problem();
    }
    const auto known = [&](const Column& c) { return c.field < kind.fields.size() && !c.is_unit; };
    if (std::any_of(columns.columns_.begin(), columns.columns_.end(), known)) return columns;
    std::string names;
    for (const Field& field : kind.fields) names += (names.empty() ? "" : ", ") + field.name;
    return Problem{Problem::Kind::unreadable,
                   "no column is known: the first row must name them (" + names + "), or say --map COLUMN=FIELD", 0};
}

std::string Columns::unit_of(const Column& column, const std::vector<std::string>& cells) const {
    for (std::size_t i = 0; i < columns_.size() && i < cells.size(); ++i)
        if (columns_[i].is_unit && columns_[i].field == column.field) return cells[i];
    return column.unit;
}

/// A bare number of a field with a unit, made whole. Returns the fault.
std::string Columns::complete(const Column& column, const std::string& unit, bool other_list, std::string& text) const {
    const Field& field = kind_->fields[column.field];
    const bool list = field.type == FieldType::quantities;
    if (list) plain_list(text, other_list);
    const std::string fault = list ? "" : plain_number(text, other_list, column.marks);
    if (!fault.empty()) return fault;
    if (!unit.empty()) text = with_unit(text, unit);
    if (!unit.empty() || !needs_unit(field)) return {};
    return "'" + text + "' has no unit: name it in the header, such as " + field.name + " [" +
           (field.type == FieldType::money ? "EUR/kg" : field.unit) + "], or with --unit " + field.name + "=...";
}

/// A number with its unit behind it. Returns the fault.
std::string Columns::plain_figure(const Column& column, bool other_list, std::string& text) const {
    const FieldType type = kind_->fields[column.field].type;
    if (type == FieldType::quantities) plain_list(text, other_list);
    if (type != FieldType::quantity && type != FieldType::money) return {};
    std::string number = number_in_front(text);
    const std::string rest = text.substr(number.size());
    const std::string fault = plain_number(number, other_list, column.marks);
    text = number + rest;
    return fault;
}

void Columns::look_at(const std::vector<std::string>& cells) {
    for (std::size_t i = 0; i < cells.size() && i < columns_.size(); ++i) {
        Column& column = columns_[i];
        if (column.field == kind_->fields.size() || column.is_unit) continue;
        const Field& field = kind_->fields[column.field];
        if (has_unit(field) && field.type != FieldType::quantities) column.marks.look_at(number_in_front(cells[i]));
    }
}

void Columns::read(const std::vector<std::string>& cells, bool other_list, SourceRow& row) const {
    row.entry.id = 0;
    row.entry.values.assign(kind_->fields.size(), {});
    for (const auto& [field, text] : fixed_) text_of(*kind_, row.entry, field) = text;
    row.fault.clear();
    if (cells.size() > columns_.size()) {
        row.fault = "the row has " + std::to_string(cells.size()) + " cells, the header " +
                    std::to_string(columns_.size()) + ": a separator inside a cell needs quotes";
        row.fault_column = "-";
        return;
    }
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const Column& column = columns_[i];
        if (column.field == kind_->fields.size() || column.is_unit) continue;
        const Field& field = kind_->fields[column.field];
        std::string text = cells[i];
        const std::string fault = has_unit(field) && is_bare(text)
                                      ? complete(column, unit_of(column, cells), other_list, text)
                                      : plain_figure(column, other_list, text);
        if (!fault.empty() && row.fault.empty()) {
            row.fault = fault;
            row.fault_column = column.header;
        }
        row.entry.values[column.field] = std::move(text);
    }
}

std::string Columns::column_of(std::size_t field) const {
    for (const Column& column : columns_)
        if (column.field == field && !column.is_unit) return column.header;
    return kind_->fields[field].name;
}

} // namespace pourbook
