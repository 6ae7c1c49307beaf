#include "core/alloys/solute_table.hpp"

#include "core/evaluate/evaluate.hpp"
#include "core/evaluate/interpolate.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double widest_gap_wt = 25, furthest_beyond_wt = 10;

double pure_or_nothing(const Catalogue& catalogue, const std::string& symbol) {
    const Metal* metal = catalogue.element(symbol);
    if (!metal) return no_number;
    const Result<Evaluated> value = evaluate(catalogue, *metal, "resistivity", {});
    return value ? value->value_si : no_number;
}

/// The table's points with the pure ends it reaches; `own_wt` (in per cent of b) is the alloy whose point is left out.
std::vector<Point> curve_of(const AlloySetting& s, const ResistivityTable& t, double own_wt) {
    std::vector<Point> curve;
    const auto add = [&](double wt, double ohm_m) {
        if (std::isnan(ohm_m)) return;
        Point p;
        p.temperature_K = wt; // the interpolation's abscissa; here a composition
        p.value_si = ohm_m;
        curve.push_back(p);
    };
    if (t.points.front().wt <= widest_gap_wt) add(0, pure_or_nothing(s.catalogue, t.a));
    for (const TablePoint& p : t.points)
        if (std::abs(p.wt - own_wt) > s.without_point_within_wt) add(p.wt, p.ohm_m);
    if (t.points.back().wt >= 100 - widest_gap_wt) add(100, pure_or_nothing(s.catalogue, t.b));
    return curve;
}

struct Binary {
    const AlloySetting& setting;
    const std::string &host, &solute;

    double solute_mass() const { return setting.data().mass(solute)->g_per_mol; }
    double host_mass() const { return setting.data().mass(host)->g_per_mol; }
    double wt(double x) const { return 100 * x * solute_mass() / (x * solute_mass() + (1 - x) * host_mass()); }
    double at(double w) const {
        const double n = w / solute_mass();
        return n / (n + (100 - w) / host_mass());
    }
};

} // namespace

std::optional<TableIncrement> table_increment(const AlloySetting& s, const std::string& host, const std::string& solute,
                                              double atomic_fraction, double host_si) {
    const ResistivityTable* t = s.data().table(host, solute);
    if (!t) return std::nullopt;
    const Binary binary{s, host, solute};
    const double solute_wt = binary.wt(atomic_fraction);
    const bool host_first = t->a == host;
    const double wt = host_first ? solute_wt : 100 - solute_wt;
    const double own = t->a == host ? s.composition.wt(solute) : 100 - s.composition.wt(solute);
    const std::vector<Point> curve = curve_of(s, *t, own);
    if (curve.size() < 2) return std::nullopt;
    const Point& far = host_first ? curve.back() : curve.front();
    const double far_wt = host_first ? far.temperature_K : 100 - far.temperature_K;
    const double beyond = solute_wt - far_wt;
    if (beyond > furthest_beyond_wt) return std::nullopt;
    if (beyond > 0) {
        const double x = binary.at(far_wt), constant = (far.value_si - host_si) / (x * (1 - x));
        return TableIncrement{constant * atomic_fraction * (1 - atomic_fraction), &t->citation};
    }
    if (wt < curve.front().temperature_K || wt > curve.back().temperature_K) return std::nullopt;
    return TableIncrement{interpolate(curve, wt).value_si - host_si, &t->citation};
}

} // namespace pourbook
