#include "questions/pour/defects.hpp"

#include "questions/metals/find_words.hpp"

namespace pourbook {
namespace {

/// "Round smooth holes: gas. Drier charge." as look, cause and change.
Defect defect_from(const Practice& entry) {
    const std::size_t colon = entry.text.find(": "), stop = entry.text.find(". ", colon);
    Defect d{entry.grade, entry.text.substr(0, colon), "", &entry};
    if (stop != std::string::npos) d.change = entry.text.substr(stop + 2);
    return d;
}

} // namespace

Result<std::vector<Defect>> defects(const Catalogue& catalogue, const std::string& words) {
    std::vector<Defect> found;
    std::string names;
    for (const Practice& p : catalogue.practices) {
        if (p.quantity != "defect") continue;
        const Defect defect = defect_from(p);
        names += (names.empty() ? "" : ", ") + defect.name;
        if (holds_every_word(defect.name + " " + defect.seen, words)) found.push_back(defect);
    }
    if (!found.empty()) return found;
    return Problem{Problem::Kind::unknown, "no defect looks like '" + words + "': ask for one of " + names, 0};
}

} // namespace pourbook
