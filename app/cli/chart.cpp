#include "charts/curve_chart.hpp"
#include "charts/rank_chart.hpp"
#include "charts/scatter_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "cli/chart_kind.hpp"
#include "questions/metals/metal_questions.hpp"
#include "questions/rank/rank_question.hpp"
#include "questions/workshop/rank_in_workshop.hpp"

namespace pourbook {
namespace {

struct CurveAsked {
    CurveRequest request;
    CurveLook look;
    Conditions conditions; // only the condition plays a part
};

const QuestionOf<CurveAsked>& curve_question() {
    using namespace input;
    using R = CurveAsked;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("curve", "a property against temperature");
        q.add(
            needed(by_place(words("property", "", "resistivity"))), [](R & r) -> auto& { return r.request.property; });
        q.add(
            needed(by_place(many(metal("metal", "one or more metals")))),
            [](R & r) -> auto& { return r.request.metals; });
        q.add(
            flag("log", "logarithmic upward axis"), [](R & r) -> auto& { return r.look.log; });
        q.add(
            flag("celsius", "temperatures in degC"), [](R & r) -> auto& { return r.look.celsius; });
        q.add_one(conditions_question(), "condition", &R::conditions);
        return q;
    }();
    return question;
}

Result<Drawing> draw_curve(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    Result<CurveAsked> asked = curve_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    asked->request.condition = asked->conditions.condition;
    const Result<CurveResult> result = curve(catalogue, asked->request);
    if (!result) return result.problem();
    asked->look.units = units;
    const CurveChart made = curve_chart(catalogue, *result, asked->look);
    if (made.lines.empty()) return Problem{Problem::Kind::no_value, made.notes.front(), 0};
    return drawing_of(made);
}

struct ScatterAsked {
    std::string along, up;
    std::vector<std::string> metals, where;
    Conditions conditions;
};

const QuestionOf<ScatterAsked>& scatter_question() {
    using namespace input;
    using R = ScatterAsked;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("scatter", "one property against another, a point per metal");
        q.add(needed(by_place(words("property", "along", "density"))), &R::along);
        q.add(needed(by_place(words("other", "up", "conductivity"))), &R::up);
        q.add(by_place(many(metal("metal", "only these metals (default: all)"))), &R::metals);
        q.add(many(words("where", "a condition on the metals, instead of naming them; may be repeated",
                         "\"liquidus < 1100 degC\"")),
              &R::where);
        add_also(q);
        q.add_all(conditions_question(), &R::conditions);
        return q;
    }();
    return question;
}

Result<CompareResult> scattered(const Catalogue& catalogue, const ScatterAsked& asked) {
    if (!asked.metals.empty() && !asked.where.empty())
        return unreadable("--where: either metals by name, or those that meet a condition");
    CompareRequest request{asked.metals, {asked.along, asked.up}, asked.conditions};
    if (!asked.where.empty()) {
        const auto found = list_metals(catalogue, "", asked.where, asked.conditions);
        if (!found) return found.problem();
        for (const Metal* m : *found) request.metals.push_back(m->slug);
        if (found->empty()) return Problem{Problem::Kind::no_value, "--where: no metal meets the conditions", 0};
    }
    return compare(catalogue, request);
}

Result<Drawing> draw_scatter(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<ScatterAsked> asked = scatter_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    const Result<CompareResult> result = scattered(catalogue, *asked);
    if (!result) return result.problem();
    const Result<PointChart> made = scatter_chart(catalogue, *result, units, {});
    if (!made) return made.problem();
    if (made->points.empty()) return Problem{Problem::Kind::no_value, "no metal has both values", 0};
    return drawing_of(*made);
}

Result<Drawing> draw_ranking(const WorkshopData& own, const Stated& stated, const Catalogue& catalogue,
                             UnitSystem units) {
    const Result<RankRequest> request = rank_question().read(stated, catalogue);
    if (!request) return request.problem();
    const Result<RankedFrom> from = ranked_from(own, catalogue, *request);
    if (!from) return from.problem();
    const Result<RankResult> result = rank(from->in(catalogue), from->request);
    if (!result) return result.problem();
    if (result->ranked.empty())
        return Problem{Problem::Kind::no_value, "no metal can be ranked: see `pourbook rank`", 0};
    return drawing_of(rank_chart(from->in(catalogue), *result, units, {}));
}

Result<Drawing> draw_two_goals(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<TradeoffRequest> request = tradeoff_question().read(stated, catalogue);
    if (!request) return request.problem();
    const Result<TradeoffResult> result = tradeoff(catalogue, *request);
    if (!result) return result.problem();
    if (result->points.empty())
        return Problem{Problem::Kind::no_value, "no metal can be ranked by both goals: see `pourbook tradeoff`", 0};
    return drawing_of(tradeoff_chart(catalogue, *result, units, {}));
}

} // namespace

void chart_kind(Context& context, CLI::App* chart, const QuestionTable& question, const DrawingOf& scene) {
    const auto stated = std::make_shared<Stated>(question);
    const auto picture = std::make_shared<PictureWords>();
    CLI::App* c = context.command(chart, question.name, question.meaning);
    with_fields(context, c, *stated);
    with_picture_words(c, *picture);
    c->callback([&context, stated, picture, scene] {
        context.answer = [&context, stated, picture, scene](const Catalogue& catalogue) {
            const Result<UnitSystem> units = units_from(context.units);
            if (!units) return context.failed(units.problem());
            const Result<Drawing> drawing = scene(with_usual(context, catalogue, *stated), catalogue, *units);
            return drawing ? answer_picture(context, catalogue, *picture, *drawing) : context.failed(drawing.problem());
        };
    });
}

void declare_chart(Context& context) {
    CLI::App* chart = context.app.add_subcommand(
        "chart", "a picture of a curve, ranking, fall, diagram or other answer, with its sources");
    chart->require_subcommand(1);
    chart_kind(context, chart, curve_question(), draw_curve);
    chart_kind(context, chart, scatter_question(), draw_scatter);
    chart_kind(context, chart, rank_question(), [&context](const Stated& s, const Catalogue& c, UnitSystem units) {
        return draw_ranking(context.own, s, c, units);
    });
    chart_kind(context, chart, tradeoff_question(), draw_two_goals);
    declare_fall_charts(context, chart);
    declare_motion_charts(context, chart);
    declare_mixture_charts(context, chart);
}

} // namespace pourbook
