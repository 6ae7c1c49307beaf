#include "core/alloys/near_melting.hpp"

#include "core/alloys/error_table.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t most_points = 6;
constexpr double nearest_within_wt = 12, all_within_wt = 25, edge_step_wt = 5, other_elements_wt = 1;
constexpr double same_alloy_wt = 0.01;

struct KnownPoint {
    double away_wt, solidus_K, liquidus_K;
    std::string name;
    Citation citation;
};

class Neighbours {
public:
    explicit Neighbours(const AlloySetting& s) : setting_(s) {}

    Result<MeltingEstimate> run() {
        known_alloys();
        edges();
        std::sort(points_.begin(), points_.end(),
                  [](const KnownPoint& a, const KnownPoint& b) { return a.away_wt < b.away_wt; });
        if (points_.empty() || points_.front().away_wt > nearest_within_wt)
            return no_rule("no alloy of these elements is known within " + trimmed(nearest_within_wt, 2) + " wt%");
        if (points_.size() > most_points) points_.resize(most_points);
        return averaged();
    }

private:
    /// Half the sum of the differences; elements that only one of them holds count whole.
    template <class Content> double away_wt(const std::vector<Share>& other, Content content) const {
        double sum = 0;
        for (const Share& s : setting_.composition.shares()) sum += std::abs(s.wt_percent - content(s.element));
        for (const Share& s : other)
            if (setting_.composition.wt(s.element) <= 0) sum += s.wt_percent;
        return sum / 2;
    }

    void take(double away, double solidus_K, double liquidus_K, const std::string& name, const Citation& citation) {
        if (away <= all_within_wt && away > setting_.without_point_within_wt)
            points_.push_back({away, solidus_K, liquidus_K, name, citation});
    }

    void known_alloys() {
        for (const Metal& m : setting_.catalogue.metals) {
            if (m.is_element() || m.slug.find(':') != std::string::npos) continue; // nor an estimate
            std::vector<Share> shares;
            double others = 0;
            for (const Portion& p : m.composition) {
                shares.push_back({p.element, p.wt_percent, 0});
                if (setting_.composition.wt(p.element) <= 0) others += p.wt_percent;
            }
            if (shares.empty() || others > other_elements_wt) continue;
            const double away = away_wt(shares, [&](const std::string& e) { return m.content_percent(e); });
            if (away > all_within_wt) continue;
            Conditions cited;
            cited.cited_only = true;
            const auto low = evaluate(setting_.catalogue, m, "solidus", cited),
                       high = evaluate(setting_.catalogue, m, "liquidus", cited);
            if (!low || !high) continue;
            const SourceValue& s = high->sources.front();
            take(away, low->value_si, high->value_si, m.name, {s.key, s.locator, s.how_known, s.through});
        }
    }

    void edges() {
        const auto& shares = setting_.composition.shares();
        for (std::size_t i = 0; i < shares.size(); ++i)
            for (std::size_t j = i + 1; j < shares.size(); ++j)
                if (const Diagram* d = setting_.data().diagram(shares[i].element, shares[j].element)) edge(*d);
    }

    void edge(const Diagram& d) {
        for (double wt = 0; wt <= 100; wt += edge_step_wt) {
            const auto range = melting_range(d, wt);
            if (!range) continue;
            const double away = away_wt({}, [&](const std::string& e) {
                return e == d.a ? 100 - wt : e == d.b ? wt : 0.0;
            });
            take(away, range->solidus_K, range->liquidus_K, d.a + "-" + d.b + " at " + trimmed(wt, 3) + " % " + d.b,
                 d.fields.front().citation);
        }
    }

    MeltingEstimate averaged() const {
        MeltingEstimate out;
        double weights = 0, solidus = 0, liquidus = 0;
        for (const KnownPoint& p : points_) {
            const double w = std::pow(std::max(p.away_wt, same_alloy_wt), -3);
            weights += w;
            solidus += w * p.solidus_K;
            liquidus += w * p.liquidus_K;
            cite(out.liquidus, p.citation);
            out.liquidus.trail.push_back(p.name + ", " + trimmed(p.away_wt, 2) +
                                         " wt% away: " + trimmed(p.solidus_K - 273.15, 4) + " to " +
                                         trimmed(p.liquidus_K - 273.15, 4) + " degC");
        }
        out.liquidus.value_si = liquidus / weights;
        out.liquidus.rule = "known alloys and binary edges nearby, averaged by nearness";
        out.liquidus.range = "a known point within 12 wt%";
        out.solidus = out.liquidus;
        out.solidus.value_si = solidus / weights;
        set_error(out.liquidus, ErrorClass::liquidus_near);
        set_error(out.solidus, ErrorClass::solidus_near);
        return out;
    }

    const AlloySetting& setting_;
    std::vector<KnownPoint> points_;
};

} // namespace

Result<MeltingEstimate> melting_from_neighbours(const AlloySetting& setting) {
    return Neighbours(setting).run();
}

} // namespace pourbook
