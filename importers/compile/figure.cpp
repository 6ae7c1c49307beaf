#include "importers/compile/figure.hpp"

#include "importers/compile/fields.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

Result<Point> single(const std::string& printed, const Unit& unit) {
    double number = 0;
    if (!whole_number(printed, number))
        return Problem{Problem::Kind::unreadable,
                       "'" + printed + "' is no figure: write \"1.678\", \"25 to 33\" or \">= 58\"", 0};
    Point p;
    p.value_si = unit.to_si(number);
    p.half_digit_si = half_of_last_digit(printed) * unit.scale;
    return p;
}

} // namespace

double half_of_last_digit(const std::string& number) {
    const std::size_t e = number.find_first_of("eE");
    const std::string mantissa = number.substr(0, e);
    const std::size_t point = mantissa.find('.');
    double place = point == std::string::npos ? 1 : std::pow(10, -static_cast<double>(mantissa.size() - point - 1));
    double power = 0;
    if (e != std::string::npos && whole_number(number.substr(e + 1), power)) place *= std::pow(10, power);
    return place / 2;
}

Result<Point> read_figure(const std::string& printed, const Unit& unit) {
    const auto with_print = [&](Result<Point> p) {
        if (p) p->printed = printed;
        return p;
    };
    for (const bool lower : {true, false}) {
        const std::string sign = lower ? ">= " : "<= ";
        if (!printed.starts_with(sign)) continue;
        Result<Point> p = single(printed.substr(sign.size()), unit);
        if (!p) return p;
        (lower ? p->low_si : p->high_si) = p->value_si;
        p->value_si = no_number;
        return with_print(p);
    }
    const std::size_t to = printed.find(" to ");
    if (to == std::string::npos) return with_print(single(printed, unit));
    const Result<Point> a = single(printed.substr(0, to), unit), b = single(printed.substr(to + 4), unit);
    if (!a) return a;
    if (!b) return b;
    Point p;
    p.low_si = std::min(a->value_si, b->value_si);
    p.high_si = std::max(a->value_si, b->value_si);
    p.value_si = (p.low_si + p.high_si) / 2;
    p.half_digit_si = std::max(a->half_digit_si, b->half_digit_si);
    return with_print(p);
}

} // namespace pourbook
