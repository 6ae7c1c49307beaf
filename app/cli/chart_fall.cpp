#include "charts/drop_charts.hpp"
#include "cli/chart_kind.hpp"
#include "questions/drop/falls_question.hpp"
#include "questions/workshop/measured_falls.hpp"

namespace pourbook {
namespace {

constexpr const char* points_of_a_picture = "25";

/// A set-up in several metals.
QuestionOf<FallsAsked> falls_question(const char* name, const char* meaning, const std::vector<std::string>& more) {
    QuestionOf<FallsAsked> q(name, meaning);
    std::vector<std::string> also = {"at", "condition", "purity-rrr"};
    also.insert(also.end(), more.begin(), more.end());
    add_falls(
        q, [](FallsAsked& a) -> FallsAsked& { return a; }, also);
    return q;
}

const QuestionOf<FallsAsked>& bars_question() {
    static const QuestionOf<FallsAsked> question = falls_question(
        "drop", "how long a magnet falls through a tube of each metal, with the trials made of it", wall_fields());
    return question;
}

const QuestionOf<FallsAsked>& curve_of_drag_question() {
    static const QuestionOf<FallsAsked> question = falls_question("drag", "the drag on a magnet against its speed", {});
    return question;
}

/// A sweep of as many values as a picture shows.
const QuestionOf<SweepAsked>& swept_question() {
    static const QuestionOf<SweepAsked> question = [] {
        QuestionOf<SweepAsked> q("sweep", sweep_question().meaning);
        for (const QuestionField& field : sweep_question().fields) {
            q.add_one(sweep_question(), field.name, [](SweepAsked& a) -> SweepAsked& { return a; });
            if (field.name == "steps") q.last().absent = points_of_a_picture;
        }
        as_casting(
            q, [](SweepAsked & a) -> auto& { return a.request.conditions; });
        return q;
    }();
    return question;
}

Result<std::vector<Trial>> trials_of(Workshop* workshop) {
    if (!workshop) return std::vector<Trial>();
    const Result<std::vector<Entry>> entries = workshop->entries(known_kind("trial"));
    if (!entries) return entries.problem();
    return trials_from(*entries);
}

Result<Drawing> draw_bars(Workshop* workshop, const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<FallsAsked> asked = bars_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    const auto drops = falls(catalogue, *asked);
    if (!drops) return drops.problem();
    const auto trials = trials_of(workshop);
    if (!trials) return trials.problem();
    if (asked->request.wall != WallWords{})
        return drawing_of(fall_chart(catalogue, *drops, units, {})); // no trial of it
    const auto measured = measured_falls(catalogue, *trials, asked->request.setup, asked->request.conditions);
    if (!measured) return measured.problem();
    return drawing_of(fall_chart(catalogue, *drops, units, *measured));
}

Result<Drawing> draw_drag(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<FallsAsked> asked = curve_of_drag_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    const auto drops = falls(catalogue, *asked);
    if (!drops) return drops.problem();
    return drawing_of(drag_chart(catalogue, *drops, units));
}

Result<Drawing> draw_sweep(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    Stated asked = stated;
    if (!asked.states("steps")) asked.set("steps", points_of_a_picture);
    const Result<SweepRequest> request = sweep_request_from(asked, catalogue);
    if (!request) return request.problem();
    const Result<SweepResult> result = sweep(catalogue, *request);
    if (!result) return result.problem();
    return drawing_of(sweep_chart(catalogue, *result, units));
}

} // namespace

void declare_fall_charts(Context& context, CLI::App* chart) {
    chart_kind(context, chart, bars_question(), [&context](const Stated& s, const Catalogue& c, UnitSystem units) {
        return draw_bars(context.workshop, s, c, units);
    });
    chart_kind(context, chart, curve_of_drag_question(), draw_drag);
    chart_kind(context, chart, swept_question(), draw_sweep);
}

} // namespace pourbook
