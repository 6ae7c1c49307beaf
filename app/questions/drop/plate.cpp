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

class Passing {
public:
    Passing(const PlateRequest& request, PlateResult result) : request_(request), out_(std::move(result)) {}

    std::optional<Problem> place(const PlateRequest& r) {
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

    Result<PlateResult> run(const Speeds& speeds) {
        const eddy::DropInputs& i = out_.setup.inputs;
        out_.moment_A_m2 = eddy::moment_A_m2(magnet(), i.remanence_T.value, i.recoil_permeability);
        out_.magnet_mass_kg = i.mass_kg.value > 0 ? i.mass_kg.value : i.density_kg_m3.value * magnet().volume_m3();
        out_.recession_speed_m_s = 2 / (eddy::vacuum_permeability * out_.plate.conductivity_S_m() * out_.thickness_m);
        const Result<eddy::PlateForce> first = force(speeds.from);
        if (!first) return first.problem();
        const int steps = speeds.to > speeds.from ? request_.steps : 1;
        for (int s = 0; s < steps; ++s)
            out_.points.push_back(
                point(speeds.from * std::pow(speeds.to / speeds.from, steps > 1 ? s / (steps - 1.0) : 0)));
        find_peak();
        say_what_is_left_out();
        return std::move(out_);
    }

private:
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
    const Result<Speeds> speeds = speeds_from(request.speed);
    if (!speeds) return speeds.problem();
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
    return passing.run(*speeds);
}

} // namespace pourbook
