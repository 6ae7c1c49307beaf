#include "platform/main_loop.hpp"

#include "platform/web/page_calls.hpp"

#include <utility>

namespace pourbook::platform {
namespace {

struct Loop {
    std::function<bool()> frame;
    std::function<int()> after;
};

void once(void* pointer) {
    auto* loop = static_cast<Loop*>(pointer);
    if (loop->frame()) return;
    emscripten_cancel_main_loop();
    loop->after();
    delete loop;
    page_closed();
}

} // namespace

int repeat(std::function<bool()> frame, std::function<int()> after) {
    emscripten_set_main_loop_arg(once, new Loop{std::move(frame), std::move(after)}, 0, 0);
    return 0;
}

} // namespace pourbook::platform
