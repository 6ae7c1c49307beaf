#include "platform/exchange.hpp"

#include "platform/web/page_calls.hpp"

namespace pourbook::platform {

Result<std::string> deliver(const std::string& file, const std::string& bytes) {
    const std::string name = file.substr(file.find_last_of('/') + 1);
    if (name.empty()) return Problem{Problem::Kind::file, "a name for the file is expected", 0};
    page_give_file(name.c_str(), bytes.data(), static_cast<int>(bytes.size()));
    return "handed to the browser, to be saved as " + name;
}

bool keeps_folders() {
    return false;
}

void open_folder(const std::string&) {}

std::string page_address() {
    return taken(::page_address());
}

} // namespace pourbook::platform
