#include "cli/terminal_text.hpp"

#include "core/workshop/signs.hpp"

#include <algorithm>

namespace pourbook {
namespace {

/// Length of "ESC [ 1 m", which sets a colour or weight and nothing else; 0 where there is none.
std::size_t colour_length(std::string_view text) {
    if (!text.starts_with("\x1B[")) return 0;
    const std::size_t end = text.find_first_not_of("0123456789;", 2);
    return end < text.size() && text[end] == 'm' ? end + 1 : 0;
}

} // namespace

std::string for_terminal(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        std::size_t length = colour_length(text);
        const bool colour = length > 0;
        if (!colour) length = utf8_length(text);
        const std::string_view sign = text.substr(0, std::max<std::size_t>(length, 1));
        out += length == 0 || (!colour && is_control(sign)) ? std::string_view("\uFFFD") : sign;
        text.remove_prefix(sign.size());
    }
    return out;
}

} // namespace pourbook
