#include "gui/state/typed_quantity.hpp"

#include "core/quantity/number_text.hpp"

#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace pourbook {
namespace {

const std::vector<std::vector<std::string>> unit_families = {{"mm", "cm", "m", "in"},
                                                             {"g", "kg", "lb", "ozt"},
                                                             {"degC", "K", "degF"},
                                                             {"W", "kW"},
                                                             {"cm3", "l", "in3"},
                                                             {"s", "ms", "min"},
                                                             {"T", "mT"}};

/// + - * / and brackets over plain numbers. Nothing where the text is anything else.
class Sum {
public:
    explicit Sum(std::string_view text) : rest_(text) {}

    std::optional<double> value() {
        const double result = sum();
        blanks();
        return good_ && rest_.empty() && std::isfinite(result) ? std::optional(result) : std::nullopt;
    }

private:
    void blanks() {
        while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
    }
    bool takes(char sign) {
        blanks();
        if (rest_.empty() || rest_.front() != sign) return false;
        rest_.remove_prefix(1);
        return true;
    }
    double sum() {
        double left = product();
        while (true)
            if (takes('+'))
                left += product();
            else if (takes('-'))
                left -= product();
            else
                return left;
    }
    double product() {
        double left = one();
        while (true)
            if (takes('*'))
                left *= one();
            else if (takes('/'))
                left /= one();
            else
                return left;
    }
    double one() {
        if (takes('-')) return -one();
        if (takes('(')) {
            const double inside = ++depth_ < deepest ? sum() : 0;
            good_ = good_ && depth_ < deepest && takes(')');
            --depth_;
            return inside;
        }
        blanks();
        std::string number(rest_.substr(0, rest_.find_first_not_of("0123456789.,")));
        const std::size_t length = number.size();
        std::replace(number.begin(), number.end(), ',', '.');
        double value = 0;
        std::string_view left = number;
        good_ = good_ && take_decimal(left, value) && left.empty();
        rest_.remove_prefix(length);
        return value;
    }

    static constexpr int deepest = 50;
    std::string_view rest_;
    int depth_ = 0;
    bool good_ = true;
};

std::string trim(const std::string& text) {
    const std::size_t first = text.find_first_not_of(' ');
    return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

/// Written as people do: "µ" and "°" of units, millilitres, signs of print for minus and times.
std::string in_plain_signs(std::string text) {
    const auto turn = [&](const std::string& from, const std::string& to) {
        for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
            text.replace(at, from.size(), to);
    };
    turn("°C", "degC");
    turn("°F", "degF");
    turn("−", "-");
    turn("×", "*");
    turn("·", "*");
    if (text.size() > 2 && text.ends_with("ml")) text.replace(text.size() - 2, 2, "cm3");
    return text;
}

bool is_sum(const std::string& text) {
    const bool tolerance = text.find("+-") != std::string::npos || text.find("±") != std::string::npos;
    return !tolerance && text.find_first_of("*/()+-", 1) != std::string::npos;
}

/// "1/2", "1 1/2", "1-1/2": read as they stand.
bool is_fraction(const std::string& text) {
    std::string_view rest = text;
    return take_written_number(rest) && rest.empty();
}

/// Where the unit behind a sum begins: the first letter, percent or degree sign.
std::size_t unit_place(const std::string& text) {
    const auto at = std::find_if(text.begin(), text.end(), [](char c) {
        return !(c >= '0' && c <= '9') && std::string_view(" .,+-*/()").find(c) == std::string_view::npos;
    });
    return static_cast<std::size_t>(at - text.begin());
}

} // namespace

std::vector<std::string> units_beside(const std::string& unit) {
    for (const auto& family : unit_families)
        if (std::find(family.begin(), family.end(), unit) != family.end()) return family;
    return {unit};
}

std::string unit_sign(const std::string& unit) {
    return unit == "degC" ? "°C" : unit == "degF" ? "°F" : pretty_unit(unit);
}

SplitQuantity split_quantity(const std::string& text) {
    const std::string unit = unit_behind(text);
    const bool simple = !unit.empty() && text.ends_with(unit) && parse_unit(unit) &&
                        unit.find_first_of("0123456789 +@:") == unit.find_first_of("23"); // cm3 is a unit, 1mm@2 none
    if (simple) return {trim(text.substr(0, text.size() - unit.size())), unit};
    const std::size_t tolerance = text.find("+-");
    if (tolerance == std::string::npos) return {text, ""};
    const std::string behind = unit_behind(text.substr(tolerance + 2));
    if (behind.empty() || !parse_unit(behind)) return {text, ""};
    return {trim(text.substr(0, text.size() - behind.size())), behind};
}

std::string kept_quantity(const std::string& typed, const std::string& unit) {
    const std::string text = trim(in_plain_signs(typed));
    if (text.empty() || text.find(':') != std::string::npos) return text;
    const std::size_t at = unit_place(text);
    const std::string front = trim(text.substr(0, at)), behind = text.substr(at);
    if (is_sum(front) && !is_fraction(front))
        if (const auto value = Sum(front).value()) return trimmed(*value, 8) + (behind.empty() ? unit : behind);
    return is_bare(text) ? text + unit : text;
}

std::string echo_of(const std::string& kept, const std::string& unit) {
    const Result<Quantity> read = parse_quantity(kept);
    const Result<Unit> shown = parse_unit(unit);
    if (!read || !shown || !(read->dimension == shown->dimension)) return "";
    return "= " + trimmed(shown->from_si(read->si), 6) + " " + unit_sign(unit);
}

std::string in_unit(const std::string& kept, const std::string& unit) {
    const Result<Quantity> read = parse_quantity(kept);
    const Result<Unit> wanted = parse_unit(unit);
    if (!read || !wanted || !(read->dimension == wanted->dimension)) return kept;
    return trimmed(wanted->from_si(read->si), 6) + unit;
}

std::string nudged(const std::string& typed, int steps, bool far) {
    const std::size_t end =
        std::min(typed.find_first_not_of("0123456789.,", typed.starts_with("-") ? 1 : 0), typed.size());
    std::string number = typed.substr(0, end);
    const bool comma = number.find(',') != std::string::npos;
    std::replace(number.begin(), number.end(), ',', '.');
    double value = 0;
    std::string_view left = number;
    if (!take_decimal(left, value) || !left.empty()) return typed;
    const std::size_t point = number.find('.');
    const int decimals = point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
    value += steps * (far ? 10 : 1) * std::pow(10.0, -decimals);
    std::string out = fixed_digits(value, decimals);
    if (comma) std::replace(out.begin(), out.end(), '.', ',');
    return out + typed.substr(end);
}

} // namespace pourbook
