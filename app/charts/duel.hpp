// Two metals against each other as a card: who, for what, by how much, how surely, why.
#pragma once

#include "charts/canvas.hpp"
#include "questions/rank/versus.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

struct DuelSide {
    std::string name;
    std::size_t slot = 0; // mark and colour
};

struct Duel {
    std::string title; // "Strongest brake"
    DuelSide better, worse;
    bool tie = false;
    double ratio = 1, low = 1, high = 1; // better over worse, 90 %; NaN: a ratio has no meaning
    std::string verdict;                 // "1.38 times"
    std::string sure;                    // "sure to 99.9 %", "can't be told apart"
    double p = 0.5;
    std::string reason;
    Origin origin;
};

/// `first` is drawn at the left; the slots are those of the two as they are pinned.
Duel duel_of(const Catalogue& catalogue, const VersusResult& result, std::size_t better_slot, std::size_t worse_slot);

Scene layout(const Duel& duel, const Canvas& canvas);

} // namespace pourbook
