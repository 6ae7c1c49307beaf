#include "importers/compile/read_metal.hpp"

#include "importers/compile/read_record.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>

namespace pourbook {
namespace {

constexpr std::array families = {"copper",    "brass",      "bronze",         "nickel silver", "cupronickel",
                                 "silver",    "gold",       "platinum group", "aluminium",     "magnesium",
                                 "zinc",      "tin",        "lead",           "solder",        "fusible",
                                 "bismuth",   "nickel",     "iron",           "steel",         "stainless steel",
                                 "titanium",  "refractory", "reactive",       "alkali",        "alkaline earth",
                                 "semimetal", "mercury"};

void read_composition(Metal& m, Fields& f, const Catalogue& dictionary) {
    Fields c = f.object("composition");
    const JsonNode* limits = c.node("limits");
    Fields parts = c.object("wt_percent");
    double sum = 0;
    for (const auto& [element, node] : c.node("wt_percent")->members) {
        Portion p;
        p.element = element;
        if (!whole_number(parts.text(element), p.wt_percent) || p.wt_percent < 0)
            parts.fail(element, "a mass per cent is expected");
        if (const JsonNode* l = limits ? limits->find(element) : nullptr) p.limits = l->text;
        sum += p.wt_percent;
        m.composition.push_back(std::move(p));
    }
    if (limits) // elements that a standard only limits
        for (const auto& [element, node] : limits->members)
            if (!c.node("wt_percent")->find(element)) m.composition.push_back({element, 0, node.text});
    if (std::abs(sum - 100) > 0.1) c.fail("wt_percent", "sums to " + std::to_string(sum) + ", not to 100");
    if (m.is_element() && m.composition.size() != 1) c.fail("wt_percent", "an element has one");
    if (!m.is_element() || c.has("source")) m.composition_citation = read_citation(c, dictionary);
    c.text_or("note", "");
    c.finish();
}

/// An id is "slug.property.number", given once and kept: it may move in the file but never name another record.
void check_id(const std::string& id, const std::string& begin, const std::string& path, int line) {
    const bool sound = id.starts_with(begin) && id.size() > begin.size() &&
                       id.find_first_not_of("0123456789", begin.size()) == std::string::npos;
    if (!sound) throw InputError(path, line, id, "the id is not " + begin + "number");
}

void check_preferred(const Metal& m, const std::string& path, std::vector<std::string>& faults) {
    std::map<std::string, std::string> preferred;
    for (const Record& r : m.records) {
        if (r.use != Use::preferred) continue;
        const std::string key =
            r.property + "/" + name_of(r.phase) + "/" + r.condition + "/" + r.temper + "/" + r.process;
        const auto [other, fresh] = preferred.emplace(key, r.id);
        const auto same_range = [&](const Record& a) {
            for (const Record& b : m.records)
                if (b.id == other->second)
                    return std::isnan(a.lowest_K()) || (a.lowest_K() <= b.highest_K() && b.lowest_K() <= a.highest_K());
            return true;
        };
        if (!fresh && same_range(r))
            faults.push_back(path + ": " + r.id + ": " + other->second + " is preferred already for " + key);
    }
}

} // namespace

Metal read_metal(const std::string& path, const Catalogue& dictionary, std::vector<std::string>& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields f(path, "", root);
    Metal m;
    m.slug = f.text("slug");
    if (std::filesystem::path(path).stem() != m.slug) f.fail("slug", "'" + m.slug + "' is not the name of the file");
    m.name = f.text("name");
    m.kind = f.text("kind");
    if (m.kind != "element" && m.kind != "alloy") f.fail("kind", "element or alloy is expected");
    m.family = f.text("family");
    if (std::find(families.begin(), families.end(), m.family) == families.end())
        f.fail("family", "unknown family '" + m.family + "': see db/README.md");
    m.designations = f.texts("designations");
    m.aliases = f.texts("aliases");
    m.reference_condition = f.text("reference_condition");
    m.reference_temper = f.text_or("reference_temper", "");
    m.note = f.text_or("note", "");
    read_composition(m, f, dictionary);
    const JsonNode* records = f.node("records");
    if (!records || records->kind != JsonNode::Kind::list) f.fail("records", "a list is expected");
    std::set<std::string> ids;
    for (std::size_t i = 0; i < records->items.size(); ++i) {
        try {
            Record r = read_record(path, "records/" + std::to_string(i), records->items[i], dictionary);
            check_id(r.id, m.slug + "." + r.property + ".", path, records->items[i].line);
            if (!ids.insert(r.id).second)
                throw InputError(path, records->items[i].line, r.id, "another record of the file has this id");
            m.records.push_back(std::move(r));
        } catch (const InputError& e) {
            faults.push_back(e.what());
        }
    }
    f.finish();
    check_preferred(m, path, faults);
    return m;
}

} // namespace pourbook
