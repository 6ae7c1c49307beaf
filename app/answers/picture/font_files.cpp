#include "answers/picture/font_files.hpp"

#include "platform/folders.hpp"

#include <filesystem>

namespace pourbook {

Result<std::string> path_of(const FontFile& font) {
    const std::string shipped = platform::shipped_file(std::string("fonts/") + font.name);
    if (!shipped.empty()) return shipped;
    for (const std::string& folder : platform::font_folders()) {
        const std::string file = folder + "/" + font.name;
        std::error_code error;
        if (std::filesystem::exists(file, error)) return file;
    }
    return no_value(std::string("font ") + font.name + " is missing: install " + font.package);
}

} // namespace pourbook
