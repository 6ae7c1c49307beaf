#include "questions/metals/find_metal.hpp"

#include "core/materials/metal_family.hpp"
#include "core/nearest_words.hpp"
#include "questions/metals/find_words.hpp"

namespace pourbook {
namespace {

std::vector<const KnownName*> known_as(const Catalogue& catalogue, const std::string& word) {
    std::vector<const KnownName*> out;
    for (const KnownName& n : catalogue.known_names)
        if (nearness({{n.name}, ""}, word) == Nearness::is_a_name) out.push_back(&n);
    return out;
}

std::string sentence(const KnownName& n) {
    return n.metal.empty() ? n.note : "near " + n.metal + " (" + n.note + ")";
}

} // namespace

Findable names_of(const Catalogue& catalogue, const Metal& m) {
    Findable f{{m.slug, m.name}, m.family};
    if (m.is_element() && m.composition.size() == 1) f.names.push_back(m.composition.front().element);
    f.names.insert(f.names.end(), m.aliases.begin(), m.aliases.end());
    f.names.insert(f.names.end(), m.designations.begin(), m.designations.end());
    for (const KnownName& n : catalogue.known_names)
        if (n.metal == m.slug) f.names.push_back(n.name);
    return f;
}

std::string not_kept(const Catalogue& catalogue, const std::string& word) {
    std::string text;
    for (const KnownName* n : known_as(catalogue, word))
        text += (text.empty() ? "'" + word + "' is known, not kept: " : "; or ") + sentence(*n);
    return text;
}

Result<const Metal*> find_metal(const Catalogue& catalogue, const std::string& word) {
    if (const Metal* metal = catalogue.metal(word)) return metal;
    if (const Metal* metal = usual_grade(catalogue, word)) return metal;
    if (const std::string known = not_kept(catalogue, word); !known.empty())
        return Problem{Problem::Kind::unknown, known, 0};
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
    return nearest_first(catalogue.metals, text, [&](const Metal& m) { return names_of(catalogue, m); });
}

} // namespace pourbook
