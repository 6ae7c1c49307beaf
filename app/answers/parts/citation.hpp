// Which program and which data gave an answer, and how to cite them.
#pragma once

#include <string>

namespace pourbook {

/// Such as "0.1.0".
std::string program_version();

/// "Pourbook 0.1.0, data version 2026-11-30-abc".
std::string program_and_data(const std::string& data_version);

/// What to write under a table or a film: program and data, and that each figure's own source belongs beside them.
std::string how_to_cite(const std::string& data_version);

} // namespace pourbook
