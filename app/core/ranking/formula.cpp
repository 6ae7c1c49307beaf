#include "core/ranking/formula.hpp"

#include "core/ranking/formula_parser.hpp"
#include "core/ranking/formula_value.hpp"

#include <cmath>

namespace pourbook {

Result<Formula> Formula::parse(std::string_view text, const Catalogue& dictionary) {
    Formula f;
    f.text_ = std::string(text);
    Result<FormulaNode> root = read_formula(text, dictionary, FormulaKind::number, f.names_);
    if (!root) return root.problem();
    f.root_ = std::make_shared<FormulaNode>(std::move(*root));
    return f;
}

Dimension Formula::dimension() const {
    return root_->dimension;
}

double Formula::value(const std::vector<double>& values) const {
    const double x = number_of(*root_, values);
    return std::isfinite(x) ? x : no_number;
}

std::vector<double> Formula::values(const Columns& columns, std::size_t samples) const {
    std::vector<double> out = numbers_of(*root_, columns, samples);
    for (double& x : out)
        if (!std::isfinite(x)) x = no_number;
    return out;
}

Result<Condition> Condition::parse(std::string_view text, const Catalogue& dictionary) {
    Condition c;
    c.formula_.text_ = std::string(text);
    Result<FormulaNode> root = read_formula(text, dictionary, FormulaKind::condition, c.formula_.names_);
    if (!root) return root.problem();
    c.formula_.root_ = std::make_shared<FormulaNode>(std::move(*root));
    return c;
}

bool Condition::holds(const std::vector<double>& values, const Metal& metal) const {
    return truth_of(*formula_.root_, values, metal);
}

} // namespace pourbook
