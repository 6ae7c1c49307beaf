#include "answers/writers/csv_cell.hpp"

namespace pourbook {

std::string defused(const std::string& text) {
    const std::size_t sign = text.find_first_not_of('\'');
    const bool runs = sign != std::string::npos && std::string("=+-@\t\r").find(text[sign]) != std::string::npos;
    return runs ? "'" + text : text;
}

std::string csv_cell(const std::string& text, const char* parting) {
    const std::string safe = defused(text);
    const bool plain = safe.find_first_of(parting) == std::string::npos &&
                       (safe.empty() || (safe.front() != ' ' && safe.back() != ' '));
    if (plain) return safe;
    std::string out = "\"";
    for (const char c : safe) out += c == '"' ? "\"\"" : std::string(1, c);
    return out + "\"";
}

} // namespace pourbook
