#include "answers/parts/document.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace pourbook {
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

void Document::tell(const std::string& id, Value value) {
    figures.emplace_back(id, std::move(value), in::program);
}

void Document::add_pairs(const std::string& heading) {
    DataTable table{heading, {{"what", "what"}, {"value", "value"}}, {}, in::text | in::file | in::window};
    table.look = TableLook::pairs;
    parts.push_back(std::move(table));
}

DataCell& Document::pair(const std::string& name, const std::string& words) {
    parts.back().rows.push_back({DataCell::words(name), DataCell::words(words)});
    return parts.back().rows.back().back();
}

DataCell& Document::pair(const std::string& name, const std::string& words, const std::string& id, Value value) {
    tell(id, std::move(value));
    return pair(name, words);
}

void Document::add_lines(const std::string& heading, const std::vector<std::string>& lines, unsigned shown_in) {
    if (lines.empty()) return;
    DataTable table{heading, {{"what", "what"}}, {}, shown_in};
    table.look = TableLook::lines;
    for (const std::string& line : lines) table.rows.push_back({DataCell::words(line)});
    parts.push_back(std::move(table));
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

} // namespace pourbook
