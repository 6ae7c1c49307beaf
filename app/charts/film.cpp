#include "charts/film.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double before_s = 0.5, after_s = 1; // of the film
constexpr double short_side_pt = 360;         // letters of 4 % of the picture's short side

} // namespace

Film::Film(const Race& race, const FilmLook& look, const TextMeasure& measure)
    : race_(race), look_(look), measure_(measure) {
    const double seconds = before_s + race.end_s() * look.slow + after_s;
    frames_ = static_cast<std::size_t>(std::min(std::ceil(seconds * look.rate_1_s), 1e9)) + 2;
}

double Film::time_s(std::size_t frame) const {
    return (static_cast<double>(frame) / look_.rate_1_s - before_s) / look_.slow;
}

double Film::scale() const {
    return std::min(look_.width, look_.height) / short_side_pt;
}

Scene Film::scene(std::size_t frame) const {
    Canvas canvas{look_.width / scale(), look_.height / scale(), palette(look_.dark), measure_, look_.date,
                  look_.source_name};
    canvas.marks = &look_.marks;
    return frame + 1 == frames_ ? race_sources(race_, canvas) : race_scene(race_, time_s(frame), look_.slow, canvas);
}

} // namespace pourbook
