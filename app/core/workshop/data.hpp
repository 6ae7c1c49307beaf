// The entries of the workshop as numbers (SI), for computations. An entry that was checked before it was kept reads
// without fault; what the person left out is empty here, never filled in.
#pragma once

#include "core/casting/limits.hpp"
#include "core/materials/record.hpp"
#include "core/result.hpp"
#include "core/workshop/kinds.hpp"

#include <optional>

namespace pourbook {

struct Profile {
    std::string furnace, units, currency;
    std::optional<double> furnace_maximum_K, power_W, efficiency, lift_maximum_kg;
};

struct Crucible {
    std::string name, material;
    std::optional<double> volume_m3;
};

struct MouldKind {
    std::string name, process, material;
    std::optional<double> maximum_K;
};

struct OwnPrice {
    std::string metal, written, date, seller, form, good_until; // as written: "8.50 EUR/kg"
    double per_kg = no_number;
    std::string currency;
};

struct StockLot {
    std::int64_t id = 0;
    std::string lot, metal, condition, seller;
    double mass_kg = 0;
    std::optional<OwnPrice> price; // what the lot cost
};

struct ExchangeRate {
    std::string currency, date, source;
    double usd = no_number; // US dollars for one unit
};

struct SavedGoal {
    std::string name, formula, sentence;
    bool best_high = true;
    std::vector<std::string> where;
};

struct OwnMetal {
    std::string name, like, composition, family, note;
};

struct OwnValue {
    std::string metal, property, written, uncertainty, condition, phase, from, date, note;
    std::optional<double> temperature_K;
};

enum class TrialType { drop, four_wire, weighing, casting };

/// A measurement; set-up words as questions/drop/magnet_words.hpp and pour/part_words.hpp read them.
struct Trial {
    std::int64_t id = 0;
    TrialType type = TrialType::drop;
    std::string name, date, metal, condition, note;
    std::optional<double> temperature_K;
    std::string magnet, grade, br, surface_field, recoil_permeability, magnet_mass, magnet_at, tube;
    std::vector<double> times_s, frames;
    std::optional<double> frame_rate_per_s, time_uncertainty_s;
    std::string resistance, span, mass, mass_in_water, part, pattern; // as written, with tolerance where given
    std::optional<double> water_K, charge_kg;
    std::string process; // of a casting; empty: not said
};

struct ViewerQuestion {
    std::int64_t id = 0;
    std::string name, question, command, answer, data_version, date;
};

/// What shapes every answer; questions are read when they are asked for.
struct WorkshopData {
    Profile profile;
    std::vector<Crucible> crucibles;
    std::vector<MouldKind> moulds;
    std::vector<StockLot> stock;
    std::vector<OwnPrice> prices; // of each metal the newest
    std::vector<ExchangeRate> rates;
    std::vector<SavedGoal> goals;
    std::vector<OwnMetal> metals;
    std::vector<OwnValue> values;
    std::vector<Trial> trials;
    std::vector<std::string> pins;
    bool profile_entered = false;
    std::optional<Problem> fault;      // why a kind could not be read: the first reason
    std::vector<std::string> left_out; // the kinds
};

Profile profile_from(const Entry& entry);
Crucible crucible_from(const Entry& entry);
MouldKind mould_from(const Entry& entry);
StockLot stock_lot_from(const Entry& entry);
OwnPrice own_price_from(const Entry& entry);
ExchangeRate rate_from(const Entry& entry);
SavedGoal goal_from(const Entry& entry);
OwnMetal own_metal_from(const Entry& entry);
OwnValue own_value_from(const Entry& entry);
Trial trial_from(const Entry& entry);
std::vector<Trial> trials_from(const std::vector<Entry>& entries);
ViewerQuestion question_from(const Entry& entry);

} // namespace pourbook
