#include "answers/parts/table.hpp"

#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

namespace pourbook {
namespace {

double without_noise(double number) {
    constexpr int figures = 12;
    const std::string written = scientific_digits(number, figures - 1);
    std::string_view text = written;
    double read = number;
    take_decimal(text, read);
    return read;
}

std::string padded(const std::string& text, std::size_t width, bool right) {
    const std::string blanks(width - std::min(width, characters(text)), ' ');
    return right ? blanks + text : text + blanks;
}

} // namespace

std::size_t characters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

Value number_or_null(double x) {
    return std::isfinite(x) ? Value(x) : Value();
}

Value number_or_null(const std::optional<double>& x) {
    return x ? number_or_null(*x) : Value();
}

DataCell DataCell::words(const std::string& text) {
    DataCell cell;
    cell.text = text;
    return cell;
}

DataCell DataCell::figure(double number, const std::string& text) {
    DataCell cell;
    if (!std::isfinite(number)) return cell;
    cell.text = text;
    cell.number = without_noise(number);
    return cell;
}

DataCell DataCell::count(std::size_t n) {
    DataCell cell = n ? figure(static_cast<double>(n), std::to_string(n)) : DataCell{};
    if (n) cell.value = static_cast<std::int64_t>(n);
    return cell;
}

DataCell DataCell::both(const std::string& text, Value value) {
    DataCell cell = words(text);
    cell.value = std::move(value);
    return cell;
}

DataColumn titled(const std::string& title, bool right) {
    return {title, title, "", right};
}

void DataTable::add_words(const std::vector<std::string>& words) {
    std::vector<DataCell>& row = rows.emplace_back();
    for (const std::string& word : words) row.push_back(DataCell::words(word));
}

std::string exact(double number) {
    return shortest_digits(number);
}

std::string as_text(const DataTable& table) {
    std::vector<std::size_t> shown, widths;
    std::vector<std::vector<std::string>> lines(1);
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const DataColumn& c = table.columns[i];
        if (!(c.shown_in & in::text)) continue;
        shown.push_back(i);
        lines[0].push_back(c.title + (c.unit.empty() ? "" : ", " + c.unit));
    }
    for (std::size_t r = 0; r < table.told(); ++r) {
        auto& line = lines.emplace_back();
        for (const std::size_t i : shown) {
            const DataCell& cell = table.rows[r][i];
            line.push_back(cell.reason.empty() ? cell.text : "no value");
        }
    }
    widths.resize(shown.size());
    for (const auto& line : lines)
        for (std::size_t k = 0; k < shown.size(); ++k) widths[k] = std::max(widths[k], characters(line[k]));
    std::string out;
    for (const auto& line : lines) {
        std::string text;
        for (std::size_t k = 0; k < shown.size(); ++k)
            text += (k ? "  " : "") + padded(line[k], widths[k], table.columns[shown[k]].number);
        out += text.substr(0, text.find_last_not_of(' ') + 1) + "\n";
    }
    return out;
}

std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
    std::istringstream words(text);
    std::string out, line = text.substr(0, std::min(text.size(), text.find_first_not_of(' ')));
    bool empty = true;
    for (std::string word; words >> word; empty = false) {
        if (!empty && characters(line) + 1 + characters(word) > width) {
            out += line + "\n";
            line = indent;
            empty = true;
        }
        line += (empty ? "" : " ") + word;
    }
    return out + line + "\n";
}

} // namespace pourbook
