// Readings of a field meter as a person writes them; drop's --surface-field and measure's --field read the same way.
#pragma once

#include "core/eddy/field_fit.hpp"

#include <string>

namespace pourbook {

constexpr double meter_doubt = 0.02; // of the field meter's scale where none is stated; common practice, no source

/// "0.35T@1mm", "0.21+-0.005T@5+-0.2mm"; either sign of the field. Not stated: 0.5 % on the field, +-0.2 mm on the
/// distance (workshop measuring, common practice without a source). Errors: unreadable; refused for a pull.
Result<eddy::FieldReading> field_reading(const std::string& text, const std::string& option);

} // namespace pourbook
