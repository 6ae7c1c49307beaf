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

std::vector<std::string> words_of(const std::string& joined) {
    std::vector<std::string> out;
    std::istringstream in(joined);
    for (std::string word; std::getline(in, word, '-');)
        if (!word.empty()) out.push_back(word);
    return out;
}

/// "LM 25" and "LM25" are one name.
std::string unbroken(std::string name) {
    std::erase(name, '-');
    return name;
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
    if (typed.empty()) return Nearness::begins_its_words;
    Nearness nearest = Nearness::none;
    std::vector<std::string> all = words_of(plain(thing.rest));
    for (std::size_t i = 0; i < thing.names.size(); ++i) {
        const std::string name = plain(thing.names[i]);
        if (name == typed || unbroken(name) == unbroken(typed)) return Nearness::is_a_name;
        if (name.starts_with(typed))
            nearest = std::min(nearest, i == 0 ? Nearness::begins_its_name : Nearness::begins_another_name);
        for (std::string& word : words_of(name)) all.push_back(std::move(word));
    }
    if (nearest != Nearness::none) return nearest;
    bool whole = true;
    for (const std::string& word : words_of(typed)) {
        const auto begins = [&](const std::string& of) { return of.starts_with(word); };
        if (std::none_of(all.begin(), all.end(), begins)) return Nearness::none;
        whole = whole && std::find(all.begin(), all.end(), word) != all.end();
    }
    return whole ? Nearness::holds_its_words : Nearness::begins_its_words;
}

} // namespace pourbook
