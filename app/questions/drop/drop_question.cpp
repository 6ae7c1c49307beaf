#include "questions/drop/drop_question.hpp"

#include "core/quantity/unit.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr const char* against_prefix = "against-";

/// What may differ in a second set-up.
constexpr const char* differing[] = {"tube", "metal",       "resistivity", "magnet", "grade",
                                     "br",   "magnet-mass", "slits",       "at",     "condition"};

QuestionField another(const QuestionField& field) {
    QuestionField other = field;
    other.name = against_prefix + field.name;
    other.meaning = "another " + field.name + " in the second set-up";
    other.absent = "the same";
    other.place = "A second set-up, the same but for";
    other.required = false;
    return other;
}

template <class R> void add_setup(QuestionOf<R>& q, SetupWords R::*setup, bool required) {
    for (const QuestionField& field : setup_question().fields) {
        q.add_one(setup_question(), field.name, setup);
        q.last().required = required && (field.name == "magnet" || field.name == "tube");
    }
}

void add_wall(QuestionOf<DropRequest>& q) {
    using namespace input;
    const auto of = [](std::string WallWords::*word) {
        return [word](DropRequest& r) -> std::string& { return r.wall.*word; };
    };
    q.place("Wall of several parts");
    q.add(words("liner", "a lining in the bore: ID:OD, or its thickness where it fits closely", "0.5mm", "none"),
          of(&WallWords::liner));
    q.add(metal("liner-metal", "metal of the lining, or its resistivity"), of(&WallWords::liner_metal));
    q.add(words("sleeve", "a sleeve over the tube: ID:OD, or its thickness where it fits closely", "15mm:18mm", "none"),
          of(&WallWords::sleeve));
    q.add(metal("sleeve-metal", "metal of the sleeve, or its resistivity"), of(&WallWords::sleeve_metal));
    q.add(words("below", "a tube joined to the lower end: ID:OD:LENGTH", "13mm:15mm:500mm", "none"),
          of(&WallWords::below));
    q.add(metal("below-metal", "metal of the tube below, or its resistivity"), of(&WallWords::below_metal));
    q.add(words("lower-end", "of a tapered tube: ID:OD at its lower end", "12mm:15mm", "as the upper end"),
          of(&WallWords::lower_end));
    q.place("Slits and seams");
    q.add(words("slit-width", "width of the slits, or of the joint that a seam fills", "0.5mm", "a narrow cut"),
          of(&WallWords::slit_width));
    q.add(words("slit-length", "how far the slits reach from the mouth", "200mm", "the whole length"),
          of(&WallWords::slit_length));
    q.add(words("seam",
                "what fills the slits, as solder or brazing: its resistivity, or the resistance measured across a "
                "stretch of it",
                "15uohm.cm or 0.2uohm@100mm", "open"),
          of(&WallWords::seam));
}

Result<double> positive(const std::string& text, const Dimension& dimension, const char* what) {
    const Result<double> value = parse_si(text, dimension, what);
    if (!value) return value;
    if (*value > 0) return value;
    return unreadable(std::string(what) + " above zero is expected");
}

/// "4.2, 4.3 s": all above zero.
Fault read_positive(const std::string& text, const Dimension& dimension, const char* what, std::vector<double>& to) {
    const Result<std::vector<double>> values = parse_si_list(text, dimension, what);
    if (!values) return values.problem();
    for (const double value : *values)
        if (!(value > 0)) return unreadable(std::string(what) + " above zero is expected");
    to.insert(to.end(), values->begin(), values->end());
    return {};
}

const Dimension second = base_dimension(Dimension::second), per_second = second.power(-1);

void add_timings(QuestionOf<InferAsked>& q) {
    using namespace input;
    q.place("Measured");
    q.add_read(many(words("time", "measured fall times, separated by commas", "4.2s,4.3s")),
               [](InferAsked& a, const std::string& text, const Catalogue&) {
                   return read_positive(text, second, "a time", a.request.times_s);
               });
    q.add(quantity("time-uncertainty", "s", "standard uncertainty of one timing", "0.1s", "from their spread"),
          &InferAsked::time_reading_s);
    q.add_read(many(words("frames", "the fall in frames of a film, separated by commas", "252,250")),
               [](InferAsked& a, const std::string& text, const Catalogue&) {
                   return read_positive(text, {}, "a number of frames", a.frames);
               });
    q.add_read(words("frame-rate", "frames a second", "60"),
               [](InferAsked& a, const std::string& text, const Catalogue&) {
                   const Result<double> rate = positive(text, per_second, "a frame rate");
                   if (!rate) return Fault(rate.problem());
                   a.frame_rate_1_s = *rate;
                   return Fault();
               });
}

} // namespace

const QuestionOf<DropRequest>& drop_question() {
    using namespace input;
    using R = DropRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("drop", "how long a magnet falls through a tube, or through either of two");
        add_setup(q, &R::setup, true);
        add_wall(q);
        q.place("Metal of the tube");
        add_tube_metal(q);
        q.place("Intervals");
        add_samples(q, "1000", 10, 100000);
        q.add_all(conditions_question(), &R::conditions);
        as_casting(q, &R::conditions);
        for (const char* name : differing)
            q.add_way(another(q.fields[q.at(name)]),
                      [way = q.way(q.at(name))](R&, const QuestionField& f, const Texts& texts, const Catalogue& c) {
                          R unused;
                          return way(unused, f, texts, c);
                      });
        return q;
    }();
    return question;
}

const std::vector<std::string>& wall_fields() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> out;
        for (const QuestionField& f : drop_question().fields)
            if (f.place.starts_with("Wall of") || f.place.starts_with("Slits and")) out.push_back(f.name);
        return out;
    }();
    return names;
}

bool states_two(const Stated& stated) {
    for (const char* name : differing)
        if (stated.states(std::string(against_prefix) + name)) return true;
    return false;
}

Result<AgainstRequest> against_request_from(const Stated& stated, const Catalogue& catalogue) {
    const Result<DropRequest> first = drop_question().read(stated, catalogue);
    if (!first) return first.problem();
    const auto other = [&](const std::string& name) { return stated.text(against_prefix + name); };
    Stated different = stated;
    if (!other("metal").empty() || !other("resistivity").empty()) different.set("metal", "").set("resistivity", "");
    if (!other("grade").empty() || !other("br").empty())
        different.set("grade", "").set("br", "").set("surface-field", "");
    if (!other("magnet").empty()) different.set("magnet-mass", ""); // another magnet, another mass
    for (const char* name : differing)
        if (!other(name).empty()) different.set(name, other(name));
    const Result<DropRequest> second_one = drop_question().read(different, catalogue);
    if (!second_one) return second_one.problem();
    return AgainstRequest{*first, *second_one};
}

const QuestionOf<DragRequest>& drag_question() {
    using namespace input;
    using R = DragRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("drag", "the drag on a magnet at a speed in a long tube");
        const QuestionOf<DropRequest>& drop = drop_question();
        for (const QuestionField& field : drop.fields)
            if (!field.name.starts_with(against_prefix) &&
                std::find(wall_fields().begin(), wall_fields().end(), field.name) == wall_fields().end() &&
                field.name != "seed" && field.name != "samples" && field.name != "price-form" &&
                field.name != "release" && field.name != "stop")
                q.add_one(drop, field.name, &R::drop);
        as_casting(
            q, [](R & r) -> auto& { return r.drop.conditions; });
        q.place("Speed");
        QuestionField speed = needed(quantity("speed", "m/s", "speed of the magnet", "0.1m/s"));
        speed.low = 0;
        q.add(std::move(speed), &R::speed_m_s);
        return q;
    }();
    return question;
}

const QuestionOf<InferAsked>& infer_question() {
    using namespace input;
    using R = InferAsked;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("infer",
                        "the conductivity that a measured fall or resistance means, and the metals that have it");
        const auto request = [](R& a) -> InferRequest& { return a.request; };
        for (const QuestionField& field : setup_question().fields) {
            q.add_one(
                setup_question(), field.name, [](R & a) -> auto& { return a.request.setup; });
            q.last().required = field.name == "tube";
        }
        add_timings(q);
        q.add(
            words("resistance", "four-wire resistance along the tube", "0.36mohm"),
            [](R & a) -> auto& { return a.request.resistance; });
        q.add(
            words("span", "distance between the voltage taps", "0.9m"), [](R & a) -> auto& { return a.request.span; });
        q.add(
            words("tube-mass", "mass of the tube, for its porosity", "620g"),
            [](R & a) -> auto& { return a.request.tube_mass; });
        q.add(
            commas(metal("likely", "metals that it most likely is, separated by commas")),
            [](R & a) -> auto& { return a.request.likely; });
        q.place("Reference tube");
        q.add(
            words("reference-tube", "a tube of known conductivity that the same magnet fell through, to calibrate it",
                  "13.2mm:15.2mm:1m"),
            [](R & a) -> auto& { return a.request.reference_tube; });
        q.add_read(many(words("reference-time", "falls through it, separated by commas", "14.1s,14.3s")),
                   [](R& a, const std::string& text, const Catalogue&) {
                       return read_positive(text, second, "a time", a.request.reference_times_s);
                   });
        q.add(
            words("reference-resistivity", "its resistivity or conductivity", "58+-0.3MS/m"),
            [](R & a) -> auto& { return a.request.reference_resistivity; });
        q.place("Intervals");
        q.add(
            whole_number("samples", "samples for the interval", "2000", 100, 100000), [=](R & a) -> auto& {
                return request(a).samples;
            });
        q.add(
            whole_number("seed", "seed of the samples", "1", 0, 1e18), [=](R & a) -> auto& { return request(a).seed; });
        add_also(q);
        for (const char* name : {"at", "condition"}) // the others change nothing here
            q.add_one(
                conditions_question(), name, [](R & a) -> auto& { return a.request.conditions; });
        for (const char* name : {"as", "feedstock", "porosity", "treatment"})
            q.add_one(
                conditions_question(), name, [](R & a) -> auto& { return a.request.conditions; });
        as_casting(
            q, [](R & a) -> auto& { return a.request.conditions; });
        return q;
    }();
    return question;
}

Result<InferRequest> infer_request_from(const Stated& stated, const Catalogue& catalogue) {
    Result<InferAsked> asked = infer_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    InferRequest& request = asked->request;
    if (!asked->frames.empty() && !asked->frame_rate_1_s) return unreadable("--frames needs --frame-rate, such as 60");
    for (const double count : asked->frames) {
        request.times_s.push_back(count / *asked->frame_rate_1_s);
        request.time_reading_s = 1 / (*asked->frame_rate_1_s * std::sqrt(6.0)); // half a frame at either end
    }
    if (asked->time_reading_s) request.time_reading_s = *asked->time_reading_s;
    return request;
}

const QuestionOf<SweepAsked>& sweep_question() {
    using namespace input;
    using R = SweepAsked;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("sweep", "fall time against wall, bore, length, temperature or budget");
        for (const QuestionField& field : setup_question().fields) {
            q.add_one(
                setup_question(), field.name, [](R & a) -> auto& { return a.request.setup; });
            q.last().required = field.name == "magnet" || field.name == "tube";
        }
        q.place("Metal of the tube");
        q.add(
            commas(metal("metal", "metals of the tube, separated by commas")),
            [](R & a) -> auto& { return a.request.metals; });
        q.add(
            words("resistivity", "a resistivity or conductivity instead", "101%IACS"),
            [](R & a) -> auto& { return a.request.resistivity; });
        q.place("Sweep");
        QuestionField over = needed(many(words("over", "wall|bore|length|temperature|budget FROM:TO", "wall 1mm:5mm")));
        over.exactly = 2;
        q.add(std::move(over), &R::over);
        q.add(
            words("hold", "over bore or length, the same amount of metal: mass or budget", "mass", "the wall is held"),
            &R::hold);
        QuestionField mass = quantity("mass", "kg", "the amount with --hold mass", "300g", "that of the stated tube");
        mass.low = 1e-9;
        q.add(std::move(mass), &R::mass_kg);
        q.add_read(words("budget", "the amount with --hold budget", "20USD"),
                   [](R& a, const std::string& text, const Catalogue& catalogue) {
                       const Result<double> usd = usd_from(catalogue, text, "--budget");
                       if (!usd) return Fault(usd.problem());
                       a.budget_usd = *usd;
                       return *usd > 0 ? Fault() : Fault(unreadable("money above zero is expected"));
                   });
        q.add(
            whole_number("steps", "number of values", "15", 2, 1000), [](R & a) -> auto& { return a.request.steps; });
        q.add(
            whole_number("samples", "samples for the intervals", "200", 20, 20000),
            [](R & a) -> auto& { return a.request.samples; });
        q.add(
            whole_number("seed", "seed of the samples", "1", 0, 1e18), [](R & a) -> auto& { return a.request.seed; });
        q.add_all(
            conditions_question(), [](R & a) -> auto& { return a.request.conditions; });
        as_casting(
            q, [](R & a) -> auto& { return a.request.conditions; });
        return q;
    }();
    return question;
}

Result<SweepRequest> sweep_request_from(const Stated& stated, const Catalogue& catalogue) {
    const Result<SweepAsked> asked = sweep_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    if (asked->over.size() != 2) return unreadable("--over: wall, bore, length, temperature or budget, and FROM:TO");
    SweepRequest request = asked->request;
    if (!asked->hold.empty() && asked->hold != "mass" && asked->hold != "budget")
        return unreadable("--hold '" + asked->hold + "': mass or budget is expected");
    if (!asked->hold.empty()) request.hold = asked->hold == "mass" ? SweepHold::mass : SweepHold::budget;
    if ((asked->mass_kg && request.hold != SweepHold::mass) || (asked->budget_usd && request.hold != SweepHold::budget))
        return unreadable("--mass goes with --hold mass, --budget with --hold budget");
    request.held_si = asked->mass_kg ? asked->mass_kg : asked->budget_usd;
    return with_range(catalogue, request, asked->over[0], asked->over[1]);
}

const QuestionOf<PlateRequest>& plate_question() {
    using namespace input;
    using R = PlateRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("plate", "drag and lift on a magnet sliding or swinging past a plate");
        for (const QuestionField& field : magnet_question().fields) {
            q.add_one(magnet_question(), field.name, &R::magnet);
            q.last().required = field.name == "magnet";
        }
        q.add(choice("axis", "of the magnet: normal to the plate, or along the motion", {"normal", "along"}), &R::axis);
        q.place("Plate");
        add_tube_metal(q);
        q.add(needed(words("thickness", "of the plate", "5mm")), &R::thickness);
        q.add(words("height", "of the magnet's centre above the plate", "12mm"), &R::height);
        q.add(words("gap", "instead: of its lower face", "2mm"), &R::gap);
        q.place("Speed");
        q.add(words("speed", "one, or FROM:TO for a table", "0.5m/s", "that of the motion asked for"), &R::speed);
        q.add(whole_number("steps", "rows of the table", "15", 2, 1000), &R::steps);
        q.place("Motion");
        const auto within = [](QuestionField field, double low, double high) {
            field.low = low;
            field.high = high;
            return field;
        };
        q.add(within(quantity("slope", "1", "degrees of a slope that the magnet slides down", "30"), 0.1, 90),
              &R::slope_deg);
        q.add(within(quantity("friction", "1", "coefficient of friction on the slope", "0.2", "none"), 0, 2),
              &R::friction);
        q.add(within(quantity("pendulum", "m", "length of a pendulum whose bob is the magnet", "1m"), 0.01, 100),
              &R::pendulum_m);
        q.add(within(quantity("swing", "m", "first amplitude of the pendulum", "50mm", "a twentieth of its length"),
                     1e-4, 30),
              &R::swing_m);
        q.add(
            within(quantity("drop-from", "m", "height of the lower face from which it falls face-on", "20mm"), 1e-4, 2),
            &R::drop_from_m);
        q.add(within(quantity("block", "m", "diameter of the block it falls on", "80mm", "wide"), 1e-3, 10),
              &R::block_diameter_m);
        for (const char* name : {"at", "condition", "purity-rrr"})
            q.add_one(conditions_question(), name, &R::conditions);
        for (const char* name : state_fields) q.add_one(conditions_question(), name, &R::conditions);
        as_casting(q, &R::conditions);
        return q;
    }();
    return question;
}

const QuestionOf<MeasureRequest>& measure_question() {
    using namespace input;
    using R = MeasureRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("measure",
                        "the magnet's moment and the tube's conductivity from readings; without readings the "
                        "sheet to fill in");
        for (const char* name : {"magnet", "magnet-mass"}) q.add_one(setup_question(), name, &R::setup);
        q.place("Magnet");
        q.add(many(words("field", "field on the axis at a distance from the pole face; repeat it", "0.21T@5mm")),
              &R::fields);
        q.add(words("meter-error", "of the field meter's scale", "2%"), &R::meter_error);
        q.add_one(setup_question(), "tube", &R::setup);
        q.place("Tube");
        q.add(words("current", "through the tube", "5A"), &R::current);
        q.add(words("voltage", "between the taps", "1.8mV"), &R::voltage);
        q.add(words("reversed-voltage", "the same with the current reversed", "-1.8mV"), &R::reversed_voltage);
        q.add(words("span", "distance between the taps", "0.9m"), &R::span);
        return q;
    }();
    return question;
}

} // namespace pourbook
