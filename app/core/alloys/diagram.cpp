#include "core/alloys/diagram.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double same_K = 1e-6, same_wt = 1e-9;
const std::string liquid = "liquid";

DiagramRow row_at(const DiagramField& f, double temperature_K) {
    for (std::size_t i = 1; i < f.rows.size(); ++i) {
        const DiagramRow &low = f.rows[i - 1], &high = f.rows[i];
        if (temperature_K > high.temperature_K && i + 1 < f.rows.size()) continue;
        const double q = (temperature_K - low.temperature_K) / (high.temperature_K - low.temperature_K);
        return {temperature_K, low.left_wt + q * (high.left_wt - low.left_wt),
                low.right_wt + q * (high.right_wt - low.right_wt)};
    }
    return f.rows.front();
}

bool holds(const DiagramField& f, double temperature_K) {
    return temperature_K >= f.lowest_K() - same_K && temperature_K <= f.highest_K() + same_K;
}

bool melts(const DiagramField& f) {
    return f.left == liquid || f.right == liquid;
}

double liquid_wt(const DiagramField& f, const DiagramRow& r) {
    return f.left == liquid ? r.left_wt : r.right_wt;
}

double solid_wt(const DiagramField& f, const DiagramRow& r) {
    return f.left == liquid ? r.right_wt : r.left_wt;
}

const std::string& solid_of(const DiagramField& f) {
    return f.left == liquid ? f.right : f.left;
}

/// Highest temperature at which one line of the field (picked by `end`) passes through the composition.
template <class End> double crossing_K(const DiagramField& f, double wt, End end) {
    for (std::size_t i = f.rows.size() - 1; i > 0; --i) {
        const DiagramRow &low = f.rows[i - 1], &high = f.rows[i];
        const double a = end(low), b = end(high);
        if (wt < std::min(a, b) - same_wt || wt > std::max(a, b) + same_wt) continue;
        if (std::abs(b - a) < same_wt) return high.temperature_K;
        return low.temperature_K + (wt - a) / (b - a) * (high.temperature_K - low.temperature_K);
    }
    return no_number;
}

/// Lowest temperature at which the field holds the composition between its two lines.
double lowest_inside_K(const DiagramField& f, double wt) {
    const DiagramRow& r = f.rows.front();
    if (wt >= r.left_wt - same_wt && wt <= r.right_wt + same_wt) return f.lowest_K();
    return crossing_K(f, wt, [&](const DiagramRow& x) { return solid_wt(f, x); });
}

Problem not_drawn(const Diagram& d, double wt, const std::string& what) {
    return Problem{Problem::Kind::out_of_range,
                   what + " of " + d.a + "-" + d.b + " at " + trimmed(wt, 4) + " % " + d.b +
                       " is not drawn in the stored diagram",
                   0};
}

struct Active {
    const DiagramField* field;
    DiagramRow row;
};

std::vector<Active> active_fields(const Diagram& d, double temperature_K) {
    std::vector<Active> out;
    for (const DiagramField& f : d.fields)
        if (holds(f, temperature_K)) out.push_back({&f, row_at(f, temperature_K)});
    std::sort(out.begin(), out.end(), [](const Active& x, const Active& y) { return x.row.left_wt < y.row.left_wt; });
    return out;
}

/// The single phase between the active fields.
std::string between(const Diagram& d, const std::vector<Active>& active, double wt, double temperature_K) {
    const Result<MeltingRange> melting = melting_range(d, wt);
    if (melting && temperature_K >= melting->liquidus_K) return liquid;
    std::string left, right;
    for (const Active& a : active) {
        if (a.row.right_wt <= wt) left = a.field->right;
        if (a.row.left_wt >= wt && right.empty()) right = a.field->left;
    }
    if (left.empty() && right.empty()) return melting && temperature_K <= melting->solidus_K ? d.solid : "";
    if (!left.empty() && !right.empty()) return left == right ? left : ""; // else an undrawn stretch
    if (left.empty()) return right == "(" + d.a + ")" ? right : "";        // only a pure metal's phase reaches the end
    return left == "(" + d.b + ")" ? left : "";
}

} // namespace

Result<std::vector<PhaseShare>> phases_at(const Diagram& d, double wt, double temperature_K) {
    const std::vector<Active> active = active_fields(d, temperature_K);
    for (const Active& a : active) {
        const double width = a.row.right_wt - a.row.left_wt;
        if (width <= same_wt || wt <= a.row.left_wt || wt >= a.row.right_wt) continue;
        const double right = (wt - a.row.left_wt) / width;
        return std::vector<PhaseShare>{{a.field->left, a.row.left_wt, 1 - right},
                                       {a.field->right, a.row.right_wt, right}};
    }
    const std::string phase = between(d, active, wt, temperature_K);
    if (phase.empty()) return not_drawn(d, wt, "the phases at " + trimmed(temperature_K, 5) + " K");
    return std::vector<PhaseShare>{{phase, wt, 1}};
}

Result<MeltingRange> melting_range(const Diagram& d, double wt) {
    MeltingRange m;
    for (const DiagramField& f : d.fields) {
        if (!melts(f)) continue;
        const double t = crossing_K(f, wt, [&](const DiagramRow& r) { return liquid_wt(f, r); });
        if (!std::isnan(t) && !(t <= m.liquidus_K)) {
            m.liquidus_K = t;
            m.first_solid = solid_of(f);
        }
        const double low = lowest_inside_K(f, wt);
        if (!std::isnan(low) && !(low >= m.solidus_K)) m.solidus_K = low;
    }
    if (std::isnan(m.liquidus_K)) return not_drawn(d, wt, "the liquidus");
    if (std::isnan(m.solidus_K)) return not_drawn(d, wt, "the solidus");
    return m;
}

std::optional<Solubility> solubility(const Diagram& d, const std::string& host, double temperature_K) {
    const bool host_left = d.a == host;
    const std::string phase = "(" + host + ")";
    const DiagramField* best = nullptr; // the field that holds the temperature, else the nearest in temperature
    double distance = 0;
    for (const DiagramField& f : d.fields) {
        if (melts(f) || (host_left ? f.left : f.right) != phase) continue;
        const double away = std::max({0.0, f.lowest_K() - temperature_K, temperature_K - f.highest_K()});
        if (best && away >= distance) continue;
        best = &f;
        distance = away;
    }
    if (!best) return std::nullopt;
    const DiagramRow r = row_at(*best, std::clamp(temperature_K, best->lowest_K(), best->highest_K()));
    if (host_left) return Solubility{r.left_wt, best->right, r.right_wt};
    return Solubility{100 - r.right_wt, best->left, 100 - r.left_wt};
}

Result<Scheil> scheil(const Diagram& d, double wt) {
    const Result<MeltingRange> melting = melting_range(d, wt);
    if (!melting) return melting.problem();
    constexpr int steps = 400;
    Scheil out;
    out.primary = melting->first_solid;
    double share = 1, content = wt, in_solid = 0, t = melting->liquidus_K;
    out.steps.push_back({t, 1, wt});
    for (const DiagramField& f : d.fields) {
        if (!melts(f) || solid_of(f) != out.primary || !holds(f, t)) continue;
        const double step = (t - f.lowest_K()) / steps;
        for (int i = 1; i <= steps && share > 1e-6; ++i) {
            const DiagramRow before = row_at(f, t), after = row_at(f, t - step);
            const double gap =
                (liquid_wt(f, before) - solid_wt(f, before) + liquid_wt(f, after) - solid_wt(f, after)) / 2;
            const double change = liquid_wt(f, after) - liquid_wt(f, before);
            if (std::abs(gap) < same_wt) break;
            const double next = share * std::exp(-change / gap);
            in_solid += share * content - next * liquid_wt(f, after);
            share = next;
            content = liquid_wt(f, after);
            t -= step;
            if (i % (steps / 20) == 0) out.steps.push_back({t, share, content});
        }
        break;
    }
    out.last_K = t;
    out.last_liquid_share = share < 1e-5 ? 0 : share;
    out.primary_share = 1 - out.last_liquid_share;
    out.primary_mean_wt = out.primary_share > 0 ? in_solid / (1 - share) : 0;
    return out;
}

} // namespace pourbook
