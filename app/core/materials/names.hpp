// Words that are choices, each list in one place: the reference, the person's own file, the command line and the window
// know the same.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace pourbook {

inline const std::string reference_condition_name = "reference"; // each metal's usual comparison state

/// Conditions of a metal as records state them; a temper (T6, H14) is none of them.
inline const std::vector<std::string> condition_names = {"as-cast",          "annealed", "cold-worked",
                                                         "solution-treated", "aged",     "as-supplied"};
/// Forms of a price: the first is the price itself, the others multiply it.
inline const std::vector<std::string> price_form_names = {"exchange", "retail", "scrap"};
/// What a casting is melted from, and what is done to it (core/materials/casting_state.hpp).
inline const std::vector<std::string> feedstock_names = {"ingot", "wire", "pipe", "scrap", "jewellery"};
inline const std::vector<std::string> treatment_names = {"as-cast", "annealed", "quenched", "aged"};
/// Moulds.
inline const std::vector<std::string> process_names = {"shell", "sand", "plaster", "permanent"};

inline bool is_among(const std::string& word, const std::vector<std::string>& names) {
    return std::find(names.begin(), names.end(), word) != names.end();
}

} // namespace pourbook
