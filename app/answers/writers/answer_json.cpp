#include "answers/writers/writers.hpp"

#include "answers/parts/json_parts.hpp"

#include <cmath>
#include <type_traits>
#include <utility>

namespace pourbook {
namespace {

Json json_of_value(const Value& value) {
    return std::visit(
        [](const auto& v) {
            if constexpr (std::is_same_v<std::decay_t<decltype(v)>, std::monostate>)
                return Json(nullptr);
            else
                return Json(v);
        },
        value);
}

Json plain_json(const DataCell& c) {
    if (!std::holds_alternative<std::monostate>(c.value)) return json_of_value(c.value);
    if (std::isfinite(c.number)) return c.number;
    return c.text.empty() ? Json(nullptr) : Json(c.text);
}

Json traced(const DataCell& c, const std::string& unit) {
    const auto deciding = c.sources.begin() + static_cast<std::ptrdiff_t>(c.deciding);
    Json out = {{"value", plain_json(c)},
                {"unit", unit},
                {"standard_uncertainty", json_number(c.uncertainty)},
                {"condition", c.condition},
                {"basis", c.basis},
                {"how_known", c.how_known},
                {"sources", std::vector<std::string>(c.sources.begin(), deciding)}};
    for (const auto& [id, words] : {std::pair{"reason", &c.reason}, {"mark", &c.mark}})
        if (!words->empty()) out[id] = *words;
    return out;
}

/// "settling.cause" into out["settling"]["cause"].
void put_at(Json& out, const std::string& id, Json value) {
    Json* at = &out;
    std::size_t from = 0;
    for (std::size_t dot = id.find('.'); dot != std::string::npos; from = dot + 1, dot = id.find('.', from))
        at = &(*at)[id.substr(from, dot - from)];
    (*at)[id.substr(from)] = std::move(value);
}

Json rows_of(const DataTable& table) {
    Json out = Json::array();
    for (const auto& cells : table.rows) {
        Json& row = out.emplace_back(Json::object());
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const DataColumn& c = table.columns[i];
            if (c.shown_in & in::program)
                put_at(row, c.program_id.empty() ? c.id : c.program_id,
                       c.traced ? traced(cells[i], c.unit) : plain_json(cells[i]));
        }
    }
    return out;
}

} // namespace

std::string answer_json(const Document& document) {
    Json out = Json::object();
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::program) put_at(out, f.id, f.unit.empty() ? plain_json(f.cell) : traced(f.cell, f.unit));
    for (const Sentence& s : document.notes)
        if (s.shown_in & in::program && !s.id.empty()) put_at(out, s.id, s.text);
    for (const DataTable& part : document.parts)
        if (part.shown_in & in::program && !part.id.empty()) put_at(out, part.id, rows_of(part));
    out["data_version"] = document.data_version;
    return json_text(out);
}

} // namespace pourbook
