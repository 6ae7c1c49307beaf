#include "answers/picture/font_files.hpp"

#include "answers/parts/shipped_file.hpp"

#include <filesystem>

namespace pourbook {

Result<std::string> path_of(const FontFile& font) {
    const std::string shipped = shipped_file(std::string("fonts/") + font.name);
    if (!shipped.empty()) return shipped;
    const std::string system = std::string(font.system_folder) + font.name;
    std::error_code error;
    if (std::filesystem::exists(system, error)) return system;
    return no_value("font " + system + " is missing: install " + font.package);
}

} // namespace pourbook
