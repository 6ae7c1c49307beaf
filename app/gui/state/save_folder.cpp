#include "gui/state/save_folder.hpp"

#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

std::string environment(const std::string& name) {
    const char* value = std::getenv(name.c_str());
    return value ? value : "";
}

/// XDG_PICTURES_DIR="$HOME/Pictures"
std::string from_user_dirs(const std::string& variable, const std::string& home) {
    const std::string config = environment("XDG_CONFIG_HOME");
    std::ifstream file(fs::path(config.empty() ? home + "/.config" : config) / "user-dirs.dirs");
    for (std::string line; std::getline(file, line);) {
        if (line.rfind(variable + "=\"", 0) != 0 || line.back() != '"') continue;
        const std::string value = line.substr(variable.size() + 2, line.size() - variable.size() - 3);
        return value.rfind("$HOME", 0) == 0 ? home + value.substr(5) : value;
    }
    return {};
}

} // namespace

std::string save_folder(const std::string& kind) {
    const std::string variable = "XDG_" + kind + "_DIR", home = environment("HOME");
    std::error_code ignored;
    for (const std::string& folder : {environment(variable), from_user_dirs(variable, home), home})
        if (!folder.empty() && fs::is_directory(folder, ignored)) return folder;
    return ".";
}

std::string fresh_name(const std::string& folder, const std::string& name, const std::string& ending) {
    std::error_code ignored;
    fs::path path = fs::path(folder) / (name + ending);
    for (int number = 2; fs::exists(path, ignored); ++number)
        path = fs::path(folder) / (name + "-" + std::to_string(number) + ending);
    return path.string();
}

} // namespace pourbook
