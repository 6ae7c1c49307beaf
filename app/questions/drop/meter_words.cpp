#include "questions/drop/meter_words.hpp"

#include "core/quantity/unit.hpp"
#include "questions/drop/magnet_words.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

constexpr double reading_doubt = 0.005; // of a field reading: last digit and wobble
constexpr double place_m = 0.2e-3;      // of the sensor

} // namespace

Result<eddy::FieldReading> field_reading(const std::string& text, const std::string& option) {
    static const Dimension tesla = parse_unit("T")->dimension;
    const std::size_t at = text.find('@');
    if (at == std::string::npos)
        return unreadable(option + " '" + text +
                          "': a field at a distance from the pole face is expected, such as 0.21T@5mm");
    const std::string strength = text.substr(0, at);
    if (auto pull = pull_fault(strength, option)) return *pull;
    const Result<eddy::Uncertain> field = uncertain_from(strength, tesla, option),
                                  place = uncertain_from(text.substr(at + 1), base_dimension(Dimension::metre), option);
    if (!field) return field.problem();
    if (!place) return place.problem();
    eddy::FieldReading r;
    r.field_T = std::abs(field->value); // either pole may face the meter
    r.field_doubt_T = field->spread > 0 ? field->standard() : reading_doubt * r.field_T;
    r.distance_m = place->value;
    r.distance_doubt_m = place->spread > 0 ? place->standard() : place_m / std::numbers::sqrt3;
    return r;
}

} // namespace pourbook
