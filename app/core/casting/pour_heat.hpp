// Temperature of the metal and of the mould at the pour.
//
// Metal: liquidus + superheat. Without a stated superheat: from the pouring temperatures printed for the metal (its own
// records, else the practice of its metal or family), at the hot end for thin sections (up to section_class "thin"), at
// the cool end for heavy ones (from "heavy" on), linear between; without any such figure, liquidus plus the practice of
// superheats. Never below the liquidus.
#pragma once

#include "core/casting/melt_data.hpp"
#include "core/casting/practice.hpp"

#include <optional>

namespace pourbook::casting {

struct PourHeat {
    Traced pour;            // K
    double superheat_K = 0; // above the liquidus
    Range printed;          // pouring temperatures, may be empty
    std::string section;    // thin | medium | heavy
    Range mould;            // preheat, may be empty
    std::string mould_how;
    std::optional<double> mould_cooling_K_s; // once out of the kiln
};

/// Errors: no_value (no liquidus), refused (a superheat below 0 or above 600 K).
Result<PourHeat> pour_heat(const Material& material, const std::string& process, double wall_m,
                           std::optional<double> superheat_K);

} // namespace pourbook::casting
