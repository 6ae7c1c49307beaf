#include "charts/drop_charts.hpp"
#include "cli/chart_kind.hpp"
#include "questions/drop/drop_question.hpp"
#include "questions/workshop/measured_falls.hpp"

namespace pourbook {
namespace {

constexpr const char* points_of_a_picture = "25";

struct FallAsked {
    DropRequest request;
    std::vector<std::string> metals;
};

/// A set-up in several metals.
QuestionOf<FallAsked> falls_question(const char* name, const char* meaning, std::vector<std::string> conditions) {
    QuestionOf<FallAsked> q(name, meaning);
    for (const char* field : {"magnet", "grade", "br", "surface-field", "recoil-permeability", "magnet-mass",
                              "magnet-at", "tube", "slits", "off-axis", "release", "stop"})
        q.add_one(drop_question(), field, &FallAsked::request);
    q.place("Metal of the tube");
    q.add(input::needed(input::commas(input::metal("metal", "metals of the tube, separated by commas"))),
          &FallAsked::metals);
    for (const std::string& field : conditions) q.add_one(drop_question(), field, &FallAsked::request);
    return q;
}

const QuestionOf<FallAsked>& bars_question() {
    static const QuestionOf<FallAsked> question =
        falls_question("drop", "how long a magnet falls through a tube of each metal, with the trials made of it",
                       {"at", "condition", "purity-rrr"});
    return question;
}

const QuestionOf<FallAsked>& curve_of_drag_question() {
    static const QuestionOf<FallAsked> question =
        falls_question("drag", "the drag on a magnet against its speed", {"at", "condition", "purity-rrr"});
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
        return q;
    }();
    return question;
}

/// The falls in all metals; an error where no metal has one.
Result<std::vector<DropOfMetal>> falls(const Catalogue& catalogue, const FallAsked& asked) {
    Result<std::vector<DropOfMetal>> drops = drop_in_each(catalogue, asked.request, asked.metals);
    if (!drops) return drops;
    for (const DropOfMetal& d : *drops)
        if (d.result) return drops;
    return Problem{Problem::Kind::no_value, drops->front().metal->name + ": " + drops->front().result.problem().text,
                   0};
}

Result<std::vector<Trial>> trials_of(Workshop* workshop) {
    if (!workshop) return std::vector<Trial>();
    const Result<std::vector<Entry>> entries = workshop->entries(known_kind("trial"));
    if (!entries) return entries.problem();
    return trials_from(*entries);
}

Result<Drawing> draw_bars(Workshop* workshop, const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<FallAsked> asked = bars_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    const auto drops = falls(catalogue, *asked);
    if (!drops) return drops.problem();
    const auto trials = trials_of(workshop);
    if (!trials) return trials.problem();
    const auto measured = measured_falls(catalogue, *trials, asked->request.setup, asked->request.conditions);
    if (!measured) return measured.problem();
    return drawing_of(fall_chart(catalogue, *drops, units, *measured));
}

Result<Drawing> draw_drag(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<FallAsked> asked = curve_of_drag_question().read(stated, catalogue);
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
