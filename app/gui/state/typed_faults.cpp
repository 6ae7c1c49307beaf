#include "gui/state/typed_faults.hpp"

#include "core/ranking/formula.hpp"
#include "questions/metals/temperature_words.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string with_column(const Problem& p, const std::string& text) {
    const std::string place = p.column > 0 ? "column " + std::to_string(p.column) + ": " : "";
    return (text.empty() ? "" : "'" + text + "', ") + place + p.text;
}

} // namespace

std::vector<std::string> split_conditions(const std::string& text) {
    std::vector<std::string> out;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t to = std::min(text.find_first_of(";\n", from), text.size());
        const std::string part = text.substr(from, to - from);
        const std::size_t first = part.find_first_not_of(" \t");
        if (first != std::string::npos) out.push_back(part.substr(first, part.find_last_not_of(" \t") - first + 1));
        from = to + 1;
    }
    return out;
}

std::string temperature_fault(const std::string& text) {
    if (text.empty()) return {}; // 20 degC
    const Result<TemperatureRange> range = temperature_range(text);
    return range ? "" : range.problem().text;
}

std::string formula_fault(const Catalogue& catalogue, const std::string& text) {
    const Result<Formula> formula = Formula::parse(text, catalogue);
    return formula ? "" : with_column(formula.problem(), "");
}

std::string conditions_fault(const Catalogue& catalogue, const std::string& text) {
    for (const std::string& part : split_conditions(text)) {
        const Result<Condition> condition = Condition::parse(part, catalogue);
        if (!condition) return with_column(condition.problem(), part);
    }
    return "";
}

} // namespace pourbook
