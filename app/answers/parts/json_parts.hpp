// Pieces of JSON that several results share.
#pragma once

#include "questions/rank/merit.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

using Json = nlohmann::ordered_json;

/// null for what is not finite or not there.
Json json_number(double x);
Json json_number(const std::optional<double>& x);
/// The rate of exchange that amounts typed in another currency were read by; null for US dollars.
Json json_rate(const Catalogue& catalogue);
/// Indented text with a line end; bytes that are no UTF-8 are replaced.
std::string json_text(const Json& json);
/// {"conductivity": {value, unit, standard_uncertainty, condition, how_known, sources}}
Json json_inputs(const std::vector<RankInput>& inputs, const Catalogue& catalogue);

} // namespace pourbook
