// The options of a command, made from the table of its question.
#pragma once

#include "cli/context.hpp"
#include "questions/fields.hpp"

namespace pourbook {

/// An option (or an argument) for each field; what is given lands in `stated`, which outlives the parsing. Metals named
/// there may be mixes.
void with_fields(Context& context, CLI::App* command, Stated& stated);

/// With the usual goal, or the usual properties, where none is stated and one is needed; said on standard error.
Stated with_usual(const Context& context, const Catalogue& catalogue, const Stated& stated);

/// A command of that question.
CLI::App* command_of(Context& context, Stated& stated);

} // namespace pourbook
