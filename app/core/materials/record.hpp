// One published statement about one property of one metal: the figure as printed, its SI value, where it holds and who
// says so.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

enum class Phase { any, solid, liquid };
enum class HowKnown { read, common_practice, memory, computed, own }; // own: the user's
enum class Use { alternate, preferred, disputed, superseded };

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

struct Citation {
    std::string source;  // key of a Reference
    std::string locator; // table, page, equation, row
    HowKnown how_known = HowKnown::read;
    std::string through; // where the original was read in a transcription; empty: in the original
};

/// A figure at a temperature. Ranges have low < high with the value in the middle; bounds have only one of them.
struct Point {
    double temperature_K = no_number; // NaN: the figure has no temperature
    double value_si = no_number;      // NaN for a bound
    double low_si = no_number;
    double high_si = no_number;
    double half_digit_si = 0; // half a unit of the last printed digit: what rounding in print hides
    std::string printed;      // as printed, in Record::unit

    bool is_bound() const { return value_si != value_si; }
};

/// value_si(T) = sum of coefficient[i] * (T - offset_K)^i for low_K <= T <= high_K.
struct Polynomial {
    std::vector<double> coefficient_si;
    double offset_K = 0;
    double low_K = 0;
    double high_K = 0;

    double at(double temperature_K) const;
};

struct Record {
    std::string id; // slug.property.number, given once and never used again
    std::string property;
    Phase phase = Phase::any;
    std::string condition; // empty: the source states none, or it does not matter
    std::string temper;
    std::string process;
    std::string purity;
    std::string unit; // as printed
    std::vector<Point> points;
    std::optional<Polynomial> equation;
    std::string equation_printed;
    std::string text;          // text properties
    std::string none;          // searched for, not found: what was looked for
    double from_K = no_number; // mean over a range: its lower end
    double valid_low_K = no_number;
    double valid_high_K = no_number;
    double uncertainty_relative = no_number; // standard, as stated by the source (NaN: unstated)
    double uncertainty_si = no_number;
    std::string uncertainty_printed;
    Use use = Use::alternate;
    std::string why;
    std::string note;
    Citation citation;

    bool usable() const { return use != Use::disputed && use != Use::superseded && none.empty(); }
    double lowest_K() const;
    double highest_K() const;
};

const char* name_of(Phase phase);
const char* name_of(HowKnown how);
const char* name_of(Use use);
std::optional<Phase> phase_named(const std::string& name);
std::optional<HowKnown> how_known_named(const std::string& name);
std::optional<Use> use_named(const std::string& name);

} // namespace pourbook
