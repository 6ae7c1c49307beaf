#include "questions/metals/find_metal.hpp"

#include "core/materials/metal_family.hpp"
#include "core/nearest_words.hpp"
#include "questions/metals/find_words.hpp"

namespace pourbook {

Result<const Metal*> find_metal(const Catalogue& catalogue, const std::string& word) {
    if (const Metal* metal = catalogue.metal(word)) return metal;
    if (const Metal* metal = usual_grade(catalogue, word)) return metal;
    std::string text = "unknown metal '" + word + "'";
    const auto near = catalogue.nearest_metals(word);
    for (std::size_t i = 0; i < near.size(); ++i) text += (i == 0 ? ": did you mean " : ", ") + near[i];
    text += near.empty() ? ": see `pourbook metals`" : "?";
    return Problem{Problem::Kind::unknown, text, 0};
}

Result<const Property*> find_property(const Catalogue& catalogue, const std::string& id) {
    if (const Property* property = catalogue.property(id)) return property;
    std::vector<std::string> ids;
    for (const Property& p : catalogue.properties) ids.push_back(p.id);
    const std::string near = did_you_mean(id, ids);
    std::string text = "unknown property '" + id + "'" + (near.empty() ? ": one of" : near);
    if (near.empty())
        for (const std::string& known : ids) text += " " + known;
    return Problem{Problem::Kind::unknown, text, 0};
}

std::vector<const Metal*> search_metals(const Catalogue& catalogue, const std::string& text) {
    return nearest_first(catalogue.metals, text, [](const Metal& m) {
        Findable f{{m.slug, m.name}, m.family};
        if (m.is_element() && m.composition.size() == 1) f.names.push_back(m.composition.front().element);
        f.names.insert(f.names.end(), m.aliases.begin(), m.aliases.end());
        f.names.insert(f.names.end(), m.designations.begin(), m.designations.end());
        return f;
    });
}

} // namespace pourbook
