#include "cli/chart_kind.hpp"

#include "charts/drop_charts.hpp"
#include "cli/setup_words.hpp"

namespace pourbook {
namespace {

struct FallWords {
    DropRequest request;
    std::vector<std::string> metals;
};

void with_metals(Context& context, CLI::App* c, std::vector<std::string>& metals) {
    c->add_option("--metal", metals, "metals of the tube, separated by commas")->delimiter(',')->required();
    context.metal_lists.push_back(&metals);
    context.with_conditions(c);
}

Problem none_falls(const std::vector<DropOfMetal>& drops) {
    return {Problem::Kind::no_value, drops.front().metal->name + ": " + drops.front().result.problem().text, 0};
}

/// The falls in all metals; an error where no metal has one.
Result<std::vector<DropOfMetal>> falls(const Catalogue& catalogue, const FallWords& w, const Conditions& conditions) {
    DropRequest request = w.request;
    request.conditions = conditions;
    Result<std::vector<DropOfMetal>> drops = drop_in_each(catalogue, request, w.metals);
    if (!drops) return drops;
    for (const DropOfMetal& d : *drops)
        if (d.result) return drops;
    return none_falls(*drops);
}

Result<std::vector<Trial>> trials_of(Workshop* workshop) {
    if (!workshop) return std::vector<Trial>();
    const Result<std::vector<Entry>> entries = workshop->entries(known_kind("trial"));
    if (!entries) return entries.problem();
    return trials_from(*entries);
}

void declare_bars(Context& context, CLI::App* chart) {
    const auto words = chart_kind<FallWords>(
        context, chart, "drop", "how long a magnet falls through a tube of each metal, with the trials made of it",
        [&context](const Catalogue& catalogue, const FallWords& w, const Conditions& conditions,
                   UnitSystem units) -> Result<Drawing> {
            const auto drops = falls(catalogue, w, conditions);
            if (!drops) return drops.problem();
            const auto trials = trials_of(context.workshop);
            if (!trials) return trials.problem();
            const auto measured = measured_falls(catalogue, *trials, w.request.setup, conditions);
            if (!measured) return measured.problem();
            const FallChart made = fall_chart(catalogue, *drops, units, *measured);
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    CLI::App* c = chart->get_subcommand("drop");
    with_setup(c, words->request.setup);
    with_metals(context, c, words->metals);
}

void declare_drag_curve(Context& context, CLI::App* chart) {
    const auto words =
        chart_kind<FallWords>(context, chart, "drag", "the drag on a magnet against its speed",
                              [](const Catalogue& catalogue, const FallWords& w, const Conditions& conditions,
                                 UnitSystem units) -> Result<Drawing> {
                                  const auto drops = falls(catalogue, w, conditions);
                                  if (!drops) return drops.problem();
                                  const CurveChart made = drag_chart(catalogue, *drops, units);
                                  return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
                              });
    CLI::App* c = chart->get_subcommand("drag");
    with_setup(c, words->request.setup);
    with_metals(context, c, words->metals);
}

struct SweepPicture {
    SweepRequest request;
    std::vector<std::string> over;
};

void declare_sweep_curve(Context& context, CLI::App* chart) {
    const auto words =
        chart_kind<SweepPicture>(context, chart, "sweep", "fall time against wall, bore, temperature or budget",
                                 [](const Catalogue& catalogue, const SweepPicture& w, const Conditions& conditions,
                                    UnitSystem units) -> Result<Drawing> {
                                     Result<SweepRequest> request =
                                         with_range(catalogue, w.request, w.over[0], w.over[1]);
                                     if (!request) return request.problem();
                                     request->conditions = conditions;
                                     const Result<SweepResult> result = sweep(catalogue, *request);
                                     if (!result) return result.problem();
                                     const CurveChart made = sweep_chart(catalogue, *result, units);
                                     return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
                                 });
    CLI::App* c = chart->get_subcommand("sweep");
    words->request.steps = 25;
    with_setup(c, words->request.setup);
    with_metals(context, c, words->request.metals);
    c->add_option("--over", words->over, "wall|bore|temperature|budget FROM:TO")->required()->expected(2);
}

} // namespace

void declare_fall_charts(Context& context, CLI::App* chart) {
    declare_bars(context, chart);
    declare_drag_curve(context, chart);
    declare_sweep_curve(context, chart);
}

} // namespace pourbook
