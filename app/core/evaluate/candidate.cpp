#include "core/evaluate/candidate.hpp"

#include "core/evaluate/curie.hpp"
#include "core/evaluate/interpolate.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <tuple>

namespace pourbook {
namespace {

constexpr double end_reach_K = 2;
constexpr double melt_reach_K = 50;
constexpr double coefficient_low_K = 273.15; // range assumed where a temperature coefficient states none
constexpr double coefficient_high_K = 373.15;
constexpr double coefficient_doubt = 0.05; // relative, of the change it carries

/// Another property whose records answer too, and how its figure becomes the wanted one.
struct Kin {
    std::string_view wanted, recorded;
    double (*convert)(double);
    const char* how;
};

double same(double x) {
    return x;
}
double reciprocal(double x) {
    return 1 / x;
}
double of_liquid_volume(double of_solid_volume) {
    return of_solid_volume / (1 + of_solid_volume);
}

constexpr std::array kin = {
    Kin{"resistivity", "conductivity", reciprocal, "1 / conductivity as printed"},
    Kin{"solidus", "melting_point", same, "melting point of a pure metal or eutectic"},
    Kin{"liquidus", "melting_point", same, "melting point of a pure metal or eutectic"},
    Kin{"solidification_contraction", "volume_change_on_melting", of_liquid_volume,
        "e / (1 + e) of the expansion on melting"},
    Kin{"linear_expansion", "linear_expansion_at", same, "coefficient at the temperature"},
};

Candidate saying(const Record& r, double value_si, double doubt_si, Cover cover) {
    Candidate c;
    c.record = &r;
    c.value_si = c.recorded_si = value_si;
    c.doubt_si = doubt_si;
    c.cover = cover;
    return c;
}

Candidate saying(const Record& r, const Point& p, double doubt_si, Cover cover) {
    Candidate c = saying(r, p.value_si, doubt_si, cover);
    c.half_digit_si = p.half_digit_si;
    c.first = &p;
    return c;
}

Points with_value(const std::vector<Point>& points) {
    Points out;
    for (const Point& p : points)
        if (!p.is_bound()) out.push_back(&p);
    return out;
}

/// How much a property is likely to change per kelvin, relative (our estimate): near room temperature, and near
/// absolute zero as a power of the temperature (specific heat and ideal resistivity rise as T^3 to T^5).
double likely_drift_per_K(const Property& p, double temperature_K) {
    const bool electrical = p.id == "resistivity" || p.id == "conductivity";
    const double warm = electrical ? 0.004 : p.id == "density" ? 5e-5 : 7e-4;
    const double power = electrical ? 4 : p.id == "density" ? 0 : 2;
    constexpr double cold_below_K = 150;
    return temperature_K < cold_below_K ? std::max(warm, power / temperature_K) : warm;
}

double temperature_of(const Point& p) {
    return std::isnan(p.temperature_K) ? room_temperature_K : p.temperature_K;
}

bool phase_fits(const Record& r, const Question& q) {
    if (q.phase == Phase::any || r.phase == Phase::any) return q.phase != Phase::liquid || r.phase != Phase::any;
    return r.phase == q.phase;
}

ConditionFit condition_fit(const Record& r, const Question& q) {
    if (q.property.condition_spread <= 0 || q.phase == Phase::liquid) return ConditionFit::same;
    const std::string wanted = resolved_condition(q.metal, q.conditions);
    const std::string temper = q.conditions.condition == "reference" && q.conditions.temper.empty()
                                   ? q.metal.reference_temper
                                   : q.conditions.temper;
    if (!temper.empty() && !r.temper.empty() && r.temper != temper) return ConditionFit::other;
    if (!temper.empty() && r.temper == temper) return ConditionFit::same;
    if (r.condition.empty() || r.condition == "as-supplied")
        return q.metal.is_element() || wanted == "as-supplied" ? ConditionFit::same : ConditionFit::unstated;
    if (r.condition != wanted) return ConditionFit::other;
    return temper.empty() ? ConditionFit::same : ConditionFit::unstated;
}

std::optional<Candidate> from_equation(const Record& r, const Question& q) {
    const Polynomial& e = *r.equation;
    if (q.temperature_K < e.low_K - scale_slack_K || q.temperature_K > e.high_K + scale_slack_K) return std::nullopt;
    return saying(r, e.at(std::clamp(q.temperature_K, e.low_K, e.high_K)), 0, Cover::direct);
}

/// A degree or two beyond the end of a series: the end's figure, with the slope there as doubt (nominal bath
/// temperatures, such as liquid nitrogen printed as -195 degC, are no closer).
Candidate just_outside(const Record& r, const Points& points, double t) {
    const bool below = t < points.front()->temperature_K;
    const Point& end = below ? *points.front() : *points.back();
    const Point& next = below ? *points[1] : *points[points.size() - 2];
    const double slope = (next.value_si - end.value_si) / (next.temperature_K - end.temperature_K);
    Candidate c = saying(r, end, 0, Cover::near);
    c.away_K = std::abs(t - end.temperature_K);
    c.doubt_si = std::abs(slope) * c.away_K;
    return c;
}

std::optional<Candidate> from_series(const Record& r, const Points& points, const Question& q) {
    const double t = q.temperature_K;
    if (points.size() < 2) return std::nullopt;
    const double outside = std::max(points.front()->temperature_K - t, t - points.back()->temperature_K);
    if (outside > end_reach_K) return std::nullopt;
    if (outside > scale_slack_K) return just_outside(r, points, t);
    const auto above = std::find_if(points.begin(), points.end() - 1,
                                    [&](const Point* p) { return p->temperature_K >= t - scale_slack_K; });
    const bool on_point = std::abs((*above)->temperature_K - t) <= scale_slack_K || above == points.begin();
    const Interpolated x = interpolate(points, t);
    Candidate c = saying(r, x.value_si, x.doubt_si, Cover::direct);
    c.half_digit_si = x.half_digit_si;
    c.first = on_point ? *above : *(above - 1);
    if (on_point) return c;
    c.second = *above;
    c.gap_K = c.second->temperature_K - c.first->temperature_K;
    c.to_point_K = std::min(t - c.first->temperature_K, c.second->temperature_K - t);
    across_curie_point(c, points, q);
    return c;
}

/// How far from its temperature a single point still answers; the melt changes slowly.
double reach_K(const Question& q) {
    if (q.phase == Phase::liquid) return std::max(q.property.point_reach_K, melt_reach_K);
    return std::clamp(q.temperature_K / 20, scale_slack_K, std::max(q.property.point_reach_K, scale_slack_K));
}

std::optional<Candidate> from_point(const Record& r, const Point& p, const Question& q) {
    if (!q.property.varies_with_temperature) return saying(r, p, 0, Cover::direct);
    const double away = std::abs(q.temperature_K - temperature_of(p));
    if (away > reach_K(q)) return std::nullopt;
    if (away <= scale_slack_K) return saying(r, p, 0, Cover::direct);
    const double drift = q.phase == Phase::liquid ? q.property.default_uncertainty / 2 * away / reach_K(q)
                                                  : likely_drift_per_K(q.property, q.temperature_K) * away;
    Candidate c = saying(r, p, drift * std::abs(p.value_si), Cover::near);
    c.away_K = away;
    return c;
}

/// The temperature coefficient of resistivity that holds at the temperature, if one is cited.
struct Carries {
    double low_K, high_K;
};

/// Where the record is a temperature coefficient of resistivity: how far it carries.
std::optional<Carries> carries(const Record& r) {
    constexpr std::string_view wanted = "temperature_coefficient";
    if (r.property != wanted || !r.usable() || r.points.empty() || r.points.front().is_bound()) return std::nullopt;
    return Carries{std::isnan(r.valid_low_K) ? coefficient_low_K : r.valid_low_K,
                   std::isnan(r.valid_high_K) ? coefficient_high_K : r.valid_high_K};
}

const Record* coefficient_for(const Question& q) {
    for (const Record& r : q.metal.records)
        if (const auto c = carries(r); c && q.temperature_K >= c->low_K && q.temperature_K <= c->high_K) return &r;
    return nullptr;
}

std::optional<Candidate> carried(const Record& r, const Question& q, const Kin* relation) {
    if (q.property.id != "resistivity" || q.phase == Phase::liquid) return std::nullopt;
    const Record* coefficient = coefficient_for(q);
    if (!coefficient) return std::nullopt;
    const Point* nearest = nullptr;
    const auto away = [&](const Point& p) { return std::abs(temperature_of(p) - q.temperature_K); };
    for (const Point& p : r.points) {
        const bool in_range =
            !p.is_bound() && temperature_of(p) >= coefficient_low_K - 1 && temperature_of(p) <= coefficient_high_K + 1;
        if (in_range && (!nearest || away(p) < away(*nearest))) nearest = &p;
    }
    if (!nearest) return std::nullopt;
    const Point& figure = coefficient->points.front();
    const double at = temperature_of(*nearest);
    const double alpha = figure.value_si / (1 + figure.value_si * (at - temperature_of(figure)));
    const double factor = 1 + alpha * (q.temperature_K - at);
    if (!(factor > 0)) return std::nullopt;
    const double base = relation ? relation->convert(nearest->value_si) : nearest->value_si;
    Candidate c = saying(r, base * factor, base * std::abs(factor - 1) * coefficient_doubt, Cover::carried);
    c.half_digit_si = std::abs(base / nearest->value_si) * nearest->half_digit_si;
    c.first = nearest;
    c.away_K = std::abs(q.temperature_K - at);
    c.coefficient = coefficient;
    c.recorded_si = relation ? nearest->value_si / factor : c.value_si;
    return c;
}

/// At 20 degC a mean from about 20 degC upward stands in for the coefficient there, a few per cent high.
std::optional<Candidate> mean_as_coefficient(const Record& r, const Points& points, const Question& q) {
    constexpr double longest_K = 400;
    if (q.property.id != "linear_expansion" || std::isnan(r.from_K) || points.empty()) return std::nullopt;
    const Point& p = *points.front();
    if (std::abs(q.temperature_K - room_temperature_K) > 1 || p.temperature_K - r.from_K > longest_K ||
        std::abs(r.from_K - room_temperature_K) > 30)
        return std::nullopt;
    return saying(r, p, 0.03 * p.value_si, Cover::mean);
}

std::optional<Candidate> expansion(const Record& r, const Points& points, const Question& q) {
    const bool room = std::abs(q.temperature_K - room_temperature_K) <= 1;
    const bool is_mean = !std::isnan(r.from_K);
    if (q.property.id == "linear_expansion" && is_mean) {
        if (room) return mean_as_coefficient(r, points, q);
        if (std::abs(r.from_K - room_temperature_K) > 30) return std::nullopt;
    } else if (q.property.id == "linear_expansion" && !room) {
        return std::nullopt; // a coefficient at one temperature is no mean
    }
    if (auto series = from_series(r, points, q)) return series;
    for (const Point* p : points)
        if (auto single = from_point(r, *p, q)) return single;
    return std::nullopt;
}

std::optional<Candidate> answer_of(const Record& r, const Question& q, const Kin* relation) {
    if (!r.usable() || !r.text.empty() || !phase_fits(r, q)) return std::nullopt;
    std::optional<Candidate> c;
    if (q.property.id.starts_with("linear_expansion")) {
        c = expansion(r, with_value(r.points), q);
    } else if (r.equation) {
        c = from_equation(r, q);
    } else {
        if (r.points.size() > 1) c = from_series(r, with_value(r.points), q);
        for (const Point& p : r.points)
            if (!c && !p.is_bound()) c = from_point(r, p, q);
    }
    if (c && relation) {
        const double converted = relation->convert(c->value_si);
        const double scale = c->value_si == 0 ? 1 : std::abs(converted / c->value_si); // of a printed nought: none
        c->doubt_si *= scale;
        c->half_digit_si *= scale;
        c->value_si = converted;
        if (relation->convert != same) c->relation = relation->how;
    }
    if (!c) c = carried(r, q, relation);
    if (c) c->fit = condition_fit(r, q);
    if (c && !(std::isfinite(c->value_si))) return std::nullopt;
    return c;
}

/// The records that may answer a property: its own, and those of its kin.
class Speaking {
public:
    explicit Speaking(const Property& p) : recorded_(p.from.empty() ? p.id : p.from) {
        for (const Kin& k : kin)
            if (p.id == k.wanted) relations_[count_++] = &k;
    }

    /// How the record's figure becomes the wanted one, null: as it stands; empty where the record says nothing of it.
    std::optional<const Kin*> relation(const Record& r) const {
        if (r.property == recorded_) return nullptr;
        for (std::size_t i = 0; i < count_; ++i)
            if (r.property == relations_[i]->recorded) return relations_[i];
        return std::nullopt;
    }

private:
    const std::string& recorded_;
    std::array<const Kin*, kin.size()> relations_{};
    std::size_t count_ = 0;
};

/// Interpolated between points so far apart, and so different, that a figure printed for the temperature is better;
/// not where one of them is as near as a single point may be, nor in an evaluated table whose neighbours leave little
/// doubt (otherwise its curve would step to every figure that another prints).
bool far_between(const Candidate& c, const Question& q) {
    constexpr double close_K = 60, alike = 0.05, in_no_doubt = 0.002;
    const bool evaluated = rank_of_kind(q.catalogue.reference(c.record->citation.source)) <= 1;
    const bool curved = !evaluated || c.record->points.size() < 4 || c.doubt_si > in_no_doubt * std::abs(c.value_si);
    return c.second && curved && c.gap_K > close_K && c.to_point_K > reach_K(q) &&
           std::abs(c.second->value_si - c.first->value_si) > alike * std::abs(c.first->value_si);
}

bool remembered(const Record& r) {
    return r.citation.how_known == HowKnown::memory || r.citation.how_known == HowKnown::common_practice;
}

/// A room-temperature figure whose source names no temperature: no better than an interpolated one.
bool without_temperature(const Record& r) {
    return r.note.find("temperature not stated") != std::string::npos;
}

bool of_near_grade(const Record& r) {
    return r.note.find("near grade") != std::string::npos;
}

auto order_key(const Candidate& c, const Question& q) {
    const Record& r = *c.record;
    const Reference* reference = q.catalogue.reference(r.citation.source);
    const bool far = far_between(c, q);
    const bool preferred = r.use == Use::preferred && !far;
    return std::tuple(c.fit == ConditionFit::other, c.cover == Cover::carried, of_near_grade(r), !preferred,
                      remembered(r), coarseness(c), far || without_temperature(r), r.use != Use::preferred,
                      r.citation.how_known != HowKnown::read, c.fit != ConditionFit::same, rank_of_kind(reference),
                      static_cast<int>(c.cover), std::string_view(reference ? reference->reliability.c_str() : "Z"),
                      -static_cast<int>(r.points.size()));
}

} // namespace

Phase phase_of_solid(const Property& p) {
    return p.varies_with_temperature && p.phase == Phase::any ? Phase::solid : p.phase;
}

std::vector<double> coefficient_ends_K(const Metal& metal) {
    std::vector<double> out;
    for (const Record& r : metal.records)
        if (const auto c = carries(r)) out.insert(out.end(), {c->low_K, c->high_K});
    return out;
}

std::vector<std::string> recorded_kinds(const Property& p) {
    std::vector<std::string> out{p.from.empty() ? p.id : p.from};
    for (const Kin& k : kin)
        if (p.id == k.wanted) out.emplace_back(k.recorded);
    return out;
}

std::vector<Candidate> candidates(const Question& q) {
    const Speaking speaking(q.property);
    std::vector<Candidate> out;
    for (const Record& r : q.metal.records) {
        const auto relation = speaking.relation(r);
        if (!relation) continue;
        if (auto c = answer_of(r, q, *relation)) out.push_back(std::move(*c));
    }
    if (out.size() < 2) return out;
    using Key = decltype(order_key(out.front(), q));
    std::vector<std::pair<Key, std::size_t>> order; // a key asks for the source and the note: once each
    order.reserve(out.size());
    for (const Candidate& c : out) order.emplace_back(order_key(c, q), order.size());
    std::sort(order.begin(), order.end()); // the place in the file comes last in the pair
    std::vector<Candidate> sorted;
    sorted.reserve(out.size());
    for (const auto& [key, place] : order) sorted.push_back(std::move(out[place]));
    out = std::move(sorted);
    return out;
}

std::optional<Candidate> lone_candidate(const Question& q) {
    const Speaking speaking(q.property);
    const Record* only = nullptr;
    const Kin* how = nullptr;
    for (const Record& r : q.metal.records) {
        const auto relation = speaking.relation(r);
        if (!relation) continue;
        if (only) return std::nullopt;
        only = &r;
        how = *relation;
    }
    return only ? answer_of(*only, q, how) : std::nullopt;
}

int coarseness(const Candidate& c) {
    constexpr double fine = 0.01, step = 3;
    const double relative = c.half_digit_si / std::sqrt(3.0) / std::abs(c.value_si);
    return relative > fine ? static_cast<int>(std::ceil(std::log(relative / fine) / std::log(step))) : 0;
}

int rank_of_kind(const Reference* reference) {
    static constexpr std::array<const char*, 11> order = {"standard",     "evaluated review", "agency",   "handbook",
                                                          "paper",        "compilation",      "textbook", "data sheet",
                                                          "general text", "trade practice",   "memory"};
    if (!reference) return static_cast<int>(order.size());
    const auto at = std::find(order.begin(), order.end(), reference->kind);
    return static_cast<int>(at - order.begin());
}

std::vector<const Record*> speaking_records(const Question& q) {
    const Speaking speaking(q.property);
    std::vector<const Record*> out;
    for (const Record& r : q.metal.records)
        if (speaking.relation(r) && phase_fits(r, q)) out.push_back(&r);
    return out;
}

std::vector<double> printed_temperatures(const Question& q) {
    std::vector<double> out;
    for (const Record* r : speaking_records(q)) {
        if (!r->usable()) continue;
        for (const Point& p : r->points)
            if (!p.is_bound()) out.push_back(temperature_of(p));
        if (r->equation) out.insert(out.end(), {r->equation->low_K, r->equation->high_K});
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

} // namespace pourbook
