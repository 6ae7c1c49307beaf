#include "platform/picture_clipboard.hpp"

#include <emscripten.h>

// A browser takes a picture only in answer to a click; it says by its console where it refused.
EM_JS(int, offer_png, (const void* bytes, int size), {
    if (!navigator.clipboard || typeof ClipboardItem == = "undefined") return 0;
    const copy = new Uint8Array(size);
    copy.set(HEAPU8.subarray(bytes, bytes + size));
    const item = new ClipboardItem({
        "image/png" : new Blob([copy],
                               {
                                   type:
                                       "image/png"
                               })
    });
    navigator.clipboard.write([item]).catch(function(why) { console.warn("the picture was not taken: " + why); });
    return 1;
});

namespace pourbook::platform {

class PictureClipboard::Owner {};

PictureClipboard::PictureClipboard() = default;
PictureClipboard::~PictureClipboard() = default;

bool PictureClipboard::offer(std::string png) {
    return offer_png(png.data(), static_cast<int>(png.size())) == 1;
}

} // namespace pourbook::platform
