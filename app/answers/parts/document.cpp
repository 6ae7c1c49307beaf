#include "answers/parts/document.hpp"

#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <cmath>
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

} // namespace

Value number_or_null(double x) {
    return std::isfinite(x) ? Value(x) : Value();
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

DataFigure::DataFigure(std::string name, Value what, unsigned where) : id(std::move(name)), shown_in(where) {
    cell.value = std::move(what);
}

DataFigure::DataFigure(std::string name, DataCell what, std::string in_unit, unsigned where)
    : id(std::move(name)), cell(std::move(what)), shown_in(where), unit(std::move(in_unit)) {}

std::string DataFigure::words() const {
    if (const auto* text = std::get_if<std::string>(&cell.value)) return *text;
    if (const auto* number = std::get_if<double>(&cell.value)) return exact(*number);
    if (const auto* count = std::get_if<std::int64_t>(&cell.value)) return std::to_string(*count);
    if (const auto* flag = std::get_if<bool>(&cell.value)) return *flag ? "yes" : "no";
    return cell.text;
}

Sentence* Document::say(const std::string& text, unsigned shown_in, const std::string& indent) {
    if (text.empty()) return nullptr;
    Sentence& added = notes.emplace_back(text);
    added.shown_in = shown_in;
    added.indent = indent;
    added.after = parts.size();
    return &added;
}

std::vector<const DataTable*> Document::tables(unsigned place) const {
    std::vector<const DataTable*> out;
    for (const DataTable& part : parts)
        if (part.shown_in & place) out.push_back(&part);
    return out;
}

void add_source(Document& document, const Catalogue& catalogue, const std::string& key) {
    const Reference* reference = catalogue.reference(key);
    std::vector<const Reference*>& known = document.sources;
    if (reference && std::find(known.begin(), known.end(), reference) == known.end()) known.push_back(reference);
}

void collect_sources(Document& document, const Catalogue& catalogue) {
    for (const DataFigure& figure : document.figures)
        for (const std::string& key : figure.cell.sources) add_source(document, catalogue, key);
    for (const DataTable& part : document.parts)
        for (const auto& row : part.rows)
            for (const DataCell& cell : row)
                for (const std::string& key : cell.sources) add_source(document, catalogue, key);
}

std::string exact(double number) {
    return shortest_digits(number);
}

} // namespace pourbook
