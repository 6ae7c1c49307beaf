#include "answers/parts/citation.hpp"

namespace pourbook {

std::string program_and_data(const std::string& data_version) {
    return "Pourbook " + program_version() + ", data version " + data_version;
}

std::string how_to_cite(const std::string& data_version) {
    return program_and_data(data_version) + ", with the source that each figure names";
}

} // namespace pourbook
