#include "questions/drop/plate.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

using eddy::Uncertain;

Result<Uncertain> length_of(const std::string& text, const char* option) {
    Result<Uncertain> value = uncertain_from(text, base_dimension(Dimension::metre), option);
    if (value && !(value->value > 0))
        return unreadable(std::string(option) + " '" + text + "': a length above zero is expected");
    if (value && value->spread == 0) *value = {value->value, caliper_m, true};
    return value;
}

struct Speeds {
    double from = 0, to = 0;
};

Result<Speeds> speeds_from(const std::string& text) {
    static const Dimension dimension = parse_unit("m/s")->dimension;
    const std::size_t colon = text.find(':');
    const Result<double> from = parse_si(text.substr(0, colon), dimension, "a speed");
    const Result<double> to =
        colon == std::string::npos ? from : parse_si(text.substr(colon + 1), dimension, "a speed");
    for (const Result<double>* end : {&from, &to})
        if (!*end) return unreadable("--speed '" + text + "': " + end->problem().text);
    if (!(*from > 0 && *to >= *from) || *to > 1e5)
        return unreadable("--speed '" + text +
                          "': a speed such as 0.5m/s, or a range such as 0.1m/s:10m/s, is expected");
    return Speeds{*from, *to};
}

std::optional<Problem> motion_fault(const PlateRequest& r) {
    if (int(r.slope_deg.has_value()) + int(r.pendulum_m.has_value()) + int(r.drop_from_m.has_value()) > 1)
        return unreadable("--slope, --pendulum and --drop-from are three questions: ask one");
    if (r.friction && !r.slope_deg) return unreadable("--friction goes with --slope");
    if (r.swing_m && !r.pendulum_m) return unreadable("--swing goes with --pendulum");
    if (r.swing_m && *r.swing_m > 0.3 * *r.pendulum_m)
        return unreadable("--swing: up to 0.3 of the pendulum's length, so that the height stays the same");
    if (r.block_diameter_m && !r.drop_from_m) return unreadable("--block goes with --drop-from");
    return std::nullopt;
}

class Passing {
public:
    Passing(const PlateRequest& request, PlateResult result) : request_(request), out_(std::move(result)) {}

    std::optional<Problem> place(const PlateRequest& r) {
        if (r.drop_from_m) return place_above_block(r);
        if (r.height.empty() == r.gap.empty())
            return unreadable("the magnet's place is needed once: --height (of its centre) or --gap (of "
                              "its lower face)");
        const Result<Uncertain> distance = r.gap.empty() ? length_of(r.height, "--height") : length_of(r.gap, "--gap");
        if (!distance) return distance.problem();
        const Result<Uncertain> thickness = length_of(r.thickness, "--thickness");
        if (!thickness) return thickness.problem();
        if (r.axis != "normal" && r.axis != "along")
            return unreadable("--axis '" + r.axis + "': normal or along is expected");
        axis_ = r.axis == "normal" ? eddy::MomentAxis::normal : eddy::MomentAxis::along_motion;
        out_.standing = axis_ == eddy::MomentAxis::normal;
        place_ = *distance;
        thickness_ = *thickness;
        out_.height_m = place_.value + (r.height.empty() ? eddy::half_extent_m(magnet(), axis_) : 0);
        out_.thickness_m = thickness_.value;
        return std::nullopt;
    }

    Result<PlateResult> run(std::optional<Speeds> stated) {
        const eddy::DropInputs& i = out_.setup.inputs;
        out_.moment_A_m2 = eddy::moment_A_m2(magnet(), i.remanence_T.value, i.recoil_permeability);
        out_.magnet_mass_kg = i.mass_kg.value > 0 ? i.mass_kg.value : i.density_kg_m3.value * magnet().volume_m3();
        out_.recession_speed_m_s = 2 / (eddy::vacuum_permeability * out_.plate.conductivity_S_m() * out_.thickness_m);
        if (request_.drop_from_m) {
            out_.motion = fallen();
            return std::move(out_);
        }
        const Result<eddy::PlateForce> first = force(stated ? stated->from : out_.recession_speed_m_s);
        if (!first) return first.problem();
        find_peak();
        if (request_.slope_deg) out_.motion = slid();
        if (request_.pendulum_m) out_.motion = swung();
        const Speeds speeds = stated ? *stated : usual_speed();
        const int steps = speeds.to > speeds.from ? request_.steps : 1;
        for (int s = 0; s < steps; ++s)
            out_.points.push_back(
                point(speeds.from * std::pow(speeds.to / speeds.from, steps > 1 ? s / (steps - 1.0) : 0)));
        say_what_is_left_out();
        return std::move(out_);
    }

private:
    std::optional<Problem> place_above_block(const PlateRequest& r) {
        if (!r.height.empty() || !r.gap.empty() || !r.speed.empty())
            return unreadable("--drop-from needs no --height, --gap or --speed: it says where the fall begins");
        const Result<Uncertain> thickness = length_of(r.thickness, "--thickness");
        if (!thickness) return thickness.problem();
        thickness_ = *thickness;
        out_.thickness_m = thickness_.value;
        out_.height_m = *r.drop_from_m + eddy::half_extent_m(magnet(), axis_);
        return std::nullopt;
    }

    /// The value with its interval: with the drag of its two ends.
    template <class Value> static void told(PlateMotion& m, double spread, Value value) {
        const double by = std::exp(normal_90 * spread), ends[] = {value(1 / by), value(by)};
        m.value = value(1);
        m.low90 = std::min(ends[0], ends[1]);
        m.high90 = std::max(ends[0], ends[1]);
    }

    eddy::ForceAtSpeed scaled(double factor) const {
        return [this, factor](double speed) {
            const eddy::PlateForce f = *force(speed);
            return eddy::PlateForce{factor * f.drag_N, factor * f.lift_N};
        };
    }

    PlateMotion slid() const {
        PlateMotion m;
        m.kind = "slide";
        const double slope = *request_.slope_deg * std::numbers::pi / 180;
        const auto at = [&](double factor) {
            return eddy::slide(scaled(factor), out_.peak_drag_speed_m_s, out_.magnet_mass_kg, slope,
                               request_.friction.value_or(0));
        };
        const eddy::Slide nominal = at(1);
        if (nominal.speed_m_s)
            told(m, relative_spread(*nominal.speed_m_s), [&](double f) { return at(f).speed_m_s.value_or(no_number); });
        else
            m.none = nominal.stays ? "friction holds it on this slope"
                                   : "it outruns the drag: the peak is below what the slope gives";
        return m;
    }

    PlateMotion swung() const {
        PlateMotion m;
        m.kind = "swing";
        const double amplitude = request_.swing_m.value_or(0.05 * *request_.pendulum_m);
        const auto at = [&](double factor) {
            return eddy::swing(scaled(factor), out_.magnet_mass_kg, *request_.pendulum_m, amplitude);
        };
        const eddy::Swing nominal = at(1);
        m.period_s = nominal.period_s;
        m.rest_s = nominal.rest_s;
        const double fastest = amplitude * 2 * std::numbers::pi / nominal.period_s;
        if (nominal.half_after)
            told(m, relative_spread(fastest), [&](double f) { return at(f).half_after.value_or(no_number); });
        else
            m.none = std::isfinite(nominal.rest_s) ? "it creeps to rest without swinging" : "it hardly loses anything";
        return m;
    }

    PlateMotion fallen() {
        const eddy::DropInputs& i = out_.setup.inputs;
        const eddy::Block block{request_.block_diameter_m.value_or(40 * out_.height_m) / 2, out_.thickness_m,
                                out_.plate.conductivity_S_m()};
        const auto at = [&](double factor) {
            return eddy::fall_on_block(magnet(), out_.moment_A_m2 * std::sqrt(factor), out_.magnet_mass_kg, block,
                                       *request_.drop_from_m);
        };
        PlateMotion m;
        m.kind = "fall";
        const double strength = i.remanence_T.standard() / i.remanence_T.value;
        told(m, std::hypot(out_.plate.log_uncertainty(), 2 * strength, 2 * i.moment_doubt.standard()),
             [&](double f) { return at(f).time_s; });
        const eddy::BlockFall nominal = at(1);
        m.free_fall_s = nominal.free_fall_s;
        m.touch_m_s = nominal.touch_m_s;
        out_.left_out.push_back("the magnet falls upright, its axis over the middle of the block" +
                                std::string(request_.block_diameter_m ? "" : ", which is wide") +
                                "; sizes stand as given in the interval");
        if (!nominal.slow)
            out_.left_out.push_back("the block's currents need " + significant(nominal.fading_s * 1000, 2) +
                                    " ms to fade, no short time beside the fall: they hold the magnet up at first, and "
                                    "the time told is only its order");
        return m;
    }

    /// Where none is stated: that of the motion.
    Speeds usual_speed() const {
        double v = out_.peak_drag_speed_m_s;
        if (out_.motion && out_.motion->kind == "slide" && std::isfinite(out_.motion->value)) v = out_.motion->value;
        if (out_.motion && out_.motion->kind == "swing")
            v = request_.swing_m.value_or(0.05 * *request_.pendulum_m) * 2 * std::numbers::pi / out_.motion->period_s;
        return {v, v};
    }

    eddy::Magnet magnet() const { return out_.setup.inputs.magnet(); }

    Result<eddy::PlateForce> force(double speed) const {
        return eddy::plate_force({out_.plate.conductivity_S_m(), out_.thickness_m}, magnet(), out_.moment_A_m2, axis_,
                                 out_.height_m, speed);
    }

    double drag(double speed) const { return force(speed)->drag_N; }

    PlatePoint point(double speed) {
        const eddy::PlateForce f = *force(speed);
        const double spread = relative_spread(speed);
        return {speed, f.drag_N, f.lift_N, f.drag_N * std::exp(-normal_90 * spread),
                f.drag_N * std::exp(normal_90 * spread)};
    }

    /// ln(drag) with changed inputs of the magnet, at a height or above a gap.
    double ln_drag(const eddy::DropInputs& i, double sigma, double place, double thickness, double speed) const {
        const eddy::Magnet m = i.magnet();
        const double height = place + (request_.height.empty() ? eddy::half_extent_m(m, axis_) : 0);
        const double moment = eddy::moment_A_m2(m, i.remanence_T.value, i.recoil_permeability);
        const auto f = eddy::plate_force({sigma, thickness}, m, moment, axis_, height, speed);
        return f ? std::log(f->drag_N) : no_number;
    }

    /// Standard uncertainty of ln(drag), to first order in every input: sizes by small changes of the force itself.
    double relative_spread(double speed) const {
        const eddy::DropInputs& i = out_.setup.inputs;
        const double sigma = out_.plate.conductivity_S_m(), place = place_.value, w = thickness_.value;
        constexpr double step = 1e-3;
        const auto slope = [&](auto at) { return (at(1 + step) - at(1 - step)) / (2 * step); };
        double sum =
            slope([&](double f) { return ln_drag(i, sigma * f, place, w, speed); }) * out_.plate.log_uncertainty();
        const auto add = [&](double by, const Uncertain& input) {
            if (input.value > 0) sum = std::hypot(sum, by * input.standard() / input.value);
        };
        add(slope([&](double f) { return ln_drag(i, sigma, place * f, w, speed); }), place_);
        add(slope([&](double f) { return ln_drag(i, sigma, place, w * f, speed); }), thickness_);
        add(2, i.remanence_T);
        add(2, i.moment_doubt);
        std::vector<Uncertain eddy::DropInputs::*> sizes = {&eddy::DropInputs::outer_radius_m};
        if (i.shape != eddy::Shape::sphere) sizes.push_back(&eddy::DropInputs::length_m);
        if (i.shape == eddy::Shape::ring) sizes.push_back(&eddy::DropInputs::inner_radius_m);
        for (const auto size : sizes)
            add(slope([&](double f) {
                    eddy::DropInputs moved = i;
                    (moved.*size).value *= f;
                    return ln_drag(moved, sigma, place, w, speed);
                }),
                i.*size);
        return sum;
    }

    /// Golden section over the logarithm of the speed: the drag rises to one peak and falls.
    void find_peak() {
        const double scale = std::log(1 / (eddy::vacuum_permeability * out_.plate.conductivity_S_m() *
                                           std::min(out_.thickness_m, out_.height_m)));
        double low = scale - 6, high = scale + 10;
        constexpr double ratio = 1 / std::numbers::phi;
        for (int i = 0; i < 60; ++i) {
            const double a = high - ratio * (high - low), b = low + ratio * (high - low);
            (drag(std::exp(a)) < drag(std::exp(b)) ? low : high) = drag(std::exp(a)) < drag(std::exp(b)) ? a : b;
        }
        out_.peak_drag_speed_m_s = std::exp((low + high) / 2);
        out_.peak_drag_N = drag(out_.peak_drag_speed_m_s);
    }

    void say_what_is_left_out() {
        out_.left_out.push_back("edges: the plate reaches further than some ten heights, " +
                                significant(10 * out_.height_m * 1000, 2) + " mm, to every side");
        if (!out_.standing && out_.setup.inputs.shape != eddy::Shape::sphere) {
            const double half_diagonal = std::hypot(magnet().outer_radius_m, magnet().half_length_m());
            out_.left_out.push_back("the magnet's size: taken as a dipole, of the order of " +
                                    significant(100 * std::pow(half_diagonal / out_.height_m, 2), 1) + " % here");
        }
        out_.left_out.push_back(
            "swinging and sliding: the drag at each moment is that of steady motion at that height; "
            "tilt and the way in over the edge are not included");
    }

    const PlateRequest& request_;
    PlateResult out_;
    eddy::MomentAxis axis_ = eddy::MomentAxis::normal;
    Uncertain place_, thickness_; // height or gap, as given
};

} // namespace

Result<PlateResult> plate(const Catalogue& catalogue, const PlateRequest& request) {
    const bool moves = request.slope_deg || request.pendulum_m || request.drop_from_m;
    if (auto fault = motion_fault(request)) return *fault;
    std::optional<Speeds> stated;
    if (!request.speed.empty() || !moves) {
        const Result<Speeds> speeds = speeds_from(request.speed);
        if (!speeds) return speeds.problem();
        stated = *speeds;
    }
    if (request.steps < 2 || request.steps > 200) return unreadable("--steps: from 2 to 200");
    PlateResult out;
    Result<DropSetup> setup = magnet_setup(catalogue, request.magnet);
    if (!setup) return setup.problem();
    Result<TubeMetal> metal = tube_metal(catalogue, request.metal, request.resistivity, request.conditions);
    if (!metal) return metal.problem();
    if (setup->inputs.stack.pieces > 1 || setup->inputs.shape == eddy::Shape::cube)
        return Problem{Problem::Kind::refused,
                       "a stack or a cube past a plate is not computed: give one ball, cylinder or ring", 0};
    out.setup = std::move(*setup);
    out.plate = std::move(*metal);
    out.conditions = request.conditions;
    Passing passing(request, std::move(out));
    if (auto problem = passing.place(request)) return *problem;
    return passing.run(stated);
}

} // namespace pourbook
