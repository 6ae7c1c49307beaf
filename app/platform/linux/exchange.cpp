#include "platform/exchange.hpp"

#include "platform/files.hpp"

#include <cstdlib>

namespace pourbook::platform {

/// The name first: a narrow line cuts the rest, and the pointer brings it back.
Result<std::string> deliver(const std::string& file, const std::string& bytes) {
    if (const auto problem = write_file(file, bytes)) return *problem;
    const std::filesystem::path path(file);
    return "saved as " + path.filename().string() + " in " +
           (path.has_parent_path() ? path.parent_path().string() : ".");
}

std::string page_address() {
    const char* address = std::getenv("POURBOOK_PAGE");
    return address ? address : "";
}

} // namespace pourbook::platform
