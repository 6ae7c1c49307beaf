#include "platform/thread.hpp"

#include <chrono>
#include <system_error>
#include <utility>

namespace pourbook::platform {

Thread::Thread(const std::function<void()>& work) {
    try {
        thread_ = std::thread(work);
    } catch (const std::system_error&) {
        work();
    }
}

Thread::~Thread() {
    if (thread_.joinable()) thread_.join();
}

Thread& Thread::operator=(Thread&& other) noexcept {
    if (thread_.joinable()) thread_.join();
    thread_ = std::move(other.thread_);
    return *this;
}

void pause_ms(int time) {
    std::this_thread::sleep_for(std::chrono::milliseconds(time));
}

} // namespace pourbook::platform
