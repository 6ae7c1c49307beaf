// Ounces of precious metals: sold by the troy ounce, weighed on kitchen scales by the avoirdupois one, 10 % lighter.
#pragma once

#include "core/result.hpp"

#include <array>
#include <optional>
#include <string>

namespace pourbook {

/// Elements sold by the troy ounce.
inline constexpr std::array troy_elements = {"Ag", "Au", "Pt", "Pd", "Rh", "Ir", "Ru", "Os"};

/// A mass or a price written with "oz" for a metal that is more than half silver, gold or a platinum metal: asked back.
/// troy_wt_percent: content of troy_elements. Empty where nothing is in doubt.
std::optional<Problem> doubtful_ounce(const std::string& written, double troy_wt_percent);

} // namespace pourbook
