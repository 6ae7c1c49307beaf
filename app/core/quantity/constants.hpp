// Numbers that several rooms need.
#pragma once

namespace pourbook {

constexpr double inch_m = 0.0254;
constexpr double iacs_S_m = 58e6;    // 100 %IACS (IEC 60028)
constexpr double normal_90 = 1.6449; // standard uncertainties in each side of a 90 % interval

} // namespace pourbook
