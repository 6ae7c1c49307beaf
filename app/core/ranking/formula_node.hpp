// What a formula or condition is once it has been read: a tree of operations, its dimensions checked.
#pragma once

#include "core/quantity/dimension.hpp"

#include <string>
#include <vector>

namespace pourbook {

enum class Operation {
    number,
    name,
    word_test,
    negate,
    add,
    subtract,
    multiply,
    divide,
    power,
    call,
    compare,
    both,
    either,
    opposite
};

struct FormulaNode {
    Operation operation = Operation::number;
    Dimension dimension;
    double number = 0;
    bool constant = false;
    bool lone_temperature = false; // a literal with an offset (degC, degF)
    bool truth = false;            // a condition, not a number
    std::size_t name = 0;          // index into names
    std::string word;              // function, comparison sign or word field
    std::string right_word;        // what a word field is compared with
    int column = 1;
    std::vector<FormulaNode> parts;
};

} // namespace pourbook
