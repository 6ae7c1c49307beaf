// The colour of a polished metal, for a swatch beside its mark: what it looks like, while the mark only tells it apart.
//
// Published, as screens show them (sRGB): silver, aluminium, platinum, iron, titanium, copper, gold and brass, from the
// table of the notes on material properties of the open-source renderer Filament (Google; read); chromium, nickel,
// zinc, magnesium, palladium and mercury, from the table "Metal material references" of the Adobe Standard Material
// (read). The others are chosen: grey, and alloys of copper between copper and brass, copper and silver, copper and
// nickel by what they hold, which is about how they look and no measurement.
#pragma once

#include "charts/scene.hpp"
#include "core/materials/catalogue.hpp"

namespace pourbook {

Colour metal_colour(const Metal& metal);

} // namespace pourbook
