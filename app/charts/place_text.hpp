// Where texts go so that they stay readable: lines broken to a width, labels pushed apart, boxes that don't overlap.
#pragma once

#include "charts/scene.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// Words into lines no wider than `width`; a single word that is wider stands alone.
std::vector<std::string> wrapped(const std::string& text, double width, TextStyle style, const TextMeasure& measure);

/// The text with its end replaced by "…" where it is wider than `width`.
std::string shortened(const std::string& text, double width, TextStyle style, const TextMeasure& measure);

/// Positions moved as little as needed to lie `gap` apart inside low..high; the order is kept.
std::vector<double> spread_out(std::vector<double> wanted, double gap, double low, double high);

/// Box of a text drawn at a spot.
Box text_box(const Text& text, const TextMeasure& measure);

/// Remembers what is taken and gives the first of the offered places that is free and inside the room.
class FreePlaces {
public:
    explicit FreePlaces(Box room) : room_(room) {}
    void take(const Box& box) { taken_.push_back(box); }
    std::optional<Text> first_free(const std::vector<Text>& offered, const TextMeasure& measure);

private:
    Box room_;
    std::vector<Box> taken_;
};

} // namespace pourbook
