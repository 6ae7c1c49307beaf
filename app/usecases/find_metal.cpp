#include "usecases/find_metal.hpp"

#include <algorithm>
#include <sstream>

namespace pourbook {

Result<const Metal*> find_metal(const Catalogue& catalogue, const std::string& word) {
    if (const Metal* metal = catalogue.metal(word)) return metal;
    std::string text = "unknown metal '" + word + "'";
    const auto near = catalogue.nearest_metals(word);
    for (std::size_t i = 0; i < near.size(); ++i) text += (i == 0 ? ": did you mean " : ", ") + near[i];
    text += near.empty() ? ": see `pourbook metals`" : "?";
    return Problem{Problem::Kind::unknown, text, 0};
}

Result<const Property*> find_property(const Catalogue& catalogue, const std::string& id) {
    if (const Property* property = catalogue.property(id)) return property;
    std::string text = "unknown property '" + id + "': one of";
    for (const Property& p : catalogue.properties) text += " " + p.id;
    return Problem{Problem::Kind::unknown, text, 0};
}

std::vector<const Metal*> search_metals(const Catalogue& catalogue, const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::string> words;
    for (std::string word; stream >> word;) words.push_back(as_slug(word));
    std::vector<const Metal*> found;
    for (const Metal& m : catalogue.metals) {
        std::string all = m.slug + " " + as_slug(m.name) + " " + m.family;
        for (const auto& alias : m.aliases) all += " " + as_slug(alias);
        for (const auto& designation : m.designations) all += " " + as_slug(designation);
        if (std::all_of(words.begin(), words.end(),
                        [&](const std::string& w) { return all.find(w) != std::string::npos; }))
            found.push_back(&m);
    }
    const auto named = std::find(found.begin(), found.end(), catalogue.metal(text));
    if (named != found.end()) std::rotate(found.begin(), named, named + 1);
    return found;
}

} // namespace pourbook
