#include "gui/state/save_folder.hpp"

#include <filesystem>

namespace pourbook {

std::string fresh_name(const std::string& folder, const std::string& name, const std::string& ending) {
    namespace fs = std::filesystem;
    std::error_code ignored;
    fs::path path = fs::path(folder) / (name + ending);
    for (int number = 2; fs::exists(path, ignored); ++number)
        path = fs::path(folder) / (name + "-" + std::to_string(number) + ending);
    return path.string();
}

} // namespace pourbook
