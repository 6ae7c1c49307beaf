// A test asks the page itself (Module.pourbook_screen, app/web/main.cpp); there is no socket.
#include "platform/test_socket.hpp"

namespace pourbook::platform {

class TestSocket::Line {};

TestSocket::TestSocket(const std::string& path, std::function<void()>) : failed_(!path.empty()) {}

TestSocket::~TestSocket() = default;

TestSocket::Question TestSocket::asked() {
    return Question::none;
}

void TestSocket::answer(std::string) {}

} // namespace pourbook::platform
