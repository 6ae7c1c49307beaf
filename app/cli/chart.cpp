#include "cli/chart_kind.hpp"

#include "charts/curve_chart.hpp"
#include "charts/rank_chart.hpp"
#include "charts/scatter_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "cli/rank_words.hpp"
#include "cli/tradeoff_words.hpp"

namespace pourbook {
namespace {

struct CurveWords {
    CurveRequest request;
    CurveLook look;
};

void declare_curve(Context& context, CLI::App* chart) {
    const auto words =
        chart_kind<CurveWords>(context, chart, "curve", "a property against temperature",
                               [](const Catalogue& catalogue, const CurveWords& w, const Conditions& conditions,
                                  UnitSystem units) -> Result<Drawing> {
                                   CurveRequest request = w.request;
                                   request.condition = conditions.condition;
                                   const Result<CurveResult> result = curve(catalogue, request);
                                   if (!result) return result.problem();
                                   CurveLook look = w.look;
                                   look.units = units;
                                   const CurveChart made = curve_chart(catalogue, *result, look);
                                   if (made.lines.empty())
                                       return Problem{Problem::Kind::no_value, made.notes.front(), 0};
                                   return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
                               });
    CLI::App* c = chart->get_subcommand("curve");
    context.with_conditions(c);
    c->add_option("PROPERTY", words->request.property, "such as resistivity")->required();
    c->add_option("METAL", words->request.metals, "one or more metals")->required();
    context.metal_lists.push_back(&words->request.metals);
    c->add_flag("--log", words->look.log, "logarithmic upward axis");
    c->add_flag("--celsius", words->look.celsius, "temperatures in degC");
}

struct ScatterWords {
    std::string along, up;
    std::vector<std::string> metals, where;
};

Result<CompareResult> scattered(const Catalogue& catalogue, const ScatterWords& w, const Conditions& conditions) {
    CompareRequest request{w.metals, {w.along, w.up}, conditions};
    if (w.metals.empty() && !w.where.empty()) {
        const auto found = list_metals(catalogue, "", w.where, conditions);
        if (!found) return found.problem();
        for (const Metal* m : *found) request.metals.push_back(m->slug);
        if (found->empty()) return Problem{Problem::Kind::no_value, "--where: no metal meets the conditions", 0};
    }
    return compare(catalogue, request);
}

void declare_scatter(Context& context, CLI::App* chart) {
    const auto words = chart_kind<ScatterWords>(
        context, chart, "scatter", "one property against another, a point per metal",
        [](const Catalogue& catalogue, const ScatterWords& w, const Conditions& conditions,
           UnitSystem units) -> Result<Drawing> {
            const Result<CompareResult> result = scattered(catalogue, w, conditions);
            if (!result) return result.problem();
            const Result<PointChart> made = scatter_chart(catalogue, *result, units, {});
            if (!made) return made.problem();
            if (made->points.empty()) return Problem{Problem::Kind::no_value, "no metal has both values", 0};
            return Drawing([made = *made](const Canvas& canvas) { return layout(made, canvas); });
        });
    CLI::App* c = chart->get_subcommand("scatter");
    context.with_conditions(c);
    c->add_option("PROPERTY", words->along, "along")->required();
    c->add_option("OTHER", words->up, "up")->required();
    auto* metals = c->add_option("METAL", words->metals, "only these metals (default: all)");
    c->add_option("--where", words->where, "a condition on the metals; may be repeated")->excludes(metals);
    context.metal_lists.push_back(&words->metals);
    context.with_mixes_too(c);
}

void declare_rank_kind(Context& context, CLI::App* chart) {
    const auto words = chart_kind<RankWords>(
        context, chart, "rank", "a ranking with its intervals",
        [&context](const Catalogue& catalogue, const RankWords& w, const Conditions& conditions, double to_K,
                   UnitSystem units) -> Result<Drawing> {
            const Result<RankedFrom> from = ranked_from(context, catalogue, w.asked(conditions, to_K));
            if (!from) return from.problem();
            const Result<RankResult> result = rank(from->in(catalogue), from->request);
            if (!result) return result.problem();
            if (result->ranked.empty())
                return Problem{Problem::Kind::no_value, "no metal can be ranked: see `pourbook rank`", 0};
            const RankChart made = rank_chart(from->in(catalogue), *result, units, {});
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    with_rank_words(context, chart->get_subcommand("rank"), *words);
}

void declare_tradeoff_kind(Context& context, CLI::App* chart) {
    const auto words = chart_kind<TradeoffWords>(
        context, chart, "tradeoff", "two goals at once, and whom no other beats in both",
        [](const Catalogue& catalogue, const TradeoffWords& w, const Conditions& conditions, double to_K,
           UnitSystem units) -> Result<Drawing> {
            const Result<TradeoffResult> result = tradeoff(catalogue, w.asked(conditions, to_K));
            if (!result) return result.problem();
            if (result->points.empty())
                return Problem{Problem::Kind::no_value, "no metal can be ranked by both goals: see `pourbook tradeoff`",
                               0};
            const PointChart made = tradeoff_chart(catalogue, *result, units, {});
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    with_tradeoff_words(context, chart->get_subcommand("tradeoff"), *words);
}

} // namespace

void declare_chart(Context& context) {
    CLI::App* chart = context.app.add_subcommand(
        "chart", "a picture of a curve, ranking, fall, diagram or other answer, with its sources");
    chart->require_subcommand(1);
    declare_curve(context, chart);
    declare_scatter(context, chart);
    declare_rank_kind(context, chart);
    declare_tradeoff_kind(context, chart);
    declare_fall_charts(context, chart);
    declare_mixture_charts(context, chart);
}

} // namespace pourbook
