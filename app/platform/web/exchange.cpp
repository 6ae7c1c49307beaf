#include "platform/exchange.hpp"

#include <emscripten.h>

#include <cstdlib>

EM_JS(void, give_to_browser, (const char* name, const void* bytes, int size), {
    const copy = new Uint8Array(size);
    copy.set(HEAPU8.subarray(bytes, bytes + size));
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([copy]));
    link.download = UTF8ToString(name);
    link.click();
    setTimeout(
        function() { URL.revokeObjectURL(link.href); }, 60000);
});

EM_JS(char*, own_address, (), {
    const address = location.href.split("#")[0];
    const size = lengthBytesUTF8(address) + 1;
    const text = _malloc(size);
    stringToUTF8(address, text, size);
    return text;
});

namespace pourbook::platform {

Result<std::string> deliver(const std::string& file, const std::string& bytes) {
    const std::string name = file.substr(file.find_last_of('/') + 1);
    if (name.empty()) return Problem{Problem::Kind::file, "a name for the file is expected", 0};
    give_to_browser(name.c_str(), bytes.data(), static_cast<int>(bytes.size()));
    return "given to the browser as " + name;
}

std::string page_address() {
    char* text = own_address();
    const std::string address = text;
    std::free(text);
    return address;
}

} // namespace pourbook::platform
