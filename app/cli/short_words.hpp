// --short and --plain: the answer alone, or its numbers for pipes.
#pragma once

#include "answers/ask/short_answer.hpp"
#include "cli/context.hpp"

namespace pourbook {

struct ShortWords {
    bool brief = false, plain = false;
    bool asked() const { return brief || plain; }
};

inline void with_short_words(CLI::App* command, ShortWords& words) {
    auto* brief = command->add_flag("--short", words.brief, "the answer alone");
    command->add_flag("--plain", words.plain, "numbers alone, parted by tabs, for pipes")->excludes(brief);
}

template <class R>
int answered_shortly(const Context& context, const Catalogue& catalogue, const ShortWords& words,
                     const Result<R>& result) {
    if (!result) return context.failed(result.problem());
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    if (words.plain) return context.printed(plain_answer(*result, *units));
    return context.printed(folded(short_answer(*result, catalogue, *units), terminal_columns()));
}

} // namespace pourbook
