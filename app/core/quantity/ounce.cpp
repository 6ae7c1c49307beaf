#include "core/quantity/ounce.hpp"

#include "core/quantity/written_number.hpp"

namespace pourbook {

std::optional<Problem> doubtful_ounce(const std::string& written, double troy_wt_percent) {
    if (troy_wt_percent <= 50) return std::nullopt;
    const std::string unit = unit_behind(written);
    for (const std::string word : {"ounces", "ounce", "oz"}) {
        if (!unit.ends_with(word)) continue;
        if (unit.size() > word.size() &&
            std::string(" /").find(unit[unit.size() - word.size() - 1]) == std::string::npos)
            continue;
        const std::string stem = written.substr(0, written.rfind(word));
        return unreadable("'" + written + "' of a precious metal: " + stem + "ozt (troy, 31.10 g) or " + stem +
                          "ozav (avoirdupois, 28.35 g)?");
    }
    return std::nullopt;
}

} // namespace pourbook
