#include "core/workshop/signs.hpp"

#include <algorithm>
#include <array>

namespace pourbook {

std::size_t utf8_length(std::string_view text) {
    const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0; };
    const auto tail = [&](std::size_t i) { return (byte(i) & 0xC0) == 0x80; };
    const auto a = byte(0);
    if (a < 0x80) return text.empty() ? 0 : 1;
    if (a >= 0xC2 && a <= 0xDF) return tail(1) ? 2 : 0;
    if (a >= 0xE0 && a <= 0xEF) {
        const bool sound = (a != 0xE0 || byte(1) >= 0xA0) && (a != 0xED || byte(1) < 0xA0);
        return sound && tail(1) && tail(2) ? 3 : 0;
    }
    const bool sound = a >= 0xF0 && a <= 0xF4 && (a != 0xF0 || byte(1) >= 0x90) && (a != 0xF4 || byte(1) < 0x90);
    return sound && tail(1) && tail(2) && tail(3) ? 4 : 0;
}

bool is_control(std::string_view sign) {
    const auto first = static_cast<unsigned char>(sign[0]);
    if (sign.size() == 1) return (first < 0x20 && first != '\n' && first != '\t') || first == 0x7F;
    if (sign.size() == 2) return (first == 0xC2 && static_cast<unsigned char>(sign[1]) < 0xA0) || sign == "\u061C";
    static constexpr std::array turns = {"\u200E", "\u200F", "\u202A", "\u202B", "\u202C", "\u202D",
                                         "\u202E", "\u2066", "\u2067", "\u2068", "\u2069"};
    return std::find(turns.begin(), turns.end(), sign) != turns.end();
}

} // namespace pourbook
