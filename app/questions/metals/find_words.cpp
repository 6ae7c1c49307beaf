#include "questions/metals/find_words.hpp"

#include "core/materials/catalogue.hpp"

#include <cctype>
#include <sstream>

namespace pourbook {
namespace {

/// Words joined by single hyphens, so that blanks, hyphens and letters' case make no difference.
std::string plain(const std::string& words) {
    std::istringstream in(words);
    std::string out;
    for (std::string word; in >> word;) out += (out.empty() ? "" : "-") + as_slug(word);
    return out;
}

} // namespace

std::string lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

bool holds_every_word(const std::string& text, const std::string& words) {
    const std::string in = lower_case(text);
    std::istringstream stream(lower_case(words));
    for (std::string word; stream >> word;)
        if (in.find(word) == std::string::npos) return false;
    return true;
}

Nearness nearness(const Findable& thing, const std::string& words) {
    const std::string typed = plain(words);
    if (typed.empty()) return Nearness::within;
    Nearness nearest = Nearness::none;
    std::string all = lower_case(thing.rest);
    for (std::size_t i = 0; i < thing.names.size(); ++i) {
        const std::string name = plain(thing.names[i]);
        if (name == typed) return Nearness::is_a_name;
        if (name.starts_with(typed))
            nearest = std::min(nearest, i == 0 ? Nearness::begins_its_name : Nearness::begins_another_name);
        all += " " + name + " " + lower_case(thing.names[i]);
    }
    return nearest == Nearness::none && holds_every_word(all, words) ? Nearness::within : nearest;
}

} // namespace pourbook
