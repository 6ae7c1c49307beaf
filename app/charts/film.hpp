// A film as its frames: a race before the release, through the fall, and a little after; then its sources.
#pragma once

#include "charts/race.hpp"

namespace pourbook {

struct FilmLook {
    int width = 1920, height = 1080; // pixels
    double rate_1_s = 60, slow = 1;
    bool dark = true;
    std::string date = {};                                           // of the sources
    std::function<std::string(const std::string&)> source_name = {}; // of a key
    Marks marks = {};                                                // the person's
};

class Film {
public:
    /// What is pointed to outlives it.
    Film(const Race& race, const FilmLook& look, const TextMeasure& measure);

    /// All, the last being the sources.
    std::size_t frames() const { return frames_; }
    /// After the release, in the world's time; the last frame has none.
    double time_s(std::size_t frame) const;
    /// In points; times scale() it is in pixels.
    Scene scene(std::size_t frame) const;
    double scale() const;

private:
    const Race& race_;
    FilmLook look_;
    const TextMeasure& measure_;
    std::size_t frames_ = 0;
};

} // namespace pourbook
