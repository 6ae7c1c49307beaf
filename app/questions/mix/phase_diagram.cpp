#include "questions/mix/phase_diagram.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double same_temperature_K = 1.5, narrow_wt = 0.3;
constexpr double near_pure_wt = 8; // an end of the axis this near to what is drawn is shown too
constexpr double head_room = 0.08;

bool melts(const DiagramField& f) {
    return f.left == "liquid" || f.right == "liquid";
}

class Drawer {
public:
    explicit Drawer(const Diagram& d) { out_.diagram = &d; }

    PhaseDiagram run(std::optional<double> wt, std::optional<double> temperature_K) {
        out_.wt = wt;
        bounds();
        for (const DiagramField& f : diagram().fields) {
            side(f, f.left == "liquid", &DiagramRow::left_wt);
            side(f, f.right == "liquid", &DiagramRow::right_wt);
            level(f, f.rows.front());
            level(f, f.rows.back());
        }
        sample();
        if (wt)
            if (const Result<MeltingRange> m = melting_range(diagram(), *wt)) out_.melting = *m;
        if (wt && temperature_K) tie(*wt, *temperature_K);
        return std::move(out_);
    }

private:
    const Diagram& diagram() const { return *out_.diagram; }

    void bounds() {
        double low = out_.wt.value_or(100), high = out_.wt.value_or(0);
        out_.low_K = 1e9;
        for (const DiagramField& f : diagram().fields)
            for (const DiagramRow& r : f.rows) {
                low = std::min(low, r.left_wt);
                high = std::max(high, r.right_wt);
                out_.low_K = std::min(out_.low_K, r.temperature_K);
                out_.high_K = std::max(out_.high_K, r.temperature_K);
            }
        out_.low_wt = low < near_pure_wt ? 0 : low;
        out_.high_wt = high > 100 - near_pure_wt ? 100 : high;
        const double span = out_.high_K - out_.low_K;
        out_.high_K += head_room * span;
        out_.low_K -= diagram().solid.empty() ? 0 : head_room * span; // room for the solid below its melting range
    }

    void side(const DiagramField& f, bool liquid, double DiagramRow::*wt) {
        DiagramLine line{!melts(f) ? "solvus" : liquid ? "liquidus" : "solidus", {}, &f};
        for (const DiagramRow& r : f.rows) line.spots.push_back({r.*wt, r.temperature_K});
        out_.lines.push_back(std::move(line));
    }

    /// Where a field ends at the temperature of another field's end, three phases meet.
    void level(const DiagramField& f, const DiagramRow& end) {
        if (end.right_wt - end.left_wt < narrow_wt) return;
        for (const DiagramField& g : diagram().fields)
            for (const DiagramRow* r : {&g.rows.front(), &g.rows.back()}) {
                const bool meets = &g != &f && std::abs(r->temperature_K - end.temperature_K) < same_temperature_K &&
                                   r->left_wt <= end.right_wt && r->right_wt >= end.left_wt;
                if (!meets) continue;
                out_.lines.push_back(
                    {"three phases", {{end.left_wt, end.temperature_K}, {end.right_wt, end.temperature_K}}, &f});
                return;
            }
    }

    void sample() {
        DiagramFields& f = out_.fields;
        for (int row = 0; row < DiagramFields::rows; ++row)
            for (int column = 0; column < DiagramFields::columns; ++column) {
                const double wt = out_.low_wt + (column + 0.5) / DiagramFields::columns * (out_.high_wt - out_.low_wt);
                const double t = out_.low_K + (row + 0.5) / DiagramFields::rows * (out_.high_K - out_.low_K);
                f.of_cell.push_back(number_of(phases_at(diagram(), wt, t)));
            }
    }

    int number_of(const Result<std::vector<PhaseShare>>& phases) {
        std::string name = phases ? "" : "not drawn";
        if (phases)
            for (const PhaseShare& p : *phases) name += (name.empty() ? "" : " + ") + p.phase;
        auto& names = out_.fields.names;
        const auto at = std::find(names.begin(), names.end(), name);
        if (at == names.end()) names.push_back(name);
        return static_cast<int>(std::find(names.begin(), names.end(), name) - names.begin());
    }

    void tie(double wt, double temperature_K) {
        out_.temperature_K = temperature_K;
        const Result<std::vector<PhaseShare>> phases = phases_at(diagram(), wt, temperature_K);
        if (phases)
            out_.phases = *phases;
        else
            out_.not_drawn = phases.problem().text;
    }

    PhaseDiagram out_;
};

} // namespace

Result<PhaseDiagram> phase_diagram(const Catalogue& catalogue, const PhaseDiagramRequest& request) {
    for (const std::string& symbol : {request.a, request.b})
        if (!catalogue.alloys.mass(symbol))
            return Problem{Problem::Kind::unknown, "unknown element '" + symbol + "': write a chemical symbol", 0};
    const Diagram* d = catalogue.alloys.diagram(request.a, request.b);
    if (!d)
        return Problem{Problem::Kind::no_value, "no diagram of " + request.a + " and " + request.b + " is stored", 0};
    std::optional<double> wt = request.wt_of_b;
    if (wt && !(*wt >= 0 && *wt <= 100))
        return Problem{Problem::Kind::unreadable, "a content between 0 and 100 % is expected", 0};
    if (wt && d->b != request.b) wt = 100 - *wt;
    return Drawer(*d).run(wt, request.temperature_K);
}

} // namespace pourbook
