#include "importers/compile/withdrawn.hpp"

#include "importers/compile/fields.hpp"

#include <set>

namespace pourbook {

void check_withdrawn(const std::string& path, const Catalogue& catalogue, std::vector<std::string>& faults) {
    std::set<std::string> used;
    for (const Metal& m : catalogue.metals)
        for (const Record& r : m.records) used.insert(r.id);
    const JsonNode root = parse_located_json(path, read_text_file(path));
    if (root.kind != JsonNode::Kind::list) throw InputError(path, root.line, "", "a list is expected");
    for (const JsonNode& item : root.items) {
        Fields f(path, "", item);
        const std::string id = f.text("id"), next = f.text_or("replaced_by", "");
        f.text("why");
        f.finish();
        const std::string where = path + ":" + std::to_string(f.line()) + ": " + id + ": ";
        if (used.contains(id)) faults.push_back(where + "is withdrawn and yet in use");
        if (!next.empty() && !used.contains(next)) faults.push_back(where + "its successor " + next + " is unknown");
    }
}

} // namespace pourbook
