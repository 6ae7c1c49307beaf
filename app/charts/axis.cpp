#include "charts/axis.hpp"

#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// 1, 2 or 5 times a power of ten, at or above the value.
double round_step(double value) {
    const double power = std::pow(10, std::floor(std::log10(value)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (value <= factor * power * (1 + 1e-9)) return factor * power;
    return 10 * power;
}

std::string superscript(int number) {
    static constexpr const char* digits[] = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
    std::string out = number < 0 ? "⁻" : "";
    for (const char c : std::to_string(std::abs(number))) out += digits[c - '0'];
    return out;
}

std::vector<Tick> linear(const Axis& axis, int wanted) {
    std::vector<Tick> out;
    const double step = round_step((axis.high - axis.low) / std::max(1, wanted));
    for (double i = std::ceil(axis.low / step - 1e-9); i * step <= axis.high + 1e-9 * step; ++i)
        out.push_back({i * step + 0.0, tick_text(i * step + 0.0, step)});
    return out;
}

std::vector<Tick> logarithmic(const Axis& axis, int wanted) {
    const double decades = std::log10(axis.high / axis.low);
    const int stride = std::max(1, static_cast<int>(std::ceil(decades / std::max(1, wanted))));
    std::vector<double> factors = {1};
    if (decades * 2 < wanted) factors = {1, 3};
    if (decades * 3 < wanted) factors = {1, 2, 5};
    std::vector<Tick> out;
    for (int power = static_cast<int>(std::floor(std::log10(axis.low))); std::pow(10, power) <= axis.high; ++power) {
        if (power % stride != 0) continue;
        for (const double f : factors) {
            const double value = f * std::pow(10, power);
            if (value >= axis.low * (1 - 1e-9) && value <= axis.high * (1 + 1e-9))
                out.push_back({value, tick_text(value, value)});
        }
    }
    return out;
}

} // namespace

double Axis::share(double value) const {
    return log ? std::log(value / low) / std::log(high / low) : (value - low) / (high - low);
}

double Axis::place(double value) const {
    return from + (to - from) * share(value);
}

double Axis::at_share(double share) const {
    return log ? low * std::pow(high / low, share) : low + (high - low) * share;
}

double Axis::value(double place) const {
    return at_share((place - from) / (to - from));
}

Axis nearer(const Axis& axis, double share, double factor) {
    Axis out = axis;
    out.low = axis.at_share(share - share * factor);
    out.high = axis.at_share(share + (1 - share) * factor);
    return out;
}

Axis moved(const Axis& axis, double by) {
    Axis out = axis;
    out.low = axis.at_share(by);
    out.high = axis.at_share(1 + by);
    return out;
}

Axis kept_near(Axis axis, const Axis& home) {
    constexpr double closest = 1e-6; // of home: beyond it neighbouring values can't be told apart in a tick's text
    const double low = home.share(axis.low), high = home.share(axis.high);
    const double middle = std::clamp((low + high) / 2, 0.0, 1.0), half = std::clamp(high - low, closest, 1.0) / 2;
    const double inside = std::clamp(middle, half, 1 - half);
    axis.low = home.at_share(inside - half);
    axis.high = home.at_share(inside + half);
    return axis;
}

std::vector<Tick> ticks(const Axis& axis, int wanted) {
    return axis.log ? logarithmic(axis, wanted) : linear(axis, wanted);
}

void round_out(Axis& axis) {
    if (axis.log) {
        axis.low /= 1.15;
        axis.high *= 1.15;
        return;
    }
    if (axis.low > 0 && axis.low < 0.4 * axis.high) axis.low = 0;
    if (!(axis.high > axis.low)) {
        const double room = std::max(1e-12, std::abs(axis.low) * 0.05);
        axis.low -= room;
        axis.high += room;
    }
    const double step = round_step((axis.high - axis.low) / 10);
    axis.low = std::floor(axis.low / step + 1e-9) * step;
    axis.high = std::ceil(axis.high / step - 1e-9) * step;
}

std::string tick_text(double value, double step) {
    const double size = std::abs(value);
    const double lead = size > 0 ? std::floor(std::log10(size) + 1e-9) : 0;
    if (size > 0 && (size < 1e-4 * (1 - 1e-9) || size >= 1e6)) {
        const double digit = value / std::pow(10, lead);
        const std::string power = "10" + superscript(static_cast<int>(lead));
        return std::abs(digit - 1) < 1e-9 ? power : tick_text(digit, 0.1) + "·" + power;
    }
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    const std::string text = fixed_digits(value, decimals);
    return !text.empty() && text.front() == '-' ? "−" + text.substr(1) : text;
}

} // namespace pourbook
