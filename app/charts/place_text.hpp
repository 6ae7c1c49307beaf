// Where texts go so that they stay readable: lines broken to a width, labels in free places.
#pragma once

#include "charts/scene.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// Whether a line may not break between these two: a figure keeps its unit and what is given or taken, "20 °C",
/// "16.4 ± 0.8 MS/m".
bool clings(const std::string& before, const std::string& word);

/// Words into lines no wider than `width`; a single word that is wider stands alone.
std::vector<std::string> wrapped(const std::string& text, double width, TextStyle style, const TextMeasure& measure);

/// The same in at most `most` lines, what is too much shortened.
std::vector<std::string> fitted_lines(const std::string& text, double width, std::size_t most, TextStyle style,
                                      const TextMeasure& measure);

/// The text with its end replaced by "…" where it is wider than `width`.
std::string shortened(const std::string& text, double width, TextStyle style, const TextMeasure& measure);

/// The text in lines no wider than `width`, the first where the text stands, the others below.
std::vector<Text> text_lines(const Text& text, double width, const TextMeasure& measure);

/// Box of a text drawn at a spot.
Box text_box(const Text& text, const TextMeasure& measure);

/// Remembers what is taken and gives the first of the offered places that is free and inside the room.
class FreePlaces {
public:
    explicit FreePlaces(Box room) : room_(room) {}
    void take(const Box& box) { taken_.push_back(box); }
    /// `before`: room wanted in front of the text, for a mark.
    std::optional<Text> first_free(const std::vector<Text>& offered, const TextMeasure& measure, double before = 0);

private:
    Box room_;
    std::vector<Box> taken_;
};

} // namespace pourbook
