// Reads a formula or a condition into its tree, every operation checked for dimensions as it is read.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/ranking/formula_node.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

enum class FormulaKind { number, condition };

/// The names used are appended to `names`, each once. Errors: unreadable, with the column.
Result<FormulaNode> read_formula(std::string_view text, const Catalogue& dictionary, FormulaKind kind,
                                 std::vector<std::string>& names);

} // namespace pourbook
