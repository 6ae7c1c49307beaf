// Words around numbers on charts and in the window, beside what questions/say/shown.hpp says.
#pragma once

#include "charts/scene.hpp"
#include "questions/say/shown.hpp"

#include <initializer_list>
#include <string>

namespace pourbook {

/// Any unit text of the data: "uohm.cm" -> "µΩ·cm", "kg^-1 m^2" -> "kg⁻¹ m²"; empty for "1".
std::string pretty_unit(const std::string& unit);

/// A number with an exponent as in print: "8.7e-06" -> "8.7·10⁻⁶"; any other text as it is.
std::string pretty_number(const std::string& number);

/// The property's name in the chosen unit: a resistivity in %IACS is a conductivity.
std::string shown_label(const Property& property, UnitSystem system);

/// Label and unit, as an axis carries them: "density, g/cm³".
std::string label_with_unit(const Property& property, UnitSystem system);

/// To a whole degree, as one reads a furnace: "536 °C", "997 °F".
std::string furnace_temperature(double kelvin, UnitSystem units);

/// Whose figures these are, in a word beside them: "casting", or "handbook metal".
const char* state_word(const Conditions& conditions);
/// Of several: "castings", "handbook metals".
std::string state_words(const Conditions& conditions);
/// "handbook metal, reference condition" or "casting, as cast ...", and the form of prices where it is not the
/// exchange's.
std::string state_text(const Conditions& conditions);
/// "at 20 °C, handbook metal, reference condition", with form of prices where it is not the exchange's.
std::string conditions_text(const Conditions& conditions, double to_K = no_number);

/// ", money at 1.08 USD/EUR, central bank, 2026-11-01", where one of these is money shown in another currency.
std::string rate_text(std::initializer_list<const Property*> shown);

/// A source as people quote it in passing: "Matula 1979", "Ho et al. 1983"; what is remembered says so.
std::string short_source(const Reference& reference);
/// The same of a key; a key nobody knows stands for itself.
std::string short_source(const Catalogue& catalogue, const std::string& key);

/// One line for a video's description: what the chart shows, under what conditions, from whom, data version and date.
std::string caption_line(const Catalogue& catalogue, const Scene& scene, const std::string& date);

} // namespace pourbook
