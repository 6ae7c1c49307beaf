#include "answers/parts/json_parts.hpp"

#include "questions/say/shown_money.hpp"

#include <cmath>

namespace pourbook {

Json json_number(double x) {
    return std::isfinite(x) ? Json(x) : Json(nullptr);
}

Json json_number(const std::optional<double>& x) {
    return x ? json_number(*x) : Json(nullptr);
}

Json json_rate(const Catalogue& catalogue) {
    const std::string rate = shown_rate(catalogue);
    return rate.empty() ? Json(nullptr) : Json(rate);
}

std::string json_text(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json json_inputs(const std::vector<RankInput>& inputs, const Catalogue& catalogue) {
    Json out = Json::object();
    for (const RankInput& i : inputs) {
        Json sources = Json::array();
        for (const SourceValue& s : i.value.sources)
            if (s.chosen) sources.push_back(s.key);
        out[i.property] = {{"value", json_number(i.value.value_si)},
                           {"unit", catalogue.property(i.property)->si_unit},
                           {"standard_uncertainty", json_number(i.value.standard_uncertainty_si)},
                           {"condition", i.value.condition},
                           {"basis", name_of(i.value.basis)},
                           {"how_known", name_of(i.value.how_known)},
                           {"sources", sources}};
    }
    return out;
}

} // namespace pourbook
