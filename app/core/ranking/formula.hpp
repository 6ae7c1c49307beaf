// Formulas and conditions over properties: plain arithmetic, checked for dimensions before any metal is looked at.
//
//   formula    conductivity / (density * price)      + - * / ^ ( )  abs min max sqrt log exp
//   condition  liquidus < 1100 degC and family != lead   < <= > >= == !=  and or not
//
// Names are property ids; in a formula also `fall_time`, which stands for a computation (questions/drop/fall_time.hpp);
// `family`, `kind`, `slug` and `name` are words to compare with == or !=. Numbers are SI or carry a unit
// ("8.9 g/cm3"). A temperature in degC or degF may only be compared with a single property; differences are written in
// K. Errors carry the column of the first thing that is wrong. At most 2000 characters and 100 nested brackets.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

struct FormulaNode;
inline constexpr const char* fall_time_name = "fall_time"; // seconds
using Columns = std::vector<std::vector<double>>;

class Formula {
public:
    /// Errors: unreadable, with the column.
    static Result<Formula> parse(std::string_view text, const Catalogue& dictionary);

    /// Ids of the numeric properties used, each once, in order of appearance.
    const std::vector<std::string>& names() const { return names_; }
    const std::string& text() const { return text_; }
    Dimension dimension() const;

    /// Value with values[i] for names()[i] in SI; NaN where the arithmetic has no finite answer.
    double value(const std::vector<double>& values) const;
    /// The same for many samples at once: columns[i][s] is names()[i] in sample s.
    std::vector<double> values(const Columns& columns, std::size_t samples) const;

private:
    friend class Condition;
    std::string text_;
    std::vector<std::string> names_;
    std::shared_ptr<const FormulaNode> root_;
};

class Condition {
public:
    static Result<Condition> parse(std::string_view text, const Catalogue& dictionary);
    const std::vector<std::string>& names() const { return formula_.names_; }
    const std::string& text() const { return formula_.text_; }
    bool holds(const std::vector<double>& values, const Metal& metal) const;

private:
    Formula formula_;
};

} // namespace pourbook
