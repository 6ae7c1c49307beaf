// The state of a casting in a few words.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

/// "as cast from wire, phosphorus 0 to 0.02 %, porosity 0 to 4 %": what decides of the contents, the rest is in the
/// trail.
std::string casting_words(const Catalogue& catalogue, const Metal& metal, const CastingState& state);

/// Of any metal: "as cast, feedstock not stated".
std::string casting_words(const CastingState& state);

/// The same with the way to the other state: "as cast, feedstock not stated; handbook metal: --as handbook".
std::string state_line(const CastingState& state);

/// Whether an answer under these conditions is one of a casting: a stated condition overrides the state.
bool of_casting(const Conditions& conditions);

/// "phosphorus" for P; the symbol itself where no name is kept.
std::string element_word(const Catalogue& catalogue, const std::string& symbol);

} // namespace pourbook
