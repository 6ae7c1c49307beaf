// A private UNIX socket on which a test script asks what is on screen. Each line "dump" is answered with one line of
// JSON made at the end of the next whole frame, so that an answer also means that a frame has passed; "frame" is
// answered then with the number of the frame alone.
#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace pourbook {

class TestSocket {
public:
    /// `wake` makes the frame loop draw. An empty path opens nothing.
    TestSocket(const std::string& path, std::function<void()> wake);
    ~TestSocket();
    TestSocket(const TestSocket&) = delete;
    TestSocket& operator=(const TestSocket&) = delete;

    bool failed() const { return !path_.empty() && listener_ < 0; }
    enum class Question { none, frame, screen };
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

} // namespace pourbook
