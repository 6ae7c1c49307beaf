#include "core/quantity/format.hpp"

#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

int order_of(double value) {
    return value == 0 ? 0 : static_cast<int>(std::floor(std::log10(std::abs(value))));
}

} // namespace

std::string significant(double value, int figures) {
    if (!std::isfinite(value)) return std::isnan(value) ? "nan" : value > 0 ? "inf" : "-inf";
    if (value == 0) return "0";
    const int order = order_of(value);
    if (order < -4 || order >= 6) return scientific_digits(value, figures - 1);
    const int decimals = std::max(0, figures - 1 - order);
    if (figures - 1 - order >= 0) return fixed_digits(value, decimals);
    const double step = std::pow(10, order - figures + 1);
    return fixed_digits(std::round(value / step) * step, 0);
}

std::string trimmed(double value, int figures) {
    std::string text = significant(value, figures);
    if (text.find('.') == std::string::npos || text.find('e') != std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string rounded_to(double value, double uncertainty, int most) {
    if (!(uncertainty > 0) || !std::isfinite(uncertainty) || value == 0) return significant(value, most);
    const int figures = order_of(value) - order_of(uncertainty) + 2;
    return significant(value, std::clamp(figures, 2, most));
}

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string out;
    for (const std::string& w : words) out += (out.empty() ? "" : between) + w;
    return out;
}

} // namespace pourbook
