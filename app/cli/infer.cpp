#include "cli/context.hpp"

#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"
#include "cli/setup_words.hpp"
#include "core/quantity/unit.hpp"

#include <cmath>

namespace pourbook {
namespace {

struct InferWords {
    InferRequest request;
    std::vector<std::string> times, frames;
    std::string time_uncertainty, frame_rate;
};

Result<double> time_from(const std::string& text, const std::string& option) {
    const Result<double> t = parse_si(text, base_dimension(Dimension::second), "a time");
    if (t && *t > 0) return t;
    return unreadable(option + " '" + text + "': " + (t ? "a time such as 4.2s is expected" : t.problem().text));
}

/// All above zero, from one or more lists.
Result<std::vector<double>> listed(const std::vector<std::string>& lists, const Dimension& dimension,
                                   const std::string& option, const std::string& what) {
    std::vector<double> out;
    for (const std::string& text : lists) {
        const Result<std::vector<double>> read = parse_si_list(text, dimension, what);
        if (!read) return unreadable(option + " '" + text + "': " + read.problem().text);
        for (const double one : *read)
            if (!(one > 0)) return unreadable(option + " '" + text + "': " + what + " above zero is expected");
        out.insert(out.end(), read->begin(), read->end());
    }
    return out;
}

/// Frame counts at a frame rate: each end is uncertain by half a frame.
Result<InferRequest> with_frames(InferRequest request, const InferWords& words) {
    static const Dimension rate = base_dimension(Dimension::second).power(-1);
    if (words.frame_rate.empty()) return unreadable("--frames needs --frame-rate, such as 60");
    const Result<double> per_second = parse_si(words.frame_rate, rate, "a frame rate");
    if (!per_second || !(*per_second > 0))
        return unreadable("--frame-rate '" + words.frame_rate + "': frames a second are expected, such as 60");
    const Result<std::vector<double>> counts = listed(words.frames, {}, "--frames", "a number of frames");
    if (!counts) return counts.problem();
    for (const double count : *counts) request.times_s.push_back(count / *per_second);
    request.time_reading_s = 1 / (*per_second * std::sqrt(6.0));
    return request;
}

Result<InferRequest> request_from(const InferWords& words) {
    InferRequest request = words.request;
    const Result<std::vector<double>> times =
        listed(words.times, base_dimension(Dimension::second), "--time", "a time such as 4.2s");
    if (!times) return times.problem();
    request.times_s = *times;
    if (!words.frames.empty()) {
        Result<InferRequest> with = with_frames(std::move(request), words);
        if (!with) return with;
        request = std::move(*with);
    }
    if (words.time_uncertainty.empty()) return request;
    const Result<double> reading = time_from(words.time_uncertainty, "--time-uncertainty");
    if (!reading) return reading.problem();
    request.time_reading_s = *reading;
    return request;
}

} // namespace

void declare_infer(Context& context) {
    auto words = std::make_shared<InferWords>();
    InferRequest& request = words->request;
    CLI::App* c = context.command(
        "infer", "the conductivity that a measured fall or resistance means, and the metals that have it");
    with_setup(c, request.setup);
    c->get_option("--magnet")->required(false);
    c->add_option("--time", words->times, "measured fall times, separated by commas");
    c->add_option("--time-uncertainty", words->time_uncertainty, "standard uncertainty of one timing, such as 0.1s");
    c->add_option("--frames", words->frames, "the fall in frames of a film, separated by commas");
    c->add_option("--frame-rate", words->frame_rate, "frames a second");
    c->add_option("--resistance", request.resistance, "four-wire resistance along the tube, such as 0.36mohm");
    c->add_option("--span", request.span, "distance between the voltage taps, such as 0.9m");
    c->add_option("--tube-mass", request.tube_mass, "mass of the tube, for its porosity");
    c->add_option("--samples", request.samples, "samples for the interval (default 2000)")
        ->check(CLI::Range(100, 100000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    context.with_mixes_too(c);
    context.with_conditions(c);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                Result<InferRequest> asked = request_from(*words);
                if (!asked) return context.failed(asked.problem());
                asked->conditions = conditions;
                return context.answered(
                    infer(catalogue, *asked), [&](const InferResult& r) { return json_of(r, catalogue); },
                    [&](const InferResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
