#include "charts/place_text.hpp"

#include <algorithm>
#include <array>
#include <sstream>

namespace pourbook {

bool clings(const std::string& before, const std::string& word) {
    static constexpr std::array units = {"mm", "cm", "m", "g", "kg", "s", "min", "h", "K", "N", "T", "J", "W", "kW"};
    if (before.empty() || word.empty()) return false;
    if (before == "±" || before == "~") return true;
    if (before.back() < '0' || before.back() > '9') return false;
    const std::string bare = word.substr(0, word.find_last_not_of(",.;:)") + 1);
    const auto begins = [&](const char* sign) { return bare.starts_with(sign); };
    return begins("%") || begins("°") || begins("±") || begins("µ") || bare.find('/') != std::string::npos ||
           std::find(units.begin(), units.end(), bare) != units.end();
}

std::vector<std::string> wrapped(const std::string& text, double width, TextStyle style, const TextMeasure& measure) {
    std::vector<std::string> lines;
    std::istringstream words(text);
    const auto add = [&](const std::string& piece) {
        const std::string longer = lines.empty() ? piece : lines.back() + " " + piece;
        if (!lines.empty() && measure.width(longer, style) <= width)
            lines.back() = longer;
        else
            lines.push_back(piece);
    };
    std::string piece, last;
    for (std::string word; words >> word; last = word) {
        const bool kept = clings(last, word) && measure.width(piece + " " + word, style) <= width;
        if (!kept && !piece.empty()) add(piece);
        piece = kept ? piece + " " + word : word;
    }
    if (!piece.empty()) add(piece);
    return lines;
}

std::string shortened(const std::string& text, double width, TextStyle style, const TextMeasure& measure) {
    if (measure.width(text, style) <= width) return text;
    std::string cut = text;
    while (!cut.empty() && measure.width(cut + "…", style) > width) {
        while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0) == 0x80) cut.pop_back();
        if (!cut.empty()) cut.pop_back();
    }
    return cut + "…";
}

std::vector<std::string> fitted_lines(const std::string& text, double width, std::size_t most, TextStyle style,
                                      const TextMeasure& measure) {
    if (measure.width(text, style) <= width) return {text};
    std::vector<std::string> lines = wrapped(text, width, style, measure);
    for (; lines.size() > std::max<std::size_t>(most, 1); lines.pop_back())
        lines[lines.size() - 2] += " " + lines.back();
    for (std::string& line : lines) line = shortened(line, width, style, measure);
    return lines;
}

std::vector<Text> text_lines(const Text& text, double width, const TextMeasure& measure) {
    std::vector<Text> out;
    for (const std::string& line : wrapped(text.text, width, text.style, measure)) {
        Text part = text;
        part.text = shortened(line, width, text.style, measure);
        part.at.y += line_height(text.style) * static_cast<double>(out.size());
        out.push_back(part);
    }
    return out;
}

Box text_box(const Text& text, const TextMeasure& measure) {
    const double width = measure.width(text.text, text.style), height = line_height(text.style);
    const double shift = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? width / 2 : width;
    return {text.at.x - shift, text.at.y - height / 2, width, height};
}

std::optional<Text> FreePlaces::first_free(const std::vector<Text>& offered, const TextMeasure& measure,
                                           double before) {
    for (const Text& text : offered) {
        Box box = text_box(text, measure);
        box.x -= before;
        box.width += before;
        const bool inside =
            box.x >= room_.x && box.right() <= room_.right() && box.y >= room_.y && box.bottom() <= room_.bottom();
        if (!inside || std::any_of(taken_.begin(), taken_.end(), [&](const Box& b) { return b.overlaps(box); }))
            continue;
        take(box);
        return text;
    }
    return std::nullopt;
}

} // namespace pourbook
