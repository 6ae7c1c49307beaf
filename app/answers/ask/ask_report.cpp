#include "answers/ask/ask_report.hpp"

#include "answers/ask/short_answer.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

std::string defect_sentence(const std::vector<Defect>& defects) {
    std::string out;
    for (const Defect& d : defects)
        out +=
            (out.empty() ? "" : " ") + d.name + ": " + d.cause + ". Seen: " + d.seen + ". To change: " + d.change + ".";
    return out;
}

} // namespace

std::string sentence_of(const AskResult& r, UnitSystem units) {
    if (r.versus) return r.versus->sentence;
    if (r.rank) return sentence_of(*r.rank);
    if (r.drop) return sentence_of(*r.drop);
    if (!r.defects.empty()) return defect_sentence(r.defects);
    std::string out = sentence_of(r.values, units);
    if (r.read.amount_kg > 0 && r.values.size() == 1)
        out += " " + trimmed(r.read.amount_kg, 6) +
               " kg of it: " + significant(r.read.amount_kg * r.values.front().value.value_si, 3) + " USD.";
    return out;
}

std::string text_of(const AskResult& r, UnitSystem units) {
    std::string out;
    const std::string sentence = sentence_of(r, units);
    if (!sentence.empty()) out += wrapped(sentence, page_width, "");
    if (!r.fault.empty()) out += wrapped((sentence.empty() ? "No answer: " : "Also: ") + r.fault, page_width, "");
    for (const std::string& caution : r.cautions) out += wrapped("Caution: " + caution, page_width, "    ");
    out += wrapped("Understood: " + joined(r.read.taken, "; "), page_width, "    ");
    return out + "The whole: " + command_line(r.read) + "\n";
}

std::string json_of(const AskResult& r) {
    return json_text({{"understood", r.read.taken},
                      {"missing", r.read.missing},
                      {"answer", sentence_of(r, UnitSystem::shown)},
                      {"fault", r.fault.empty() ? Json(nullptr) : Json(r.fault)},
                      {"cautions", r.cautions},
                      {"command", r.read.command()},
                      {"command_line", command_line(r.read)}});
}

} // namespace pourbook
