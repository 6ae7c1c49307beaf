#include "platform/process.hpp"

namespace pourbook::platform {

void prepare_process() {}

bool answer_goes_to_terminal() {
    return false;
}

bool messages_go_to_terminal() {
    return false;
}

bool asked_to_stop() {
    return false;
}

} // namespace pourbook::platform
