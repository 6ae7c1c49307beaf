// A property of a metal at a temperature and in a condition, with its trail: cited, else carried or estimated by a law.
//
// Order: cited, carried, estimated, no value with the reason. A carried or estimated figure never stands before a cited
// one. What is cited is found in cited.hpp. The last steps are in core/laws/evaluate.cpp, which alone knows the laws.
#pragma once

#include "core/materials/casting_state.hpp"
#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

constexpr double room_temperature_K = 293.15;

/// What an answer rests on. Cited: printed, interpolated in its own table, or a printed point within 10 K, in the same
/// condition. Carried: a cited figure taken further, or to another condition, by a law. Estimated: from composition.
enum class Basis { cited, carried, estimated };
const char* name_of(Basis basis);

struct Conditions {
    double temperature_K = room_temperature_K;
    std::string condition = "reference";
    std::string temper;                  // T6, O, H14 ...; empty: any
    std::string price_form = "exchange"; // or retail, scrap
    std::optional<double> rrr;           // residual resistivity ratio of a pure metal (Matthiessen's rule)
    /// The metal as a casting of one's own; empty: the handbook's. A stated condition or temper overrides it,
    /// and a metal of the person's own is answered as it was entered.
    std::optional<CastingState> casting;
    bool cited_only = false; // no law beyond what is cited
    bool story = true;       // false: the number alone, without trail and further sources, for very many at once
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

/// A quantity drawn evenly between two ends; those that share a key move together.
struct Between {
    std::string key;
    double low = 0;
    double high = 0;

    double middle() const { return (low + high) / 2; }
};

/// A part of a value that is drawn by itself: value times each quantity of `between`.
struct Term {
    double value_si = 0;
    std::vector<Cause> causes;
    std::vector<Between> between = {};

    double nominal_si() const;
};

/// A factor (1 - p)^exponent of the whole value: pores, or what conducts as little.
struct Pores {
    Between share;
    double exponent = 1;
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
    Basis basis = Basis::cited;
    std::string law;                  // of a carried or estimated value: which, in a few words
    std::vector<SourceValue> sources; // the chosen one first
    double away_K = 0;                // from the single printed point used
    double spread_low_si = no_number;
    double spread_high_si = no_number;
    std::vector<Cause> causes;
    std::vector<Term> terms;        // where samples are sums of parts (core/laws/draw_parts); empty: value and causes
    bool terms_reciprocal = false;  // the value is 1 / their sum
    std::vector<Pores> pores;       // factors of the value, after the reciprocal
    double handbook_si = no_number; // of a casting: what is cited for the handbook's metal
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

/// "Pb superconducts below 7.2 K" where it does at this temperature: an element of which the metal holds 10 % or more.
std::string superconducting_at(const Catalogue& catalogue, const Metal& metal, double temperature_K);

/// The condition a request resolves to: "reference" becomes the metal's own.
std::string resolved_condition(const Metal& metal, const Conditions& conditions);

} // namespace pourbook
