// A test asks by the page's own variables (a browser's debugging port reaches them); there is no socket.
#include "platform/test_socket.hpp"

#include "platform/web/page_calls.hpp"

namespace pourbook::platform {

class TestSocket::Line {};

TestSocket::TestSocket(const std::string& path, std::function<void()>) {
    if (!path.empty()) line_ = std::make_unique<Line>();
}

TestSocket::~TestSocket() = default;

TestSocket::Question TestSocket::asked() {
    return line_ ? static_cast<Question>(page_test_question()) : Question::none;
}

void TestSocket::answer(std::string line) {
    page_test_answer(line.c_str());
}

} // namespace pourbook::platform
