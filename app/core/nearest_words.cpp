#include "core/nearest_words.hpp"

#include <algorithm>
#include <cctype>

namespace pourbook {
namespace {

std::string letters_of(const std::string& word) {
    std::string out;
    for (const char c : word)
        if (c != '-' && c != '_' && c != ' ') out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

std::vector<std::string> word_parts(const std::string& word) {
    std::vector<std::string> out(1);
    for (const char c : word) {
        if (c == '-' || c == '_' || c == ' ')
            out.emplace_back();
        else
            out.back() += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    std::sort(out.begin(), out.end());
    return out;
}

std::size_t allowed(std::size_t length) {
    return length <= 3 ? 1 : length <= 5 ? 2 : length / 3 + 1;
}

/// How far off, in tenths of a letter; a large number where it is no likeness.
std::size_t tenths_off(const std::string& word, const std::string& known) {
    constexpr std::size_t none = 100000;
    const std::string a = letters_of(word), b = letters_of(known);
    if (a.empty() || b.empty()) return none;
    std::size_t best = none;
    const std::size_t distance = edit_distance(a, b);
    if (distance <= allowed(std::min(a.size(), b.size()))) best = 10 * distance;
    const std::vector<std::string> own = word_parts(word), theirs = word_parts(known);
    if (own == theirs) return 1;
    if (a.size() >= 3 && b.starts_with(a)) best = std::min<std::size_t>(best, 12 + b.size() - a.size());
    for (const std::string& part : theirs)
        for (const std::string& typed : own)
            if (typed.size() >= 4 && part.size() >= 4 && edit_distance(typed, part) <= (typed.size() > 5 ? 1U : 0U))
                best = std::min<std::size_t>(best, 20 + b.size());
    return best;
}

} // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            row[j] = std::min({last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1), last[j] + 1, row[j - 1] + 1});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
        }
        std::swap(before, last);
        std::swap(last, row);
    }
    return last.back();
}

std::vector<std::string> nearest_words(const std::string& word, const std::vector<std::string>& known) {
    std::vector<std::pair<std::size_t, std::string>> near;
    for (const std::string& one : known)
        if (const std::size_t off = tenths_off(word, one); off < 100000) near.emplace_back(off, one);
    std::stable_sort(near.begin(), near.end(), [](const auto& x, const auto& y) { return x.first < y.first; });
    std::vector<std::string> out;
    for (const auto& [off, one] : near)
        if (out.size() < 3 && off <= 3 * near.front().first + 10) out.push_back(one);
    return out;
}

std::string did_you_mean(const std::string& word, const std::vector<std::string>& known) {
    const std::vector<std::string> near = nearest_words(word, known);
    std::string out;
    for (std::size_t i = 0; i < near.size(); ++i)
        out += (i == 0 ? ": did you mean " : i + 1 == near.size() ? " or " : ", ") + near[i];
    return out.empty() ? out : out + "?";
}

} // namespace pourbook
