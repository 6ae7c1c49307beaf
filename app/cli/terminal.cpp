#include "cli/terminal.hpp"

#include <algorithm>
#include <cstdlib>
#include <vector>

namespace pourbook {
namespace {

bool continues(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

/// Bytes of the first `count` characters.
std::size_t bytes_of(const std::string& text, std::size_t count) {
    std::size_t at = 0;
    while (at < text.size() && (count > 0 || continues(text[at]))) {
        if (!continues(text[at])) --count;
        ++at;
    }
    return at;
}

std::size_t characters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

void add_folded(std::string& out, std::string line, std::size_t columns) {
    const std::size_t inset = std::min(line.find_first_not_of(' '), columns / 3);
    while (characters(line) > columns) {
        const std::size_t most = bytes_of(line, columns);
        std::size_t end = line.rfind(' ', most);
        const std::size_t first = line.find_first_not_of(' ');
        if (end == std::string::npos || end <= first) end = most;
        out += line.substr(0, line.find_last_not_of(' ', end - 1) + 1) + "\n";
        const std::size_t rest = line.find_first_not_of(' ', end);
        line = rest == std::string::npos ? "" : std::string(inset + 4, ' ') + line.substr(rest);
    }
    out += line;
}

constexpr const char *bold = "\x1B[1m", *yellow = "\x1B[33m", *undressed = "\x1B[0m";

std::size_t inset_of(const std::string& line) {
    return std::min(line.find_first_not_of(' '), line.size());
}

bool is_head(const std::string& before, const std::string& line, const std::string& next) {
    return before.empty() && !line.empty() && line[0] != ' ' &&
           (next.starts_with("  ") || line.find("  ") != std::string::npos);
}

bool begins_caution(const std::string& line) {
    const std::string words = line.substr(inset_of(line));
    return words.starts_with("Caution: ") || words.starts_with("! ") || words == "Beware";
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> out;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        out.push_back(text.substr(from, end - from));
        from = end + 1;
    }
    return out;
}

} // namespace

std::string dressed(const std::string& text) {
    const std::vector<std::string> lines = lines_of(text);
    std::string out;
    bool caution = false;
    std::size_t inset = 0; // of the caution
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::string& line = lines[i];
        const bool begins = begins_caution(line);
        caution = begins || (caution && !line.empty() && inset_of(line) > inset);
        if (begins) inset = inset_of(line);
        const bool head = i > 0 && is_head(lines[i - 1], line, i + 1 < lines.size() ? lines[i + 1] : "");
        const char* look = caution ? yellow : head ? bold : nullptr;
        out += (look ? look + line + undressed : line) + "\n";
    }
    return out;
}

std::size_t terminal_columns() {
    const char* text = std::getenv("COLUMNS");
    const long columns = text ? std::strtol(text, nullptr, 10) : 0;
    return columns > 0 ? std::max<std::size_t>(40, static_cast<std::size_t>(std::min(columns, 10000L))) : 0;
}

std::string folded(const std::string& text, std::size_t columns) {
    if (columns == 0) return text;
    std::string out;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        add_folded(out, text.substr(from, end - from), columns);
        if (end < text.size()) out += '\n';
        from = end + 1;
    }
    return out;
}

} // namespace pourbook
