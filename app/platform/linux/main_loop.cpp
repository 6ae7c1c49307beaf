#include "platform/main_loop.hpp"

namespace pourbook::platform {

int repeat(std::function<bool()> frame, std::function<int()> after) {
    while (frame()) {
    }
    return after();
}

} // namespace pourbook::platform
