#include "answers/rank/rank_columns.hpp"

#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "questions/rank/tube_columns.hpp"
#include "questions/say/hazard_mark.hpp"
#include "questions/say/share.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace pourbook {
namespace {

constexpr unsigned people = in::text | in::window;
constexpr unsigned machines = in::program | in::file;

std::string ranks_text(const Place& p) {
    if (p.rank_low == 0) return {};
    return p.rank_low == p.rank_high ? std::to_string(p.rank_low)
                                     : std::to_string(p.rank_low) + "-" + std::to_string(p.rank_high);
}

/// To a thousandth: an end of an interval needs no more.
std::string short_share(double share) {
    return share >= 0.1 ? significant(share, 2) : trimmed(std::round(1000 * share) / 1000, 3);
}

DataCell chance(double p, const std::string& text) {
    DataCell cell = DataCell::figure(100 * p, text);
    cell.value = number_or_null(p);
    return cell;
}

std::string marks_of(const RankedMetal& m, const Catalogue& catalogue) {
    std::vector<std::string> marks;
    if (const std::string hazard = hazard_mark(catalogue, *m.metal); !hazard.empty()) marks.push_back(hazard);
    if (m.from_memory) marks.push_back("remembered");
    if (m.stale_price) marks.push_back("stale price");
    return joined(marks);
}

class RankingColumns {
public:
    RankingColumns(const RankResult& result, const DocumentSetting& setting)
        : result_(result), setting_(setting), merit_(result.formula, result.unit, setting) {}

    std::vector<RankColumn> all() {
        add({"rank", "rank", "", true}, [](const RankedMetal& m) { return DataCell::count(m.place.rank); });
        add({"metal", "metal", "", false, false, in::text | machines},
            [](const RankedMetal& m) { return DataCell::words(m.metal->slug); });
        add({"name", "name", "", false, false, in::file | in::window},
            [](const RankedMetal& m) { return DataCell::words(m.metal->name); });
        add_merit();
        add({"p_first", "first in", "%", true, false, machines},
            [](const RankedMetal& m) { return chance(m.place.p_first, trimmed(100 * m.place.p_first, 2)); });
        add({"p_first", "first", "", true, false, people},
            [](const RankedMetal& m) { return chance(m.place.p_first, share_text(m.place.p_first)); });
        add({"rank_low", "best rank", "", true, false, machines},
            [](const RankedMetal& m) { return DataCell::count(m.place.rank_low); });
        add({"rank_high", "worst rank", "", true, false, machines},
            [](const RankedMetal& m) { return DataCell::count(m.place.rank_high); });
        add({"ranks", "ranks", "", true, false, people},
            [](const RankedMetal& m) { return DataCell::words(ranks_text(m.place)); });
        add({"tied_with", "not told apart from", "", false, false, machines},
            [](const RankedMetal& m) { return DataCell::both(joined(m.place.tied_with, " "), m.place.tied_with); });
        add({"from_memory", "remembered", "", false, false, in::program},
            [](const RankedMetal& m) { return DataCell::both("", m.from_memory); });
        if (result_.fall) add_tube();
        add_inputs();
        add({"condition", "condition", "", false, false, in::text}, [&result = result_](const RankedMetal& m) {
            const auto& properties = result.merit.properties();
            const auto first = properties.empty() ? std::nullopt : result.input(m, properties.front());
            return DataCell::words(first ? first->condition : "");
        });
        add({"mark", "mark", "", false, false, in::text | in::file},
            [&catalogue = setting_.catalogue](const RankedMetal& m) {
                return DataCell::words(marks_of(m, catalogue));
            });
        add({"hazards", "hazards", "", false, false, in::program},
            [&catalogue = setting_.catalogue](const RankedMetal& m) {
                return DataCell::both("", hazard_elements(catalogue, *m.metal));
            });
        return std::move(columns_);
    }

private:
    void add(DataColumn column, std::function<DataCell(const RankedMetal&)> cell, const Property* property = nullptr) {
        columns_.push_back({std::move(column), std::move(cell), property});
    }

    void add_merit() {
        const auto number = [this](std::size_t which) {
            return [merit = merit_, which](const RankedMetal& m) { return merit.cell(m.place, which); };
        };
        const std::string unit = merit_.unit();
        const char* value = result_.samples ? "median" : "value";
        add({"median", value, unit, true, false, machines}, number(0));
        add({"low90", "90 % low", unit, true, false, machines}, number(1));
        add({"high90", "90 % high", unit, true, false, machines}, number(2));
        const bool against_best = comparable() && unit.find(' ') != std::string::npos;
        const unsigned shown = against_best ? unsigned{in::text} : people;
        add({"median", value, "", true, false, shown}, number(0)); // the unit stands above the table
        if (comparable()) add_relative(against_best);
        add({"low90", "90 % low", "", true, false, in::text}, number(1));
        add({"high90", "90 % high", "", true, false, in::text}, number(2));
        if (against_best) return;
        add({"interval", "90 %", "", true, false, in::window},
            [merit = merit_](const RankedMetal& m) { return DataCell::words(merit.interval(m.place)); });
    }

    /// What is no property has a unit that says nothing to a maker: beside it stands how it compares with the best.
    bool comparable() const {
        return !result_.ranked.empty() && !setting_.catalogue.property(result_.formula) &&
               std::all_of(result_.ranked.begin(), result_.ranked.end(),
                           [](const RankedMetal& m) { return m.place.median > 0; });
    }

    void add_relative(bool interval) {
        const double best = result_.ranked.front().place.median;
        const auto share = [best, high = result_.best_high](double merit) {
            return high ? merit / best : best / merit;
        };
        add({"relative_to_best", "of the best", "", true}, [share](const RankedMetal& m) {
            return DataCell::figure(share(m.place.median), significant(share(m.place.median), 3));
        });
        if (!interval) return;
        add({"relative90", "90 %", "", true, false, in::window}, [share](const RankedMetal& m) {
            const double a = share(m.place.low90), b = share(m.place.high90);
            if (!std::isfinite(a) || !std::isfinite(b)) return DataCell{};
            return DataCell::words(short_share(std::min(a, b)) + "–" + short_share(std::max(a, b)));
        });
    }

    void add_tube() {
        const auto amount = [](double RankedTube::*which, double of_one) {
            return [which, of_one](const RankedMetal& m) {
                const double x = m.tube.value_or(RankedTube{}).*which / of_one;
                return DataCell::figure(x, significant(x, 4));
            };
        };
        const ShownCurrency money = shown_currency(setting_.catalogue, setting_.units);
        add({"wall_m", "wall", "m", true, false, machines}, amount(&RankedTube::wall_m, 1));
        add({"tube_mass_kg", "mass of the tube", "kg", true, false, machines}, amount(&RankedTube::mass_kg, 1));
        DataColumn cost = money_column("tube_cost_", "cost of the tube", money);
        cost.shown_in = machines;
        cost.program_id = "cost_usd";
        add(cost, amount(&RankedTube::cost_usd, money.usd));
        for (const TubeColumn& c : tube_columns(setting_.catalogue, setting_.units)) {
            const unsigned where = c.held == result_.fall->holding() ? in::text : people; // the same in every row
            add({c.id, c.head, "", true, false, where}, [c](const RankedMetal& m) {
                const double x = c.number(m.tube.value_or(RankedTube{}));
                return DataCell::figure(x, significant(x, 3));
            });
        }
    }

    void add_inputs() {
        if (result_.ranked.empty()) return;
        const UnitSystem units = setting_.units;
        for (const Property* p : input_properties(result_.ranked.front().inputs, setting_.catalogue)) {
            DataColumn column = column_of(*p, units);
            column.program_id = "inputs." + p->id;
            if (result_.fall && p->id != "resistivity") column.shown_in &= ~in::window; // room for what decides only
            add(
                column,
                [p, units, &result = result_](const RankedMetal& m) {
                    const std::optional<Evaluated> value = result.input(m, p->id);
                    return value ? cell_of(*p, *value, units) : DataCell{};
                },
                p);
        }
    }

    const RankResult& result_;
    const DocumentSetting& setting_;
    MeritCells merit_;
    std::vector<RankColumn> columns_;
};

} // namespace

std::vector<RankColumn> rank_columns(const RankResult& result, const DocumentSetting& setting) {
    return RankingColumns(result, setting).all();
}

} // namespace pourbook
