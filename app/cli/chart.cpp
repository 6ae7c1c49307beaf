#include "cli/context.hpp"

#include "charts/curve_chart.hpp"
#include "charts/diagram_chart.hpp"
#include "charts/mix_chart.hpp"
#include "charts/rank_chart.hpp"
#include "charts/scatter_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "cli/picture_words.hpp"
#include "cli/rank_words.hpp"
#include "cli/tradeoff_words.hpp"
#include "core/quantity/unit.hpp"
#include "usecases/mix_metal.hpp"
#include "usecases/mix_sheet.hpp"
#include "usecases/mix_words.hpp"

#include <cctype>

namespace pourbook {
namespace {

using Drawing = std::function<Scene(const Canvas&)>;

/// A kind of chart: its own words W and those of every picture. `scene(catalogue, words, conditions, units)` gives a
/// function of the canvas, or a problem.
template <class W, class F>
std::shared_ptr<W> kind(Context& context, CLI::App* chart, const std::string& name, const std::string& help, F scene) {
    struct Words {
        W own;
        PictureWords picture;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command(chart, name, help);
    with_picture_words(c, words->picture);
    c->callback([&context, words, scene] {
        if constexpr (std::is_same_v<W, RankWords>)
            if (const auto fault = words->own.read_range(context.words.at)) {
                context.answer = [&context, fault](const Catalogue&) { return context.failed(*fault); };
                return;
            }
        context.answer = context.under_conditions(
            [&context, words, scene](const Catalogue& catalogue, const Conditions& conditions) {
                const Result<UnitSystem> units = units_from(context.units);
                if (!units) return context.failed(units.problem());
                const Result<Drawing> drawing = scene(catalogue, words->own, conditions, *units);
                return drawing ? answer_picture(context, catalogue, words->picture, *drawing)
                               : context.failed(drawing.problem());
            });
    });
    return {words, &words->own};
}

struct CurveWords {
    CurveRequest request;
    CurveLook look;
};

void declare_curve(Context& context, CLI::App* chart) {
    const auto words =
        kind<CurveWords>(context, chart, "curve", "a property against temperature",
                         [](const Catalogue& catalogue, const CurveWords& w, const Conditions& conditions,
                            UnitSystem units) -> Result<Drawing> {
                             CurveRequest request = w.request;
                             request.condition = conditions.condition;
                             const Result<CurveResult> result = curve(catalogue, request);
                             if (!result) return result.problem();
                             CurveLook look = w.look;
                             look.units = units;
                             const CurveChart made = curve_chart(catalogue, *result, look);
                             if (made.lines.empty()) return Problem{Problem::Kind::no_value, made.notes.front(), 0};
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
    const auto words =
        kind<ScatterWords>(context, chart, "scatter", "one property against another, a point per metal",
                           [](const Catalogue& catalogue, const ScatterWords& w, const Conditions& conditions,
                              UnitSystem units) -> Result<Drawing> {
                               const Result<CompareResult> result = scattered(catalogue, w, conditions);
                               if (!result) return result.problem();
                               const Result<PointChart> made = scatter_chart(catalogue, *result, units, {});
                               if (!made) return made.problem();
                               if (made->points.empty())
                                   return Problem{Problem::Kind::no_value, "no metal has both values", 0};
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
    const auto words = kind<RankWords>(
        context, chart, "rank", "a ranking with its intervals",
        [](const Catalogue& catalogue, const RankWords& w, const Conditions& conditions,
           UnitSystem units) -> Result<Drawing> {
            const Result<RankResult> result = rank(catalogue, w.asked(conditions));
            if (!result) return result.problem();
            if (result->ranked.empty())
                return Problem{Problem::Kind::no_value, "no metal can be ranked: see `pourbook rank`", 0};
            const RankChart made = rank_chart(catalogue, *result, units, {});
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    with_rank_words(context, chart->get_subcommand("rank"), *words);
}

void declare_tradeoff_kind(Context& context, CLI::App* chart) {
    const auto words = kind<TradeoffRequest>(
        context, chart, "tradeoff", "two goals at once, and whom no other beats in both",
        [](const Catalogue& catalogue, const TradeoffRequest& w, const Conditions& conditions,
           UnitSystem units) -> Result<Drawing> {
            TradeoffRequest request = w;
            request.conditions = conditions;
            const Result<TradeoffResult> result = tradeoff(catalogue, request);
            if (!result) return result.problem();
            if (result->points.empty())
                return Problem{Problem::Kind::no_value, "no metal can be ranked by both goals: see `pourbook tradeoff`",
                               0};
            const PointChart made = tradeoff_chart(catalogue, *result, units, {});
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    context.with_conditions(chart->get_subcommand("tradeoff"));
    with_tradeoff_words(chart->get_subcommand("tradeoff"), *words);
    context.metal_lists.push_back(&words->from);
}

struct DiagramWords {
    std::string system, composition, at;
};

Problem unreadable(const std::string& text) {
    return {Problem::Kind::unreadable, text, 0};
}

/// "AG-CU" as two symbols.
Result<PhaseDiagramRequest> system_from(const std::string& words) {
    const std::size_t dash = words.find('-');
    if (dash == 0 || dash >= words.size() - 1 || words.empty())
        return unreadable("'" + words + "': two elements are expected, such as Ag-Cu");
    PhaseDiagramRequest out{words.substr(0, dash), words.substr(dash + 1), {}, {}};
    for (std::string* symbol : {&out.a, &out.b})
        for (std::size_t i = 0; i < symbol->size(); ++i) {
            const auto letter = static_cast<unsigned char>((*symbol)[i]);
            (*symbol)[i] = static_cast<char>(i == 0 ? std::toupper(letter) : std::tolower(letter));
        }
    return out;
}

/// Adds composition and temperature; returns how the composition is called.
Result<std::string> place_composition(const Catalogue& catalogue, const DiagramWords& w, PhaseDiagramRequest& request) {
    if (w.composition.empty()) return std::string();
    const Result<Composition> c = composition_from(catalogue, w.composition);
    if (!c) return unreadable("--composition: " + c.problem().text);
    const Result<MixAxis> axis = axis_of(catalogue, *c);
    const bool same =
        axis && ((axis->a == request.a && axis->b == request.b) || (axis->a == request.b && axis->b == request.a));
    if (!same) return unreadable("--composition: its two main elements are not " + request.a + " and " + request.b);
    request.wt_of_b = axis->b == request.b ? axis->wt_b : 100 - axis->wt_b;
    if (!w.at.empty()) {
        const Result<double> t = parse_si(w.at, base_dimension(Dimension::kelvin), "a temperature");
        if (!t || !(*t >= 0)) return unreadable("--at '" + w.at + "': write 600degC or 900K");
        if (c->shares().size() > 2) return unreadable("--at: shares of phases are told for two elements only");
        request.temperature_K = *t;
    }
    return name_on_axis(*c);
}

void declare_diagram(Context& context, CLI::App* chart) {
    const auto words = kind<DiagramWords>(
        context, chart, "diagram", "the phase diagram of two elements",
        [](const Catalogue& catalogue, const DiagramWords& w, const Conditions&, UnitSystem units) -> Result<Drawing> {
            Result<PhaseDiagramRequest> request = system_from(w.system);
            if (!request) return request.problem();
            const Result<std::string> name = place_composition(catalogue, w, *request);
            if (!name) return name.problem();
            const Result<PhaseDiagram> result = phase_diagram(catalogue, *request);
            if (!result) return result.problem();
            const DiagramChart made = diagram_chart(catalogue, *result, *name, units);
            return Drawing([made](const Canvas& canvas) { return layout(made, canvas); });
        });
    CLI::App* c = chart->get_subcommand("diagram");
    c->add_option("SYSTEM", words->system, "two elements, such as Ag-Cu")->required();
    auto* composition = c->add_option("--composition", words->composition, "pointed out, such as \"Ag 92.5 Cu 7.5\"");
    c->add_option("--at", words->at, "with the shares of its phases at this temperature, such as 600degC")
        ->needs(composition);
}

struct MixWords {
    std::string mix;
    std::vector<std::string> treatments;
    bool resistivity = false;
};

Result<CurveChart> mix_chart_of(const Catalogue& catalogue, const MixWords& w) {
    const Result<MixRequest> request = mix_request_from(catalogue, w.mix);
    if (!request) return request.problem();
    const Result<MixResult> result = mix(catalogue, *request);
    if (!result) return result.problem();
    const Composition& composition = result->composition;
    const Result<MixAxis> axis = axis_of(catalogue, composition);
    if (!axis) return axis.problem();
    std::vector<Treatment> treatments;
    for (const std::string& t : w.treatments) treatments.push_back(*treatment_named(t)); // checked by the option
    if (treatments.empty()) treatments.push_back(request->treatment);
    std::vector<MixCurve> curves;
    for (const Treatment t : treatments) {
        const Result<MixCurve> curve = mix_curve(catalogue, {axis->a, axis->b, t});
        if (!curve) return curve.problem();
        curves.push_back(*curve);
    }
    CurveChart made =
        mix_chart(catalogue, curves, {w.resistivity, CurveUpright{axis->wt_b, name_on_axis(composition)}});
    if (made.lines.empty()) return Problem{Problem::Kind::no_value, made.notes.front(), 0};
    return made;
}

void declare_mix_kind(Context& context, CLI::App* chart) {
    const auto words = kind<MixWords>(
        context, chart, "mix", "conductivity against composition, with a mix pointed out",
        [](const Catalogue& catalogue, const MixWords& w, const Conditions&, UnitSystem) -> Result<Drawing> {
            const Result<CurveChart> made = mix_chart_of(catalogue, w);
            if (!made) return made.problem();
            return Drawing([made = *made](const Canvas& canvas) { return layout(made, canvas); });
        });
    CLI::App* c = chart->get_subcommand("mix");
    c->add_option("MIX", words->mix, "stocks or a composition, such as \"Ag 92.5 Cu 7.5 annealed\"")->required();
    c->add_option("--treatment", words->treatments, "a line for each of these, instead of the mix's own")
        ->delimiter(',')
        ->check(CLI::IsMember({"as-cast", "annealed", "quenched", "aged"}));
    c->add_flag("--resistivity", words->resistivity, "resistivity instead of conductivity");
}

} // namespace

void declare_chart(Context& context) {
    CLI::App* chart = context.app.add_subcommand(
        "chart", "a picture of a curve, scatter, ranking, trade-off, diagram or mix, with its sources");
    chart->require_subcommand(1);
    declare_curve(context, chart);
    declare_scatter(context, chart);
    declare_rank_kind(context, chart);
    declare_tradeoff_kind(context, chart);
    declare_diagram(context, chart);
    declare_mix_kind(context, chart);
}

} // namespace pourbook
