// Which of the known words a misspelt one was meant to be.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

/// Letters to change, add, leave out or swap with their neighbour to turn one word into the other.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The likeliest first, at most three; empty where none is like it. Letters' case, '-', '_' and blanks make no
/// difference; a word that another begins with or holds as a part counts as near.
std::vector<std::string> nearest_words(const std::string& word, const std::vector<std::string>& known);

/// ": did you mean a, b or c?"; empty where none is like it.
std::string did_you_mean(const std::string& word, const std::vector<std::string>& known);

} // namespace pourbook
