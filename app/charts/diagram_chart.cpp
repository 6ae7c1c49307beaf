#include "charts/diagram_chart.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

class ChartOf {
public:
    ChartOf(const Catalogue& c, const PhaseDiagram& d, UnitSystem units)
        : catalogue_(c), d_(d), units_(units), temperature_(*c.property("liquidus")) {}

    DiagramChart run(const std::string& name) {
        out_.title = d_.diagram->a + "-" + d_.diagram->b;
        out_.x_label = "wt% " + d_.diagram->b;
        out_.y_label = "temperature, " + shown_unit(temperature_, units_);
        out_.x_low = d_.low_wt;
        out_.x_high = d_.high_wt;
        out_.y_low = shown(d_.low_K);
        out_.y_high = shown(d_.high_K);
        keep_what_is_drawn();
        out_.fields = kept_fields();
        for (const DiagramLine& line : d_.lines) add(line);
        for (const Invariant& i : d_.diagram->invariants) add(i);
        if (d_.wt) add_composition(name);
        if (!d_.phases.empty()) add_tie();
        out_.notes.push_back(how_lines_are_known());
        if (!d_.not_drawn.empty()) out_.notes.push_back(d_.not_drawn);
        out_.origin.conditions = "in equilibrium at atmospheric pressure";
        out_.origin.data_version = catalogue_.data_version;
        return std::move(out_);
    }

private:
    /// The side of a wide stretch without any line on which the composition lies; all of it where there is none.
    void keep_what_is_drawn() {
        constexpr double wide = 0.4, margin = 0.05; // of the whole width
        const double width = d_.high_wt - d_.low_wt;
        std::vector<std::pair<double, double>> taken; // by lines, the composition and its phases
        for (const DiagramLine& line : d_.lines)
            for (std::size_t i = 1; i < line.spots.size(); ++i)
                taken.push_back(std::minmax(line.spots[i - 1].wt, line.spots[i].wt));
        if (d_.wt) taken.emplace_back(*d_.wt, *d_.wt);
        if (!d_.phases.empty()) taken.push_back(std::minmax(d_.phases.front().wt, d_.phases.back().wt));
        std::sort(taken.begin(), taken.end());
        double end = taken.empty() ? d_.low_wt : taken.front().second;
        for (const auto& [from, to] : taken) {
            if (from - end >= wide * width) {
                const bool left = !d_.wt || *d_.wt <= end;
                (left ? out_.x_high : out_.x_low) = left ? end + margin * width : from - margin * width;
                return;
            }
            end = std::max(end, to);
        }
    }

    /// The fields of what is kept, in as many columns.
    DiagramFields kept_fields() const {
        DiagramFields kept = d_.fields;
        if (kept.of_cell.empty()) return kept;
        constexpr int columns = DiagramFields::columns;
        for (int i = 0; i < columns * DiagramFields::rows; ++i) {
            const double wt = out_.x_low + (i % columns + 0.5) / columns * (out_.x_high - out_.x_low);
            const double share = (wt - d_.low_wt) / (d_.high_wt - d_.low_wt);
            const int column = std::clamp(static_cast<int>(share * columns), 0, columns - 1);
            kept.of_cell[static_cast<std::size_t>(i)] =
                d_.fields.of_cell[static_cast<std::size_t>(i / columns * columns + column)];
        }
        return kept;
    }

    double shown(double kelvin) const { return shown_number(temperature_, kelvin, units_); }

    std::string degrees(double kelvin) const {
        return trimmed(std::round(10 * shown(kelvin)) / 10, 5) + " " + shown_unit(temperature_, units_);
    }

    std::string content(double wt) const { return trimmed(wt, 4) + " wt% " + d_.diagram->b; }

    void take_source(const std::string& key) {
        auto& all = out_.origin.sources;
        if (std::find(all.begin(), all.end(), key) == all.end()) all.push_back(key);
    }

    std::string cited(const Citation& c) {
        take_source(c.source);
        return c.source + ", " + c.locator + " (" + name_of(c.how_known) + ")";
    }

    void add(const DiagramLine& line) {
        DiagramChartLine drawn;
        drawn.melting = line.kind == "liquidus" || line.kind == "solidus";
        const std::string from = cited(line.field->citation);
        for (const DiagramSpot& s : line.spots) {
            drawn.spots.push_back({s.wt, shown(s.temperature_K)});
            drawn.hovers.push_back(line.kind + "\n" + degrees(s.temperature_K) + ", " + content(s.wt) + "\n" + from);
        }
        out_.lines.push_back(std::move(drawn));
    }

    void add(const Invariant& i) {
        std::string words = i.kind + "\n" + degrees(i.temperature_K);
        for (const PhaseContent& p : i.phases) words += "\n" + p.phase + ": " + content(p.wt);
        words += "\n" + cited(i.citation);
        for (const PhaseContent& p : i.phases) out_.published.push_back({p.wt, shown(i.temperature_K), words});
    }

    void add_composition(const std::string& name) {
        out_.upright = *d_.wt;
        out_.upright_label = name;
        out_.upright_hover = name + "\n" + content(*d_.wt);
        if (d_.melting)
            out_.upright_hover += "\nliquidus " + degrees(d_.melting->liquidus_K) + ", solidus " +
                                  degrees(d_.melting->solidus_K) + "\nfirst solid " + d_.melting->first_solid;
    }

    void add_tie() {
        DiagramTie tie{shown(d_.temperature_K), d_.phases.front().wt, d_.phases.back().wt, {}};
        for (const PhaseShare& p : d_.phases)
            tie.words.push_back(d_.phases.size() == 1 ? "all " + p.phase
                                                      : significant(100 * p.share, 3) + " % " + p.phase);
        out_.tie = tie;
    }

    std::string how_lines_are_known() const {
        bool remembered = false;
        for (const DiagramField& f : d_.diagram->fields)
            remembered = remembered || f.citation.how_known == HowKnown::memory;
        std::string words = remembered ? "lines: remembered, not read" : "lines: read";
        if (!out_.published.empty()) words += " · ● published points";
        return words;
    }

    const Catalogue& catalogue_;
    const PhaseDiagram& d_;
    UnitSystem units_;
    const Property& temperature_;
    DiagramChart out_;
};

} // namespace

DiagramChart diagram_chart(const Catalogue& catalogue, const PhaseDiagram& diagram, const std::string& name,
                           UnitSystem units) {
    return ChartOf(catalogue, diagram, units).run(name);
}

} // namespace pourbook
