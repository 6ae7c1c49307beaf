#include "core/materials/catalogue.hpp"

#include "core/nearest_words.hpp"

#include <algorithm>
#include <cctype>
#include <functional>

namespace pourbook {
namespace {

constexpr std::size_t few_metals = 300; // of more, the figures are laid flat

template <class T>
const T* found(const std::vector<T>& items, const std::unordered_map<std::string, std::size_t>& at,
               const std::string& key) {
    const auto it = at.find(key);
    return it == at.end() ? nullptr : &items[it->second];
}

void append(std::string& line, const std::string& part, const char* joint) {
    if (part.empty()) return;
    if (!line.empty()) line += joint;
    line += part;
}

std::string figures_of(const std::string& text) {
    std::string out;
    for (char c : text)
        if (c >= '0' && c <= '9') out += c;
    return out;
}

} // namespace

std::string as_slug(const std::string& words) {
    std::string slug;
    for (char c : words) {
        const bool gap = c == ' ' || c == '_';
        slug += gap ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return slug;
}

double Metal::content_percent(const std::string& element) const {
    for (const Portion& p : composition)
        if (p.element == element) return p.wt_percent;
    return 0;
}

std::string Reference::full() const {
    std::string line = authors;
    append(line, title, authors.empty() ? "" : ", ");
    append(line, where, ", ");
    append(line, year, ", ");
    append(line, doi.empty() ? "" : "doi " + doi, ", ");
    append(line, address, ", ");
    return line;
}

void Catalogue::index() {
    index_names();
    price_at_.clear();
    for (std::size_t s = 0; s < price_sets.size(); ++s)
        for (std::size_t i = 0; i < price_sets[s].prices.size(); ++i)
            price_at_.emplace(price_sets[s].prices[i].metal, std::pair(s, i));
    flat_ = metals.size() > few_metals ? std::make_shared<const FlatFigures>(flat_figures(*this)) : nullptr;
}

void Catalogue::index_names() {
    metal_at_.clear();
    element_at_.clear();
    property_at_.clear();
    reference_at_.clear();
    flat_.reset();
    for (std::size_t i = 0; i < metals.size(); ++i) {
        const Metal& m = metals[i];
        metal_at_[m.slug] = i;
        if (m.is_element() && m.composition.size() == 1) element_at_[m.composition.front().element] = i;
    }
    for (std::size_t i = 0; i < metals.size(); ++i) {
        metal_at_.emplace(as_slug(metals[i].name), i);
        for (const auto& alias : metals[i].aliases) metal_at_.emplace(as_slug(alias), i);
        for (const auto& designation : metals[i].designations) metal_at_.emplace(as_slug(designation), i);
    }
    for (std::size_t i = 0; i < properties.size(); ++i) property_at_[properties[i].id] = i;
    for (std::size_t i = 0; i < references.size(); ++i) reference_at_[references[i].key] = i;
}

const Metal* Catalogue::metal(const std::string& slug_or_alias) const {
    return found(metals, metal_at_, as_slug(slug_or_alias));
}
const Property* Catalogue::property(const std::string& id) const {
    return found(properties, property_at_, id);
}
const Reference* Catalogue::reference(const std::string& key) const {
    return found(references, reference_at_, key);
}
const Metal* Catalogue::element(const std::string& symbol) const {
    return found(metals, element_at_, symbol);
}
const Goal* Catalogue::goal(const std::string& id) const {
    const auto it = std::find_if(goals.begin(), goals.end(), [&](const Goal& g) { return g.id == id; });
    return it == goals.end() ? nullptr : &*it;
}
const Price* Catalogue::price(const std::string& slug) const {
    const auto it = price_at_.find(slug);
    return it == price_at_.end() ? nullptr : &price_sets[it->second.first].prices[it->second.second];
}

const FlatFigure* Catalogue::flat(const Metal& metal, const Property& property) const {
    if (!flat_ || std::less<>()(&metal, metals.data()) || !std::less<>()(&metal, metals.data() + metals.size()))
        return nullptr;
    return flat_->find(static_cast<std::size_t>(&metal - metals.data()),
                       static_cast<std::size_t>(&property - properties.data()));
}

const PriceForm* Catalogue::price_form(const std::string& form, const std::string& family) const {
    for (const PriceForm& f : price_forms)
        if (f.form == form &&
            (f.families.empty() || std::find(f.families.begin(), f.families.end(), family) != f.families.end()))
            return &f;
    return nullptr;
}

std::vector<const Caution*> Catalogue::cautions_for(const Metal& metal) const {
    std::vector<const Caution*> out;
    for (const Caution& c : cautions) {
        const double content = metal.content_percent(c.element);
        if (content > 0 && content >= c.from_wt_percent) out.push_back(&c);
    }
    return out;
}

std::vector<std::string> Catalogue::nearest_metals(const std::string& word) const {
    std::vector<std::string> names; // a name with other figures is another grade, not a slip
    const auto add = [&](const std::string& name) {
        if (figures_of(name) == figures_of(word)) names.push_back(name);
    };
    for (const Metal& m : metals) {
        add(m.slug);
        for (const std::string& alias : m.aliases) add(alias);
    }
    std::vector<std::string> out;
    for (const std::string& name : nearest_words(word, names))
        if (const Metal* near = metal(name); near && std::find(out.begin(), out.end(), near->slug) == out.end())
            out.push_back(near->slug);
    return out;
}

} // namespace pourbook
