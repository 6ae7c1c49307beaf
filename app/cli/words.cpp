#include "cli/words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace pourbook {
namespace {

constexpr std::array known_conditions = {"reference",        "as-cast", "annealed",   "cold-worked",
                                         "solution-treated", "aged",    "as-supplied"};
constexpr double hottest_K = 1e5;

bool is_temper(const std::string& word) {
    return !word.empty() && word.size() <= 8 && std::isupper(static_cast<unsigned char>(word[0]));
}

Result<double> temperature_from(const std::string& word) {
    Result<double> t = parse_si(word, base_dimension(Dimension::kelvin), "a temperature");
    if (!t) {
        Problem p = t.problem();
        p.text =
            "--at '" + word + "', column " + std::to_string(p.column) + ": " + p.text + ": write 77K, 20degC or 68degF";
        return p;
    }
    if (*t < 0 || *t > hottest_K)
        return Problem{Problem::Kind::unreadable,
                       "--at '" + word + "': a temperature between 0 K and 100000 K is expected", 0};
    return t;
}

} // namespace

int exit_code(const Problem& problem) {
    switch (problem.kind) {
    case Problem::Kind::unreadable:
        return 2;
    case Problem::Kind::refused:
        return 5;
    case Problem::Kind::file:
        return 4;
    default:
        return 3;
    }
}

Result<Conditions> conditions_from(const ConditionWords& words) {
    Conditions c;
    if (!words.at.empty()) {
        const Result<double> t = temperature_from(words.at);
        if (!t) return t.problem();
        c.temperature_K = *t;
    }
    if (!words.condition.empty()) {
        const bool known =
            std::find(known_conditions.begin(), known_conditions.end(), words.condition) != known_conditions.end();
        if (!known && !is_temper(words.condition))
            return Problem{Problem::Kind::unreadable,
                           "--condition '" + words.condition +
                               "': one of reference, as-cast, annealed, cold-worked, solution-treated, aged, "
                               "as-supplied, or a temper such as T6",
                           0};
        (known ? c.condition : c.temper) = words.condition;
    }
    if (!words.price_form.empty()) {
        if (words.price_form != "exchange" && words.price_form != "retail" && words.price_form != "scrap")
            return Problem{Problem::Kind::unreadable,
                           "--price-form '" + words.price_form + "': exchange, retail or scrap is expected", 0};
        c.price_form = words.price_form;
    }
    if (!words.rrr.empty()) {
        const Result<double> rrr = parse_si(words.rrr, {}, "a residual resistivity ratio");
        if (!rrr || !(*rrr > 1))
            return Problem{Problem::Kind::unreadable, "--purity-rrr '" + words.rrr + "': a number above 1 is expected",
                           0};
        c.rrr = *rrr;
    }
    return c;
}

Result<double> take_upper_end(std::string& at) {
    const std::size_t colon = at.find(':');
    if (colon == std::string::npos) return no_number;
    const std::string range = at, upper = at.substr(colon + 1);
    at.resize(colon);
    const Result<double> from = temperature_from(at), to = temperature_from(upper);
    if (!from) return from.problem();
    if (!to) return to.problem();
    if (!(*to > *from))
        return Problem{Problem::Kind::unreadable, "--at '" + range + "': the range must rise, such as 77K:300K", 0};
    return *to;
}

Result<UnitSystem> units_from(const std::string& word) {
    if (word == "si") return UnitSystem::shown;
    if (word == "workshop") return UnitSystem::workshop;
    return Problem{Problem::Kind::unreadable, "--units '" + word + "': si or workshop is expected", 0};
}

} // namespace pourbook
