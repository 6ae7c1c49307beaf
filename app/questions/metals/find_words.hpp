// How words a person types find things by their names: the one order that lists, the command finder and `--find` share.
#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace pourbook {

/// ASCII letters as small ones.
std::string lower_case(std::string text);

/// Whether every word stands somewhere in the text, small and capital letters alike.
bool holds_every_word(const std::string& text, const std::string& words);

/// The names of a thing in the order in which they count, and all that may be searched besides.
struct Findable {
    std::vector<std::string> names; // the first is the one it is listed by
    std::string rest;
};

/// How near the words come, nearest first; `none` is not found. Blanks, hyphens and capitals make no difference. A word
/// typed must begin a word of the names (or of the rest): it never matches inside one.
enum class Nearness { is_a_name, begins_its_name, begins_another_name, holds_its_words, begins_its_words, none };
Nearness nearness(const Findable& thing, const std::string& words);

/// The things found, nearest first, else in their order; all for words that are blank.
template <class T, class AsFindable>
std::vector<const T*> nearest_first(const std::vector<T>& things, const std::string& words, AsFindable findable) {
    std::vector<std::pair<Nearness, const T*>> found;
    for (const T& thing : things)
        if (const Nearness n = nearness(findable(thing), words); n != Nearness::none) found.emplace_back(n, &thing);
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<const T*> out;
    for (const auto& [near, thing] : found) out.push_back(thing);
    return out;
}

} // namespace pourbook
