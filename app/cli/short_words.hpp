// --short and --plain: the answer alone, or its numbers for pipes.
#pragma once

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

} // namespace pourbook
