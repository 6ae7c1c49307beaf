#include "platform/picture_clipboard.hpp"

#include "platform/web/page_calls.hpp"

namespace pourbook::platform {

class PictureClipboard::Owner {};

PictureClipboard::PictureClipboard() = default;
PictureClipboard::~PictureClipboard() = default;

bool PictureClipboard::offer(std::string png) {
    return page_offer_png(png.data(), static_cast<int>(png.size())) == 1;
}

} // namespace pourbook::platform
