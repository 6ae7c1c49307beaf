// The colour of hot metal as a screen shows it: the light of a black body by Planck's law, seen by the standard
// observer and brought to the screen's three colours. Metals shine less than a black body and not quite in the same
// colours; this is a picture of heat, not a measurement of it.
#pragma once

#include "charts/scene.hpp"

namespace pourbook {

/// Chromaticity of a black body, CIE 1931, 1000 to 10,000 K. Colour matching by the analytic fit of Wyman, Sloan and
/// Shirley (Journal of Computer Graphics Techniques 2, 2, 2013; coefficients from memory).
struct Chromaticity {
    double x = 0, y = 0;
};
Chromaticity black_body(double temperature_K);

/// Dark below about 800 K, where the eye first sees a glow in the dark (Draper, 1847), then from a dull red to orange
/// and yellow, full from 1500 K on; sRGB (IEC 61966-2-1).
Colour glow(double temperature_K);

} // namespace pourbook
