#include "platform/folders.hpp"

#include <cstdlib>

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

} // namespace pourbook::platform
