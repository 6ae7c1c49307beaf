#include "platform/running_mark.hpp"

#include <signal.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace pourbook::platform {
namespace {

std::array<char, 4096> mark_of_this_window{};

/// Ended on request (a log-out, Ctrl-C): no fault of what the window was reading.
void end_on_request(int number) {
    ::unlink(mark_of_this_window.data());
    ::signal(number, SIG_DFL);
    ::raise(number);
}

} // namespace

RunningMark::RunningMark(const std::string& state_file) {
    if (state_file.empty()) return;
    mark_ = state_file + ".running";
    pid_t last = 0;
    std::ifstream(mark_) >> last;
    left_behind_ = last > 0 && last != ::getpid() && ::kill(last, 0) != 0;
    if (last > 0 && !left_behind_)
        mark_.clear(); // another window's, which lives
    else
        std::ofstream(mark_) << ::getpid() << '\n';
    if (mark_.empty() || mark_.size() >= mark_of_this_window.size()) return;
    mark_.copy(mark_of_this_window.data(), mark_.size());
    for (const int request : {SIGTERM, SIGHUP, SIGINT}) ::signal(request, end_on_request);
}

RunningMark::~RunningMark() {
    std::error_code ignored;
    if (!mark_.empty()) std::filesystem::remove(mark_, ignored);
}

void RunningMark::leave_at_once(int code) const {
    std::error_code ignored;
    if (!mark_.empty()) std::filesystem::remove(mark_, ignored);
    std::_Exit(code);
}

} // namespace pourbook::platform
