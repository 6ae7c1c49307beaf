#include "gui/state/window_words.hpp"

#include "answers/writers/page.hpp"

#include <cctype>
#include <string_view>

namespace pourbook {
namespace {

void take_out(std::string& words, const std::string& part) {
    for (std::size_t at = words.find(part); at != std::string::npos; at = words.find(part, at))
        words.erase(at, part.size());
}

/// A command in quotes: here a button or a view does it.
void take_out_commands(std::string& words) {
    constexpr std::string_view begin = " with `pourbook ";
    for (std::size_t at = words.find(begin); at != std::string::npos; at = words.find(begin, at)) {
        const std::size_t end = words.find('`', at + begin.size());
        if (end == std::string::npos) return;
        words.erase(at, end + 1 - at);
    }
}

bool is_letter(char c) {
    return std::islower(static_cast<unsigned char>(c)) != 0;
}

/// Two strokes at the beginning of a word, and letters behind them.
std::size_t next_option(const std::string& words, std::size_t from) {
    for (std::size_t at = words.find("--", from); at != std::string::npos; at = words.find("--", at + 1)) {
        const bool begins = at == 0 || !(is_letter(words[at - 1]) || words[at - 1] == '-');
        if (begins && at + 2 < words.size() && is_letter(words[at + 2])) return at;
    }
    return std::string::npos;
}

void name_fields(std::string& words) {
    for (std::size_t at = next_option(words, 0); at != std::string::npos; at = next_option(words, at)) {
        words.erase(at, 2);
        for (std::size_t i = at; i < words.size() && (is_letter(words[i]) || words[i] == '-'); ++i)
            if (words[i] == '-') words[i] = ' ';
    }
}

} // namespace

std::string in_window(const std::string& words) {
    std::string shown = in_print(words);
    if (shown.find("--") == std::string::npos) return shown;
    take_out(shown, " Handbook metal: --as handbook.");
    take_out(shown, "; handbook metal: --as handbook");
    take_out(shown, ": --magnet-at for another temperature");
    take_out_commands(shown);
    name_fields(shown);
    return shown;
}

} // namespace pourbook
