// A property of a metal at a temperature and in a condition, resolved from the published records, with its trail.
//
// Which record answers (first difference decides): stated condition matches before another condition; covers the
// temperature before a single point carried there by a temperature coefficient; marked preferred; read before
// remembered; condition stated before unstated (alloys); kind of source (standard and evaluated review before handbook
// before single paper before data sheet ...); printed at the temperature before near it; reliability of the source;
// more points; file order.
//
// Between the points of one series: monotone cubic interpolation (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 238,
// 1980); half its distance from the straight line is added to the uncertainty. Never beyond the ends of a series (0.6 K
// is allowed, the size of differences between temperature scales).
//
// Standard uncertainty: as stated by the source, else the dictionary's default (flagged; doubled for a remembered
// figure); widened to half the largest distance to any other usable source at that temperature, so that two standard
// uncertainties cover the spread; another condition than the asked one adds the dictionary's condition spread.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

constexpr double room_temperature_K = 293.15;

struct Conditions {
    double temperature_K = room_temperature_K;
    std::string condition = "reference";
    std::string temper;                  // T6, O, H14 ...; empty: any
    std::string price_form = "exchange"; // or retail, scrap
    std::optional<double> rrr;           // residual resistivity ratio of a pure metal (Matthiessen's rule)
    bool operator==(const Conditions&) const = default;
};

/// One source's answer at the same temperature.
struct SourceValue {
    std::string key, locator, through, record_id, condition, printed;
    double value_si = no_number;
    HowKnown how_known = HowKnown::read;
    bool chosen = false;
};

/// Independent cause of uncertainty: values that share a key move together (two alloys priced from one copper price).
struct Cause {
    std::string key;
    double relative = 0; // signed relative standard uncertainty
};

struct Evaluated {
    double value_si = no_number;
    double standard_uncertainty_si = 0;
    double temperature_K = no_number; // NaN where the property has none
    std::string condition;            // the condition of the record used
    bool condition_matches = true;
    bool stale = false;               // a price past its period entered
    bool uncertainty_assumed = false; // the source states none
    HowKnown how_known = HowKnown::read;
    std::vector<SourceValue> sources; // the chosen one first
    double spread_low_si = no_number;
    double spread_high_si = no_number;
    std::vector<Cause> causes;
    std::vector<std::string> trail; // plain sentences: records, conversions, interpolation, assumptions
    std::string text;               // text properties only
};

/// Errors: unknown (property), no_value, out_of_range (with the cited range), refused.
Result<Evaluated> evaluate(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                           const Conditions& conditions);

/// Solid at or below the solidus, liquid at or above the liquidus; any in between; solid where no melting range is
/// cited.
Phase phase_at(const Catalogue& catalogue, const Metal& metal, double temperature_K);

/// Ferromagnetic at this temperature, by the cited behaviour and Curie point.
bool ferromagnetic_at(const Catalogue& catalogue, const Metal& metal, double temperature_K);

/// The condition a request resolves to: "reference" becomes the metal's own.
std::string resolved_condition(const Metal& metal, const Conditions& conditions);

} // namespace pourbook
