#include "gui/shell/open_folder.hpp"

#include <spawn.h>
#include <sys/wait.h>

#include <thread>

extern char** environ;

namespace pourbook {

void open_in_file_manager(const std::string& folder) {
    std::string program = "xdg-open", where = folder;
    char* words[] = {program.data(), where.data(), nullptr};
    pid_t child = 0;
    if (posix_spawnp(&child, "xdg-open", nullptr, nullptr, words, environ) != 0) return;
    std::thread([child] { waitpid(child, nullptr, 0); }).detach(); // it ends when it has handed the folder on
}

} // namespace pourbook
