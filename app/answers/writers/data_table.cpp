#include "answers/writers/data_table.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace pourbook {
namespace {

double without_noise(double number) {
    constexpr int figures = 12;
    char buffer[64];
    const auto written =
        std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::scientific, figures - 1);
    double read = number;
    std::from_chars(buffer, written.ptr, read);
    return read;
}

} // namespace

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

void add_source(Document& document, const Catalogue& catalogue, const std::string& key) {
    const Reference* reference = catalogue.reference(key);
    std::vector<const Reference*>& known = document.sources;
    if (reference && std::find(known.begin(), known.end(), reference) == known.end()) known.push_back(reference);
}

void collect_sources(Document& document, const Catalogue& catalogue) {
    for (const DataTable& part : document.parts)
        for (const auto& row : part.rows)
            for (const DataCell& cell : row)
                for (const std::string& key : cell.sources) add_source(document, catalogue, key);
}

std::string exact(double number) {
    char buffer[64];
    return {buffer, std::to_chars(buffer, buffer + sizeof buffer, number).ptr};
}

} // namespace pourbook
