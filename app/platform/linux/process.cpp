#include "platform/process.hpp"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <string>

namespace pourbook::platform {
namespace {

volatile std::sig_atomic_t stop_asked = 0;

void hold_standard_streams() {
    for (int stream = ::open("/dev/null", O_RDONLY); stream >= 0; stream = ::open("/dev/null", O_RDONLY))
        if (stream > STDERR_FILENO) {
            ::close(stream);
            return;
        }
}

void state_terminal_width() {
    winsize size{};
    if (answer_goes_to_terminal() && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        ::setenv("COLUMNS", std::to_string(size.ws_col).c_str(), 0);
}

} // namespace

void prepare_process() {
    hold_standard_streams();
    std::signal(SIGXFSZ, SIG_IGN);
    state_terminal_width();
}

bool answer_goes_to_terminal() {
    return ::isatty(STDOUT_FILENO) == 1;
}

bool messages_go_to_terminal() {
    return ::isatty(STDERR_FILENO) == 1;
}

bool asked_to_stop() {
    static const auto before = std::signal(SIGINT, [](int) { stop_asked = 1; });
    return before != SIG_ERR && stop_asked != 0;
}

} // namespace pourbook::platform
