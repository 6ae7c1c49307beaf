#include "core/alloys/blend.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace pourbook {
namespace {

constexpr double heaviest_kg = 1e6;

std::int64_t in_nanograms(double kg) {
    return std::llround(kg * 1e12);
}

/// Whole nanograms of each element of one stock; the sum is the stock's mass.
std::vector<std::int64_t> shared_out(std::int64_t mass, const std::vector<Share>& shares) {
    std::vector<std::int64_t> parts(shares.size());
    std::vector<std::pair<double, std::size_t>> rests;
    std::int64_t left = mass;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const double exact = static_cast<double>(mass) * shares[i].wt_percent / 100;
        parts[i] = static_cast<std::int64_t>(std::floor(exact));
        rests.emplace_back(static_cast<double>(parts[i]) - exact, i);
        left -= parts[i];
    }
    std::sort(rests.begin(), rests.end());
    // Rounding of the product can leave more than one nanogram an element in a very large stock, or take one too many.
    for (std::size_t i = 0; left != 0; i = (i + 1) % rests.size()) {
        const std::int64_t step = left > 0 ? 1 : -1;
        parts[rests[i].second] += step;
        left -= step;
    }
    return parts;
}

Problem unfit(const Stock& s) {
    return Problem{Problem::Kind::unreadable,
                   "the mass of '" + s.name + "' is " + trimmed(s.mass_kg, 6) +
                       " kg: a stock needs a positive mass, at most 1000 t",
                   0};
}

} // namespace

Result<Blend> blend(const AlloyData& data, const std::vector<Stock>& stocks) {
    if (stocks.empty())
        return Problem{Problem::Kind::unreadable, "no stock is named: write such as \"1.2kg za-12\"", 0};
    std::map<std::string, std::int64_t> sums;
    Blend out;
    double total_kg = 0;
    for (const Stock& s : stocks) {
        total_kg += s.mass_kg;
        if (!(s.mass_kg >= 1e-12) || !(total_kg <= heaviest_kg)) return unfit(s);
        const std::int64_t mass = in_nanograms(s.mass_kg);
        const std::vector<std::int64_t> parts = shared_out(mass, s.composition.shares());
        for (std::size_t i = 0; i < parts.size(); ++i) sums[s.composition.shares()[i].element] += parts[i];
        out.nanograms += mass;
    }
    std::vector<Share> shares;
    for (const auto& [element, mass] : sums) {
        out.elements.push_back({element, mass});
        shares.push_back({element, 100 * static_cast<double>(mass) / static_cast<double>(out.nanograms), 0});
    }
    std::stable_sort(out.elements.begin(), out.elements.end(),
                     [](const ElementMass& x, const ElementMass& y) { return x.nanograms > y.nanograms; });
    const Result<Composition> c = composition_of(data, shares);
    if (!c) return c.problem();
    out.composition = *c;
    return out;
}

Result<double> mass_to_add_kg(double mass_kg, double start_percent, double target_percent, double added_percent) {
    if (target_percent == start_percent) return 0.0;
    const double part = (target_percent - start_percent) / (added_percent - target_percent);
    if (!(part > 0) || !std::isfinite(part))
        return Problem{Problem::Kind::refused,
                       "adding metal of " + trimmed(added_percent, 6) + " % to metal of " + trimmed(start_percent, 6) +
                           " % never gives " + trimmed(target_percent, 6) +
                           " %: the target must lie between the two; add another stock",
                       0};
    return mass_kg * part;
}

Result<double> mass_after_loss_kg(double mass_kg, double loss) {
    if (!(loss >= 0) || !(loss < 1))
        return Problem{Problem::Kind::unreadable,
                       "a melt loss of " + trimmed(100 * loss, 4) + " %: write 0 % to less than 100 %", 0};
    return mass_kg * (1 - loss);
}

} // namespace pourbook
