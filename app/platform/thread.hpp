// A thread that is waited for when it goes out of scope or another takes its place.
#pragma once

#include <functional>
#include <thread>

namespace pourbook::platform {

class Thread {
public:
    Thread() = default;
    /// Where no thread can be had (a page that a browser does not isolate) the work is done here and now.
    explicit Thread(const std::function<void()>& work);
    ~Thread();
    Thread(Thread&& other) noexcept = default;
    Thread& operator=(Thread&& other) noexcept;

private:
    std::thread thread_;
};

void pause_ms(int time);

} // namespace pourbook::platform
