// Pictures of one fall: the field round the magnet, and what happens against time.
#include "charts/field_chart.hpp"
#include "charts/time_chart.hpp"
#include "cli/chart_kind.hpp"
#include "questions/drop/falls_question.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct FieldAsked {
    FallsAsked falls;
    std::optional<double> speed_m_s;
};

const QuestionOf<FieldAsked>& field_question() {
    static const QuestionOf<FieldAsked> question = [] {
        QuestionOf<FieldAsked> q("field", "the flux round a falling magnet and the currents in the wall, in section");
        add_falls(q, [](FieldAsked& a) -> FallsAsked& { return a.falls; }, {"at", "condition", "purity-rrr"});
        q.place("Speed");
        QuestionField speed = input::quantity("speed", "m/s", "of the magnet", "0.1m/s", "its terminal speed");
        speed.low = 0;
        q.add(std::move(speed), &FieldAsked::speed_m_s);
        return q;
    }();
    return question;
}

struct TimeAsked {
    FallsAsked falls;
    std::string of = "speed";
    std::optional<double> turns, diameter_m, at_m;
};

const std::vector<std::string> time_names = {"speed", "place", "load", "voltage"};

const QuestionOf<TimeAsked>& time_question() {
    using namespace input;
    static const QuestionOf<TimeAsked> question = [] {
        QuestionOf<TimeAsked> q("fall", "a fall against time: speed, place, load on the scale, voltage of a coil");
        std::vector<std::string> also = {"at", "condition", "purity-rrr"};
        also.insert(also.end(), wall_fields().begin(), wall_fields().end());
        add_falls(
            q, [](TimeAsked& a) -> FallsAsked& { return a.falls; }, also);
        q.place("Shown");
        q.add(choice("of", "what is drawn against time", time_names), &TimeAsked::of);
        q.place("Pickup coil");
        const auto above = [](QuestionField field, double high) {
            field.low = 1e-6;
            field.high = high;
            return field;
        };
        q.add(above(quantity("coil-turns", "1", "turns of the coil", "200"), 1e6), &TimeAsked::turns);
        q.add(above(quantity("coil-diameter", "m", "its mean diameter", "20mm"), 2), &TimeAsked::diameter_m);
        q.add(above(quantity("coil-at", "m", "its place below the upper end of the tube", "150mm"), 100),
              &TimeAsked::at_m);
        return q;
    }();
    return question;
}

Result<Drawing> draw_field(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<FieldAsked> asked = field_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    if (asked->falls.metals.size() > 1) return unreadable("--metal: one metal a picture of the field");
    const auto drops = falls(catalogue, asked->falls);
    if (!drops) return drops.problem();
    const Result<FieldChart> chart = field_chart(catalogue, drops->front(), asked->speed_m_s, units);
    if (!chart) return chart.problem();
    return drawing_of(*chart);
}

Result<Drawing> draw_time(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<TimeAsked> asked = time_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    const auto drops = falls(catalogue, asked->falls);
    if (!drops) return drops.problem();
    std::optional<PickupCoil> coil;
    if (asked->turns && asked->diameter_m && asked->at_m)
        coil = PickupCoil{*asked->turns, *asked->diameter_m, *asked->at_m};
    const auto at = std::find(time_names.begin(), time_names.end(), asked->of);
    const Result<CurveChart> chart =
        time_chart(catalogue, *drops, static_cast<TimeOf>(at - time_names.begin()), coil, units);
    if (!chart) return chart.problem();
    return drawing_of(*chart);
}

} // namespace

void declare_motion_charts(Context& context, CLI::App* chart) {
    chart_kind(context, chart, field_question(), draw_field);
    chart_kind(context, chart, time_question(), draw_time);
}

} // namespace pourbook
