#include "questions/say/in_units_of.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/number_text.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/say/amounts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <string_view>

namespace pourbook {
namespace {

enum class Amount { length, area, volume, mass, force, speed, cutting, celsius, kelvin };

struct Written {
    const char* unit;
    Amount amount;
    double si;
};
constexpr std::array<Written, 16> units_written = {{{"mm", Amount::length, 1e-3},
                                                    {"cm", Amount::length, 1e-2},
                                                    {"m", Amount::length, 1},
                                                    {"mm2", Amount::area, 1e-6},
                                                    {"cm2", Amount::area, 1e-4},
                                                    {"cm3", Amount::volume, 1e-6},
                                                    {"ml", Amount::volume, 1e-6},
                                                    {"g", Amount::mass, 1e-3},
                                                    {"kg", Amount::mass, 1},
                                                    {"N", Amount::force, 1},
                                                    {"mm/s", Amount::speed, 1e-3},
                                                    {"m/s", Amount::speed, 1},
                                                    {"m/min", Amount::cutting, 1.0 / 60},
                                                    {"degC", Amount::celsius, 1},
                                                    {"°C", Amount::celsius, 1},
                                                    {"K", Amount::kelvin, 1}}};

/// A number where it stands in the sentence.
struct Number {
    std::size_t from = 0, end = 0;
    double value = 0;

    int figures(std::string_view text) const {
        const std::string_view digits = text.substr(from, std::min(text.find('e', from), end) - from);
        const std::size_t first = digits.find_first_of("123456789");
        if (first == std::string_view::npos) return 1;
        return static_cast<int>(std::count_if(digits.begin() + static_cast<std::ptrdiff_t>(first), digits.end(),
                                              [](char c) { return c >= '0' && c <= '9'; }));
    }
};

/// A number, or several parted by "to", "x" ..., and the unit behind the last.
struct Group {
    std::vector<Number> numbers;
    const Written* unit = nullptr;
    std::size_t end = 0; // behind the unit
};

bool part_of_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '/' || c == '.' || c == '^';
}

bool number_at(std::string_view text, std::size_t at, Number& out) {
    if (at > 0 && (part_of_word(text[at - 1]) || (text[at - 1] == '-' && at > 1 && part_of_word(text[at - 2]))))
        return false;
    std::string_view rest = text.substr(at);
    if (!take_decimal(rest, out.value)) return false;
    out.from = at;
    out.end = text.size() - rest.size();
    return true;
}

const Written* unit_at(std::string_view text, std::size_t at, std::size_t& end) {
    if (at >= text.size() || text[at] != ' ') return nullptr;
    end = at + 1;
    while (end < text.size() && std::strchr(" ,;:)(\n", text[end]) == nullptr) ++end;
    std::string_view word = text.substr(at + 1, end - at - 1);
    if (word.ends_with('.')) word.remove_suffix(1);
    end = at + 1 + word.size();
    for (const Written& u : units_written)
        if (word == u.unit) return &u;
    return nullptr;
}

/// Behind what parts the numbers of a group; 0 where nothing does.
std::size_t behind_joint(std::string_view text, std::size_t at) {
    for (const std::string_view joint : {" to ", " and ", " or ", " x ", "–"})
        if (text.substr(at).starts_with(joint)) return at + joint.size();
    return 0;
}

Group group_at(std::string_view text, std::size_t at) {
    Group out;
    for (Number number; number_at(text, at, number);) {
        out.numbers.push_back(number);
        out.unit = unit_at(text, number.end, out.end);
        at = behind_joint(text, number.end);
        if (out.unit || at == 0) break;
    }
    return out;
}

/// "293 K" in "at 293 K" or "293 K to 500 K".
bool says_temperature(std::string_view text, const Group& group) {
    std::string_view before = text.substr(0, group.numbers.front().from);
    while (before.ends_with(' ')) before.remove_suffix(1);
    const std::size_t word = before.find_last_of(" (");
    const std::string_view last = word == std::string_view::npos ? before : before.substr(word + 1);
    static constexpr std::array<std::string_view, 9> ahead = {"at",   "from", "to",    "below",      "above",
                                                              "near", "for",  "until", "temperature"};
    return std::find(ahead.begin(), ahead.end(), last) != ahead.end() || text.substr(group.end).starts_with(" to ");
}

class Teller {
public:
    Teller(UnitSystem units, std::string_view text, const Group& group) : units_(units), text_(text), group_(group) {
        const Written& u = *group.unit;
        workshop_ = units == UnitSystem::workshop;
        temperature_ = u.amount == Amount::celsius || (u.amount == Amount::kelvin && says_temperature(text, group));
        if (temperature_)
            unit_ = {workshop_ ? "°F" : "°C", 1};
        else if (workshop_)
            unit_ = workshop_unit(u);
    }

    /// The group in the reader's units; its numbers as they stand where those are the same.
    std::string words() const {
        const std::size_t from = group_.numbers.front().from;
        if (!workshop_ && group_.unit->amount == Amount::celsius)
            return std::string(text_.substr(from, group_.numbers.back().end - from)) + " " + unit_.name;
        if (unit_.name.empty() || (!workshop_ && smallest_K() < spoken_in_kelvin_below_K))
            return std::string(text_.substr(from, group_.end - from));
        std::string out;
        for (std::size_t i = 0; i < group_.numbers.size(); ++i) {
            const Number& n = group_.numbers[i];
            if (i) out += text_.substr(group_.numbers[i - 1].end, n.from - group_.numbers[i - 1].end);
            out += told(n);
        }
        return out + " " + unit_.name;
    }

private:
    double si(const Number& n) const {
        return n.value * group_.unit->si + (group_.unit->amount == Amount::celsius ? 273.15 : 0);
    }
    double smallest_K() const {
        double out = INFINITY;
        for (const Number& n : group_.numbers) out = std::min(out, si(n));
        return out;
    }
    NamedUnit workshop_unit(const Written& u) const {
        double largest = 0;
        for (const Number& n : group_.numbers) largest = std::max(largest, std::abs(si(n)));
        switch (u.amount) {
        case Amount::length:
            return length_unit(units_);
        case Amount::area:
            return area_unit(units_);
        case Amount::volume:
            return volume_unit(units_);
        case Amount::mass:
            return mass_unit_for(largest, units_);
        case Amount::force:
            return force_unit(units_);
        case Amount::speed:
            return {"in/s", length_unit(units_).si};
        case Amount::cutting:
            return {"ft/min", 12 * length_unit(units_).si / 60};
        default:
            return {"°F", 1 / 1.8}; // a difference
        }
    }
    std::string told(const Number& n) const {
        const int figures = std::max(2, n.figures(text_));
        if (!temperature_) return trimmed(si(n) / unit_.si, figures);
        const double shown = workshop_ ? si(n) * 1.8 - 459.67 : si(n) - 273.15;
        const bool whole =
            text_.substr(n.from, n.end - n.from).find('.') == std::string_view::npos || std::abs(shown) > 200;
        return trimmed(whole ? std::round(shown) : std::round(shown * 10) / 10, 5);
    }

    UnitSystem units_;
    std::string_view text_;
    const Group& group_;
    bool workshop_ = false, temperature_ = false;
    NamedUnit unit_{"", 1};
};

} // namespace

std::string in_units_of(UnitSystem units, const std::string& sentence) {
    if (units == UnitSystem::base || sentence.find(" = ") != std::string::npos) return sentence;
    const std::string_view text = sentence;
    std::string out;
    int brackets = 0;
    for (std::size_t at = 0; at < text.size();) {
        brackets += text[at] == '[' ? 1 : text[at] == ']' ? -1 : 0;
        const Group group = brackets > 0 ? Group{} : group_at(text, at);
        if (group.unit) {
            out += Teller(units, text, group).words();
            at = group.end;
        } else {
            out += text[at++];
        }
    }
    return out;
}

} // namespace pourbook
