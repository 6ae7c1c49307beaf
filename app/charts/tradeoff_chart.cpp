#include "charts/tradeoff_chart.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr std::size_t most_beaten = 600; // points a picture can hold; of more, evenly many along the first goal

/// One of the two goals, and how its merit is drawn.
class Goalpost {
public:
    Goalpost(const Catalogue& catalogue, const TradeoffResult& r, bool first, UnitSystem units)
        : property_(catalogue.property(first ? r.first_formula : r.second_formula)), units_(units),
          high_(first ? r.first_high : r.second_high), place_(first ? &TradeoffPoint::first : &TradeoffPoint::second) {
        const std::string& label = first ? r.first_label : r.second_label;
        const std::string& formula = first ? r.first_formula : r.second_formula;
        name = label.empty() ? formula : label;
        const TradeoffPoint* best = nullptr;
        for (const TradeoffPoint& p : r.points)
            if (!best || (high_ ? median(p) > median(*best) : median(p) < median(*best))) best = &p;
        if (best) best_ = median(*best);
        const bool rises = drawn(2) > drawn(1);
        axis = (property_ ? label_with_unit(*property_, units)
                          : name + ", relative to " + (best ? best->metal->name : "the best")) +
               (high_ == rises ? " (more is better)" : " (less is better)");
    }

    double median(const TradeoffPoint& p) const { return (p.*place_).median; }
    double drawn(double si) const { return property_ ? shown_number(*property_, si, units_) : si / best_; }
    PointReach reach(const TradeoffPoint& p) const {
        const double a = drawn((p.*place_).low90), b = drawn((p.*place_).high90);
        return {drawn(median(p)), std::min(a, b), std::max(a, b)};
    }
    std::string told(const TradeoffPoint& p) const {
        const PointReach r = reach(p);
        const auto text = [&](double x) { return pretty_number(rounded_to(x, (r.high - r.low) / 2, 4)); };
        return name + ": " + text(r.middle) + " (90 %: " + text(r.low) + " to " + text(r.high) + ")";
    }
    bool high() const { return high_; }

    std::string name, axis;

private:
    const Property* property_;
    UnitSystem units_;
    bool high_;
    Place TradeoffPoint::*place_;
    double best_ = 1;
};

/// The edge of what the front beats: from each of its metals to the next along one goal, then along the other.
std::vector<Spot> steps(const TradeoffResult& result, const Goalpost& along, const Goalpost& up) {
    std::vector<Spot> front;
    for (const TradeoffPoint& p : result.points)
        if (p.on_front) front.push_back({along.median(p), up.median(p)});
    std::sort(front.begin(), front.end(), [](Spot a, Spot b) { return a.x < b.x; });
    std::vector<Spot> out;
    const auto add = [&](double x, double y) { out.push_back({along.drawn(x), up.drawn(y)}); };
    for (std::size_t i = 0; i < front.size(); ++i) {
        add(front[i].x, front[i].y);
        if (i + 1 == front.size()) break;
        if (along.high())
            add(front[i].x, front[i + 1].y);
        else
            add(front[i + 1].x, front[i].y);
    }
    return out;
}

/// What is drawn: the front, the pinned, and of the beaten ones no more than a picture can hold.
std::vector<const TradeoffPoint*> drawn_points(const TradeoffResult& result, const std::vector<std::string>& pinned) {
    const auto beaten = static_cast<std::size_t>(
        std::count_if(result.points.begin(), result.points.end(), [](const TradeoffPoint& p) { return !p.on_front; }));
    const std::size_t step = beaten / most_beaten + 1;
    std::vector<const TradeoffPoint*> out;
    std::size_t seen = 0;
    for (const TradeoffPoint& p : result.points)
        if (p.on_front || seen++ % step == 0 || std::find(pinned.begin(), pinned.end(), p.metal->slug) != pinned.end())
            out.push_back(&p);
    return out;
}

std::string name_of(const Catalogue& catalogue, const std::string& slug) {
    const Metal* m = catalogue.metal(slug);
    return m ? m->name : slug;
}

} // namespace

PointChart tradeoff_chart(const Catalogue& catalogue, const TradeoffResult& result, UnitSystem units,
                          const std::vector<std::string>& pinned) {
    const Goalpost along(catalogue, result, true, units), up(catalogue, result, false, units);
    PointChart chart;
    chart.title = up.name + " against " + along.name;
    const auto in_front =
        std::count_if(result.points.begin(), result.points.end(), [](const TradeoffPoint& p) { return p.on_front; });
    chart.subtitle = "on the line: no other metal beats it in both";
    for (const TradeoffPoint& p : result.points)
        if (p.on_front && in_front == 1) chart.subtitle = p.metal->name + " beats every other metal in both";
    chart.x_label = along.axis;
    chart.y_label = up.axis;
    chart.origin.conditions =
        conditions_text(result.conditions, result.to_K) +
        rate_text({catalogue.property(result.first_formula), catalogue.property(result.second_formula)});
    chart.origin.data_version = catalogue.data_version;
    const std::vector<const TradeoffPoint*> drawn = drawn_points(result, pinned);
    if (drawn.size() < result.points.size())
        chart.notes.push_back(std::to_string(drawn.size()) + " of " + std::to_string(result.points.size()) +
                              " metals are drawn: the front, the pinned ones and an even choice of the others");
    for (const TradeoffPoint* point : drawn) {
        const TradeoffPoint& p = *point;
        const std::string& slug = p.metal->slug;
        const auto pin = std::find(pinned.begin(), pinned.end(), slug);
        std::string hover = p.metal->name + "\n" + along.told(p) + "\n" + up.told(p);
        hover += p.on_front ? "\nno other beats it in both" : "\nbeaten in both by " + name_of(catalogue, p.beaten_by);
        chart.points.push_back({slug, p.metal->name, along.reach(p), up.reach(p), hover, !p.on_front, p.from_memory,
                                pin != pinned.end(), static_cast<std::size_t>(pin - pinned.begin())});
        for (const std::string& key : p.sources)
            if (std::find(chart.origin.sources.begin(), chart.origin.sources.end(), key) == chart.origin.sources.end())
                chart.origin.sources.push_back(key);
    }
    chart.line = steps(result, along, up);
    return chart;
}

} // namespace pourbook
