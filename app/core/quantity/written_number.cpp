#include "core/quantity/written_number.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

bool is_decimal_digit(char c) {
    return c >= '0' && c <= '9';
}
bool starts_with_digit(std::string_view text) {
    return !text.empty() && is_decimal_digit(text.front());
}
bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), is_decimal_digit);
}

std::string_view without_blanks(std::string_view text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
    while (text.ends_with(' ')) text.remove_suffix(1);
    return text;
}

std::string_view take_digits(std::string_view& text) {
    const auto end = std::find_if_not(text.begin(), text.end(), is_decimal_digit);
    const std::string_view digits = text.substr(0, static_cast<std::size_t>(end - text.begin()));
    text.remove_prefix(digits.size());
    return digits;
}

bool take_sign(std::string_view& text, std::string_view sign) {
    if (!text.starts_with(sign)) return false;
    text.remove_prefix(sign.size());
    return true;
}

struct FractionSign {
    std::string_view sign;
    double value;
};
constexpr std::array fraction_signs = {FractionSign{"½", 0.5},   FractionSign{"¼", 0.25},  FractionSign{"¾", 0.75},
                                       FractionSign{"⅛", 0.125}, FractionSign{"⅜", 0.375}, FractionSign{"⅝", 0.625},
                                       FractionSign{"⅞", 0.875}};

bool take_fraction_sign(std::string_view& text, double& value) {
    for (const FractionSign& f : fraction_signs)
        if (take_sign(text, f.sign)) {
            value = f.value;
            return true;
        }
    return false;
}

/// "1/2" at the front.
bool take_fraction(std::string_view& text, double& value) {
    std::string_view rest = text;
    std::string_view above = take_digits(rest);
    if (above.empty() || !(take_sign(rest, "/") || take_sign(rest, "⁄")) || !starts_with_digit(rest)) return false;
    std::string_view below = take_digits(rest);
    double a = 0, b = 0;
    if (!take_number(above, a) || !take_number(below, b) || !(b > 0)) return false;
    value = a / b;
    text = rest;
    return true;
}

/// What follows a whole number: " 1/2", "-1/2" or "½"; 0 where it stands alone.
double take_part_of_one(std::string_view& text) {
    double part = 0;
    if (take_fraction_sign(text, part)) return part;
    std::string_view rest = text;
    if (!take_sign(rest, " ") && !take_sign(rest, "-")) return 0;
    if (!take_fraction(rest, part) && !take_fraction_sign(rest, part)) return 0;
    if (!(part < 1)) return 0;
    text = rest;
    return part;
}

/// The comma behind `before`, which has been read as `number`.
Result<double> with_comma(std::string_view& rest, std::string_view before, double number) {
    std::string_view behind = rest.substr(1);
    const std::string_view decimals = take_digits(behind);
    const std::string whole(before), part(decimals);
    const bool more = (behind.starts_with(',') || behind.starts_with('.')) && starts_with_digit(behind.substr(1));
    if (more || !all_digits(before))
        return unreadable("'" + whole + "," + part + "': write the number with one point and no commas", 1);
    if (decimals.size() == 3 && before.size() <= 3 && before != "0")
        return unreadable("'" + whole + "," + part + "' may be " + whole + "." + part + " or " + whole + part +
                              ": write the one you mean",
                          1);
    std::string point = whole + "." + part;
    std::string_view read = point;
    take_number(read, number);
    rest = behind;
    return number;
}

/// Numbers on both sides of a tolerance: "12+-0.1".
bool bare_with_tolerance(std::string_view text) {
    for (const std::string_view sign : {std::string_view("+-"), std::string_view("±")})
        if (const std::size_t at = text.find(sign); at != std::string_view::npos)
            return is_bare(text.substr(0, at)) && is_bare(text.substr(at + sign.size()));
    return false;
}

std::string joined_by(const std::vector<std::string>& parts, const std::string& sign) {
    return joined(parts, sign.c_str());
}

} // namespace

Result<double> take_written_number(std::string_view& text) {
    std::string_view rest = text;
    const bool minus = take_sign(rest, "-") || take_sign(rest, "−");
    if (!minus) take_sign(rest, "+");
    const std::string_view start = rest;
    double number = 0;
    if (!take_fraction_sign(rest, number) && !take_fraction(rest, number)) {
        const bool begins = starts_with_digit(rest) || (rest.starts_with('.') && starts_with_digit(rest.substr(1)));
        if (!begins || !take_number(rest, number) || !std::isfinite(number))
            return unreadable("a number is expected", 1);
        const std::string_view taken = start.substr(0, start.size() - rest.size());
        if (rest.starts_with(',') && starts_with_digit(rest.substr(1))) {
            const Result<double> with = with_comma(rest, taken, number);
            if (!with) return with;
            number = *with;
        } else if (all_digits(taken)) {
            number += take_part_of_one(rest);
        }
    }
    text = rest;
    return minus ? -number : number;
}

bool is_bare(std::string_view text) {
    if (bare_with_tolerance(text)) return true;
    std::string_view rest = without_blanks(text);
    return take_written_number(rest) && without_blanks(rest).empty();
}

std::string unit_behind(std::string_view text) {
    std::string_view rest = without_blanks(text);
    if (!take_written_number(rest)) return {};
    return std::string(without_blanks(rest));
}

Result<std::vector<std::string>> with_shared_unit(std::vector<std::string> lengths, const std::string& sign) {
    static constexpr std::array<std::string_view, 7> serving = {"mm", "cm", "in", "inch", "\"", "″", "”"};
    const auto bare = std::find_if(lengths.begin(), lengths.end(), [](const std::string& l) { return is_bare(l); });
    if (bare == lengths.end()) return lengths;
    const std::string last = unit_behind(lengths.back());
    const bool serves = std::find(serving.begin(), serving.end(), last) != serving.end();
    const std::string first = *bare;
    for (std::string& length : lengths)
        if (is_bare(length)) length += serves ? last : "mm";
    if (serves) return lengths;
    return unreadable(first + " what? " + joined_by(lengths, sign));
}

Result<std::vector<std::string>> list_parts(const std::string& text, bool counts) {
    const char sign = text.find(';') == std::string::npos ? ',' : ';';
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t at = std::min(text.find(sign, from), text.size());
        parts.push_back(text.substr(from, at - from));
        from = at + 1;
    }
    const std::string unit = unit_behind(parts.back());
    const std::size_t digits_of_last = parts.back().find_first_not_of("0123456789");
    const bool whole = std::all_of(parts.begin(), parts.end() - 1, all_digits) && digits_of_last != 0;
    if (sign == ',' && !counts && whole && parts.size() % 2 == 0)
        return unreadable("'" + text + "' may be " + parts[0] + "." + parts[1] +
                          (parts.size() == 2 ? "" : unit + " ...") + " or " + parts[0] + unit + " and " + parts[1] +
                          (parts.size() == 2 ? "" : unit + " ...") +
                          ": write a point for decimals, or a unit and a blank behind each comma");
    for (std::string& part : parts)
        if (part = std::string(without_blanks(part)); !unit.empty() && is_bare(part)) part += unit;
    return parts;
}

} // namespace pourbook
