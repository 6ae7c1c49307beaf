#include "platform/folders.hpp"

#include <cstdlib>
#include <fstream>

namespace pourbook::platform {
namespace {

namespace fs = std::filesystem;

/// XDG base directories, which want a relative one ignored: what the variable says, else below the home folder.
fs::path user_folder(const char* variable, const char* below_home) {
    const auto absolute = [](const char* name) {
        const char* folder = std::getenv(name);
        return fs::path(folder && *folder == '/' ? folder : "");
    };
    if (const auto folder = absolute(variable); !folder.empty()) return folder / "pourbook";
    const auto home = absolute("HOME");
    return home.empty() ? home : home / below_home / "pourbook";
}

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

fs::path program_folder() {
    std::error_code error;
    const auto program = fs::read_symlink("/proc/self/exe", error);
    return error ? "." : program.parent_path();
}

fs::path data_folder() {
    return user_folder("XDG_DATA_HOME", ".local/share");
}

fs::path state_folder() {
    return user_folder("XDG_STATE_HOME", ".local/state");
}

std::vector<std::string> font_folders() {
    return {"/usr/share/fonts/opentype/inter", "/usr/share/fonts/truetype/dejavu"};
}

std::string save_folder(const std::string& kind) {
    const std::string variable = "XDG_" + kind + "_DIR", home = environment("HOME");
    std::error_code ignored;
    for (const std::string& folder : {environment(variable), from_user_dirs(variable, home), home})
        if (!folder.empty() && fs::is_directory(folder, ignored)) return folder;
    return ".";
}

} // namespace pourbook::platform
