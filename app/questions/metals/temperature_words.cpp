#include "questions/metals/temperature_words.hpp"

#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

namespace pourbook {
namespace {

constexpr double hottest_K = 1e5;

} // namespace

Result<double> temperature_from(const std::string& text) {
    const Result<double> t = parse_si(text, base_dimension(Dimension::kelvin), "a temperature");
    if (!t) {
        const Problem& p = t.problem();
        if (is_bare(text)) return unreadable(p.text);
        return unreadable("column " + std::to_string(p.column) + ": " + p.text +
                              ": write 77K, 20C, 68F, ice, dry ice, liquid nitrogen or boiling water",
                          p.column);
    }
    if (*t > hottest_K) return unreadable("a temperature between 0 K and 100000 K is expected", 0);
    return t;
}

Result<TemperatureRange> temperature_range(const std::string& text) {
    const std::size_t colon = text.find(':');
    const Result<double> from = temperature_from(text.substr(0, colon));
    if (!from) return from.problem();
    if (colon == std::string::npos) return TemperatureRange{*from};
    const Result<double> to = temperature_from(text.substr(colon + 1));
    if (!to) return to.problem();
    if (!(*to > *from)) return unreadable("the range must rise, such as 77K:300K", 0);
    return TemperatureRange{*from, *to};
}

} // namespace pourbook
