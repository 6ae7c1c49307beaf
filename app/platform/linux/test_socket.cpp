#include "platform/test_socket.hpp"

#include <poll.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <condition_variable>
#include <cstring>
#include <mutex>
#include <optional>
#include <thread>

namespace pourbook::platform {
namespace {

int listen_on(const std::string& path) {
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    if (path.size() >= sizeof address.sun_path) return -1;
    std::memcpy(address.sun_path, path.c_str(), path.size());
    const int fd = ::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
    if (fd < 0) return -1;
    struct stat there {};
    if (::lstat(path.c_str(), &there) == 0 && S_ISSOCK(there.st_mode)) ::unlink(path.c_str()); // and nothing else
    const bool bound = ::fchmod(fd, 0600) == 0 &&                                              // for this user only
                       ::bind(fd, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0 &&
                       ::listen(fd, 1) == 0;
    if (bound) return fd;
    ::close(fd);
    return -1;
}

/// Waits until `fd` can be read; false when told to stop.
bool readable(int fd, int stop) {
    pollfd both[2] = {{fd, POLLIN, 0}, {stop, POLLIN, 0}};
    while (::poll(both, 2, -1) < 0) {
    }
    return both[1].revents == 0;
}

bool send_all(int fd, const std::string& text) {
    for (std::size_t sent = 0; sent < text.size();) {
        const ssize_t n = ::send(fd, text.data() + sent, text.size() - sent, MSG_NOSIGNAL);
        if (n <= 0) return false;
        sent += static_cast<std::size_t>(n);
    }
    return true;
}

} // namespace

class TestSocket::Line {
public:
    Line(const std::string& path, std::function<void()> wake);
    ~Line();
    Line(const Line&) = delete;
    Line& operator=(const Line&) = delete;

    bool failed() const { return listener_ < 0; }
    Question asked();
    void answer(std::string line);

private:
    void serve();
    bool talk(int client);
    std::optional<std::string> wait_for_answer();

    std::string path_;
    std::function<void()> wake_;
    int listener_ = -1;
    int stop_[2] = {-1, -1}; // a byte here ends the thread
    std::mutex guard_;
    std::condition_variable ready_;
    Question asked_ = Question::none;
    bool ending_ = false;
    std::optional<std::string> answer_;
    std::thread thread_;
};

TestSocket::TestSocket(const std::string& path, std::function<void()> wake) {
    if (path.empty()) return;
    line_ = std::make_unique<Line>(path, std::move(wake));
    failed_ = line_->failed();
}

TestSocket::~TestSocket() = default;

TestSocket::Question TestSocket::asked() {
    return line_ ? line_->asked() : Question::none;
}

void TestSocket::answer(std::string line) {
    if (line_) line_->answer(std::move(line));
}

TestSocket::Line::Line(const std::string& path, std::function<void()> wake) : path_(path), wake_(std::move(wake)) {
    if (::pipe(stop_) != 0) return;
    listener_ = listen_on(path_);
    if (listener_ >= 0) thread_ = std::thread([this] { serve(); });
}

TestSocket::Line::~Line() {
    if (thread_.joinable()) {
        {
            const std::lock_guard lock(guard_);
            ending_ = true;
        }
        ready_.notify_all();
        [[maybe_unused]] const ssize_t n = ::write(stop_[1], "x", 1);
        thread_.join();
        ::close(listener_);
        ::unlink(path_.c_str());
    }
    for (const int fd : stop_)
        if (fd >= 0) ::close(fd);
}

TestSocket::Question TestSocket::Line::asked() {
    const std::lock_guard lock(guard_);
    return asked_;
}

void TestSocket::Line::answer(std::string line) {
    {
        const std::lock_guard lock(guard_);
        asked_ = Question::none;
        answer_ = std::move(line);
    }
    ready_.notify_all();
}

void TestSocket::Line::serve() {
    while (readable(listener_, stop_[0])) {
        const int client = ::accept(listener_, nullptr, nullptr);
        if (client < 0) continue;
        while (talk(client)) {
        }
        ::close(client);
    }
}

bool TestSocket::Line::talk(int client) {
    char buffer[256];
    if (!readable(client, stop_[0])) return false;
    const ssize_t n = ::recv(client, buffer, sizeof buffer, 0);
    if (n <= 0) return false;
    if (!std::memchr(buffer, '\n', static_cast<std::size_t>(n))) return true;
    {
        const std::lock_guard lock(guard_);
        asked_ = buffer[0] == 'f' ? Question::frame : Question::screen;
    }
    wake_();
    const std::optional<std::string> line = wait_for_answer();
    return line && send_all(client, *line + "\n");
}

std::optional<std::string> TestSocket::Line::wait_for_answer() {
    std::unique_lock lock(guard_);
    ready_.wait(lock, [this] { return answer_ || ending_; });
    std::optional<std::string> line = std::move(answer_);
    answer_.reset();
    return line;
}

} // namespace pourbook::platform
