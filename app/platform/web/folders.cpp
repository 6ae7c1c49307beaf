// The page brings its files along in /pourbook; /own is kept in the browser's store (app/web/own_files.js).
#include "platform/folders.hpp"

namespace pourbook::platform {

std::filesystem::path program_folder() {
    return "/pourbook";
}

std::filesystem::path data_folder() {
    return "/own";
}

std::filesystem::path state_folder() {
    return "/own";
}

std::string save_folder(const std::string&) {
    return "/saved";
}

std::vector<std::string> font_folders() {
    return {};
}

} // namespace pourbook::platform
