#include "core/quantity/unit.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/number_text.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace pourbook {
namespace {

struct Named {
    std::string_view name;
    std::array<int, Dimension::count> exponent; // m kg s A K mol money
    double scale;
    bool prefixable = false;
};

constexpr double standard_gravity_m_s2 = 9.80665;
constexpr double pound_kg = 0.45359237;
constexpr double troy_ounce_kg = 31.1034768e-3;
constexpr double btu_J = 1055.05585262;

constexpr std::array<int, 7> length = {1, 0, 0, 0, 0, 0, 0};
constexpr std::array<int, 7> volume = {3, 0, 0, 0, 0, 0, 0};
constexpr std::array<int, 7> mass = {0, 1, 0, 0, 0, 0, 0};
constexpr std::array<int, 7> time_s = {0, 0, 1, 0, 0, 0, 0};
constexpr std::array<int, 7> none = {0, 0, 0, 0, 0, 0, 0};
constexpr std::array<int, 7> energy = {2, 1, -2, 0, 0, 0, 0};
constexpr std::array<int, 7> temperature = {0, 0, 0, 0, 1, 0, 0};
constexpr std::array<int, 7> money = {0, 0, 0, 0, 0, 0, 1};

constexpr std::array named_units = {
    Named{"m", length, 1, true},
    Named{"in", length, inch_m},
    Named{"inch", length, inch_m},
    Named{"ft", length, 12 * inch_m},
    Named{"foot", length, 12 * inch_m},
    Named{"feet", length, 12 * inch_m},
    Named{"inches", length, inch_m},
    Named{"thou", length, inch_m / 1000},
    Named{"mil", length, inch_m / 1000},
    Named{"g", mass, 1e-3, true},
    Named{"t", mass, 1000},
    Named{"lb", mass, pound_kg},
    Named{"oz", mass, pound_kg / 16},
    Named{"ozav", mass, pound_kg / 16}, // said of a precious metal, where "oz" alone may be either
    Named{"ozt", mass, troy_ounce_kg},
    Named{"dwt", mass, troy_ounce_kg / 20},
    Named{"tonne", mass, 1000},
    Named{"kilo", mass, 1},
    Named{"gram", mass, 1e-3},
    Named{"pound", mass, pound_kg},
    Named{"ounce", mass, pound_kg / 16},
    Named{"s", time_s, 1, true},
    Named{"sec", time_s, 1},
    Named{"second", time_s, 1},
    Named{"min", time_s, 60},
    Named{"minute", time_s, 60},
    Named{"h", time_s, 3600},
    Named{"hour", time_s, 3600},
    Named{"A", {0, 0, 0, 1, 0, 0, 0}, 1, true},
    Named{"K", temperature, 1, true},
    Named{"degC", temperature, 1},
    Named{"degF", temperature, 5.0 / 9.0},
    Named{"mol", {0, 0, 0, 0, 0, 1, 0}, 1, true},
    Named{"USD", money, 1},
    Named{"USc", money, 0.01},
    Named{"N", {1, 1, -2, 0, 0, 0, 0}, 1, true},
    Named{"Pa", {-1, 1, -2, 0, 0, 0, 0}, 1, true},
    Named{"psi", {-1, 1, -2, 0, 0, 0, 0}, pound_kg* standard_gravity_m_s2 / (inch_m * inch_m), true},
    Named{"lbf", {1, 1, -2, 0, 0, 0, 0}, pound_kg* standard_gravity_m_s2},
    Named{"kgf", {1, 1, -2, 0, 0, 0, 0}, standard_gravity_m_s2},
    Named{"J", energy, 1, true},
    Named{"Wh", energy, 3600, true},
    Named{"cal", energy, 4.184, true},
    Named{"Btu", energy, btu_J},
    Named{"W", {2, 1, -3, 0, 0, 0, 0}, 1, true},
    Named{"V", {2, 1, -3, -1, 0, 0, 0}, 1, true},
    Named{"ohm", {2, 1, -3, -2, 0, 0, 0}, 1, true},
    Named{"S", {-2, -1, 3, 2, 0, 0, 0}, 1, true},
    Named{"T", {0, 1, -2, -1, 0, 0, 0}, 1, true},
    Named{"G", {0, 1, -2, -1, 0, 0, 0}, 1e-4, true},
    Named{"cmil", {2, 0, 0, 0, 0, 0, 0}, std::numbers::pi / 4 * 1e-6 * inch_m* inch_m},
    Named{"L", volume, 1e-3, true},
    Named{"l", volume, 1e-3, true},
    Named{"cc", volume, 1e-6},
    Named{"litre", volume, 1e-3},
    Named{"liter", volume, 1e-3},
    Named{"%", none, 0.01},
    Named{"ppm", none, 1e-6},
    Named{"%IACS", {-3, -1, 3, 2, 0, 0, 0}, iacs_S_m / 100},
};

struct Prefix {
    std::string_view name;
    double scale;
};
constexpr std::array prefixes = {Prefix{"n", 1e-9}, Prefix{"u", 1e-6}, Prefix{"m", 1e-3}, Prefix{"c", 1e-2},
                                 Prefix{"k", 1e3},  Prefix{"M", 1e6},  Prefix{"G", 1e9}};

struct Spelling {
    std::string_view written, plain;
};
// Signs people type or paste, rewritten to the plain names of the table.
constexpr std::array spellings = {
    Spelling{"µ", "u"},      Spelling{"μ", "u"},          Spelling{"Ω", "ohm"}, Spelling{"Ω", "ohm"},
    Spelling{"°C", "degC"},  Spelling{"°F", "degF"},      Spelling{"·", "."},   Spelling{"²", "2"},
    Spelling{"³", "3"},      Spelling{"% IACS", "%IACS"}, Spelling{"$", "USD"}, Spelling{"℃", "degC"},
    Spelling{"℉", "degF"},   Spelling{"''", "in"},        Spelling{"\"", "in"}, Spelling{"″", "in"},
    Spelling{"”", "in"},     Spelling{"'", "ft"},         Spelling{"′", "ft"},  Spelling{"’", "ft"},
    Spelling{"° C", "degC"}, Spelling{"° F", "degF"}};

/// Plain spelling of the text, with the original column (1-based) of each byte and one more for the end.
struct PlainText {
    std::string text;
    std::vector<int> column;
};

PlainText plain_spelling(std::string_view text) {
    PlainText out;
    for (std::size_t i = 0; i < text.size();) {
        const Spelling* match = nullptr;
        for (const Spelling& s : spellings)
            if (text.substr(i).starts_with(s.written)) {
                match = &s;
                break;
            }
        const std::string_view piece = match ? match->plain : text.substr(i, 1);
        for (char c : piece) {
            out.text += c;
            out.column.push_back(static_cast<int>(i) + 1);
        }
        i += match ? match->written.size() : 1;
    }
    out.column.push_back(static_cast<int>(text.size()) + 1);
    return out;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '%';
}
bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

Unit unit_of(const Named& named, double prefix) {
    Unit unit;
    for (std::size_t i = 0; i < Dimension::count; ++i) unit.dimension.exponent[i] = named.exponent[i];
    unit.scale = named.scale * prefix;
    return unit;
}

std::optional<Unit> look_up(std::string_view name) {
    for (const Named& n : named_units)
        if (n.name == name) return unit_of(n, 1);
    if (name.size() > 2 && name.ends_with('s')) // "kilos", "lbs"
        for (const Named& n : named_units)
            if (n.name.size() > 1 && !n.prefixable && n.name == name.substr(0, name.size() - 1)) return unit_of(n, 1);
    for (const Prefix& p : prefixes)
        if (name.starts_with(p.name))
            for (const Named& n : named_units)
                if (n.prefixable && n.name == name.substr(p.name.size())) return unit_of(n, p.scale);
    return std::nullopt;
}

/// "KG" and "MM" are never read as they stand: capitals tell M from m elsewhere.
std::string likely(std::string name) {
    for (char& c : name) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    return look_up(name) ? ": did you mean '" + name + "'?" : "";
}

class UnitParser {
public:
    explicit UnitParser(const PlainText& plain) : plain_(plain), text_(plain.text) {}

    Result<Unit> run() {
        skip_blanks();
        if (at_end()) return fail("a unit is missing");
        if (auto affine = lone_temperature()) return *affine;
        Result<Unit> unit = product();
        if (unit && !at_end()) return fail("can't read this part of the unit");
        return unit;
    }

private:
    static constexpr int max_depth = 20;

    Result<Unit> product() {
        Result<Unit> left = factor();
        if (!left) return left;
        bool divided = false;
        for (;;) {
            skip_blanks();
            const char sign = peek();
            const bool divide = sign == '/';
            if (!(divide || sign == '.' || sign == '*' || is_letter(sign) || sign == '(')) return left;
            if (divided && !divide) return fail("ambiguous behind '/': put the divisor in brackets, as in W/(m.K)");
            if (!is_letter(sign) && sign != '(') ++at_;
            divided = divided || divide;
            const Result<Unit> right = factor();
            if (!right) return right;
            left->dimension = divide ? left->dimension / right->dimension : left->dimension * right->dimension;
            left->scale = divide ? left->scale / right->scale : left->scale * right->scale;
        }
    }

    Result<Unit> factor() {
        skip_blanks();
        Result<Unit> unit = peek() == '(' ? bracket() : is_letter(peek()) ? name() : number();
        if (!unit) return unit;
        const double power = exponent();
        unit->dimension = unit->dimension.power(power);
        unit->scale = std::pow(unit->scale, power);
        return unit;
    }

    Result<Unit> bracket() {
        if (++depth_ > max_depth) return fail("too many brackets");
        ++at_;
        Result<Unit> unit = product();
        if (!unit) return unit;
        skip_blanks();
        if (peek() != ')') return fail("')' is missing");
        ++at_;
        --depth_;
        return unit;
    }

    Result<Unit> name() {
        const std::size_t start = at_;
        while (is_letter(peek())) ++at_;
        const auto unit = look_up(text_.substr(start, at_ - start));
        if (unit) return *unit;
        const std::string unknown(text_.substr(start, at_ - start));
        at_ = start;
        return fail("unknown unit '" + unknown + "'" + likely(unknown));
    }

    Result<Unit> number() {
        std::string_view rest = text_.substr(at_);
        Unit unit;
        if (!take_number(rest, unit.scale) || !(unit.scale > 0) || !std::isfinite(unit.scale))
            return fail("can't read this part of the unit");
        at_ = text_.size() - rest.size();
        return unit;
    }

    double exponent() {
        std::size_t i = at_;
        if (i < text_.size() && text_[i] == '^') ++i;
        const bool minus = i < text_.size() && text_[i] == '-';
        if (minus) ++i;
        if (i >= text_.size() || !is_digit(text_[i])) return 1;
        const int digit = text_[i] - '0';
        at_ = i + 1;
        return minus ? -digit : digit;
    }

    std::optional<Unit> lone_temperature() {
        std::string_view rest = text_.substr(at_);
        while (!rest.empty() && rest.back() == ' ') rest.remove_suffix(1);
        for (const std::string_view celsius : {"degC", "C", "deg C", "celsius", "Celsius"})
            if (rest == celsius) return Unit{base_dimension(Dimension::kelvin), 1, 273.15};
        for (const std::string_view fahrenheit : {"degF", "F", "deg F", "fahrenheit", "Fahrenheit"})
            if (rest == fahrenheit) return Unit{base_dimension(Dimension::kelvin), 5.0 / 9.0, 459.67 * 5.0 / 9.0};
        return std::nullopt;
    }

    void skip_blanks() {
        while (peek() == ' ') ++at_;
    }
    bool at_end() {
        skip_blanks();
        return at_ >= text_.size();
    }
    char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
    Problem fail(std::string what) const {
        return Problem{Problem::Kind::unreadable, std::move(what), plain_.column[std::min(at_, text_.size())]};
    }

    const PlainText& plain_;
    std::string_view text_;
    std::size_t at_ = 0;
    int depth_ = 0;
};

} // namespace

Result<Unit> parse_unit(std::string_view text) {
    const PlainText plain = plain_spelling(text);
    return UnitParser(plain).run();
}

bool take_number(std::string_view& text, double& number) {
    std::string_view body = text;
    if (body.starts_with('+')) body.remove_prefix(1);
    if (!take_decimal(body, number)) return false;
    text = body;
    return true;
}

} // namespace pourbook
