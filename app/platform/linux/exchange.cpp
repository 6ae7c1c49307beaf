#include "platform/exchange.hpp"

#include "platform/files.hpp"

#include <spawn.h>
#include <sys/wait.h>

#include <cstdlib>
#include <thread>

extern char** environ;

namespace pourbook::platform {

/// The name first: a narrow line cuts the rest, and the pointer brings it back.
Result<std::string> deliver(const std::string& file, const std::string& bytes) {
    if (const auto problem = write_file(file, bytes)) return *problem;
    const std::filesystem::path path(file);
    return "saved as " + path.filename().string() + " in " +
           (path.has_parent_path() ? path.parent_path().string() : ".");
}

bool keeps_folders() {
    return true;
}

void open_folder(const std::string& folder) {
    std::string program = "xdg-open", where = folder;
    char* words[] = {program.data(), where.data(), nullptr};
    pid_t child = 0;
    if (posix_spawnp(&child, "xdg-open", nullptr, nullptr, words, environ) != 0) return;
    std::thread([child] { waitpid(child, nullptr, 0); }).detach(); // it ends when it has handed the folder on
}

std::string page_address() {
    const char* address = std::getenv("POURBOOK_PAGE");
    return address ? address : "";
}

} // namespace pourbook::platform
