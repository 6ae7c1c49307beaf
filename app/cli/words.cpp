#include "cli/words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/metals/temperature_words.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace pourbook {
namespace {

constexpr std::array known_conditions = {"reference",        "as-cast", "annealed",   "cold-worked",
                                         "solution-treated", "aged",    "as-supplied"};

bool is_temper(const std::string& word) {
    return !word.empty() && word.size() <= 8 && std::isupper(static_cast<unsigned char>(word[0]));
}

Problem about_at(const std::string& word, Problem problem) {
    problem.text = "--at '" + word + "'" + (problem.column > 0 ? ", " : ": ") + problem.text;
    return problem;
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
        if (!t) return about_at(words.at, t.problem());
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
    const Result<TemperatureRange> range = temperature_range(at);
    if (!range) return about_at(at, range.problem());
    at.resize(colon);
    return range->to_K.value_or(no_number);
}

Result<UnitSystem> units_from(const std::string& word) {
    if (word == "si") return UnitSystem::shown;
    if (word == "workshop") return UnitSystem::workshop;
    return Problem{Problem::Kind::unreadable, "--units '" + word + "': si or workshop is expected", 0};
}

} // namespace pourbook
