#include "questions/drop/drop_command.hpp"

#include "core/quantity/format.hpp"
#include "questions/drop/setup_question.hpp"

namespace pourbook {
namespace {

/// The state as drop is told it, which by itself takes a casting.
std::string state_options(const Conditions& c) {
    if (!c.casting) return " --as handbook";
    std::string out;
    if (!c.casting->feedstock.empty()) out += " --feedstock " + c.casting->feedstock;
    if (c.casting->porosity)
        out += " --porosity " + trimmed(100 * c.casting->porosity->low, 4) + ":" +
               trimmed(100 * c.casting->porosity->high, 4) + "%";
    if (!c.casting->treatment.empty()) out += " --treatment " + c.casting->treatment;
    return out;
}

} // namespace

std::string drop_command(const SetupWords& w, const Metal& metal, const Conditions& conditions) {
    std::string out = "pourbook drop";
    for (const auto& [option, text] : setup_texts(w))
        if (!text->empty())
            out += std::string(" --") + option + " " +
                   (text->find(' ') == std::string::npos ? *text : "\"" + *text + "\"");
    out += " --metal " + metal.slug;
    if (conditions.temperature_K != room_temperature_K) out += " --at " + trimmed(conditions.temperature_K, 6) + "K";
    if (conditions.condition != Conditions().condition) out += " --condition " + conditions.condition;
    return out + state_options(conditions);
}

} // namespace pourbook
