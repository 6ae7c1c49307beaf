// A private line (on Linux a UNIX socket) on which a test script asks what is on screen. Each line "dump" is answered
// with one line of JSON made at the end of the next whole frame, so that an answer also means that a frame has passed;
// "frame" is answered then with the number of the frame alone.
#pragma once

#include <functional>
#include <memory>
#include <string>

namespace pourbook::platform {

class TestSocket {
public:
    /// `wake` makes the frame loop draw. An empty path opens nothing.
    TestSocket(const std::string& path, std::function<void()> wake);
    ~TestSocket();
    TestSocket(const TestSocket&) = delete;
    TestSocket& operator=(const TestSocket&) = delete;

    bool failed() const { return failed_; }
    enum class Question { none, frame, screen };
    Question asked();
    void answer(std::string line);

private:
    class Line;
    std::unique_ptr<Line> line_; // null: none was asked for, or it can't be opened
    bool failed_ = false;
};

} // namespace pourbook::platform
