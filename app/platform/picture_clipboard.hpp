// Offers a picture to other programs, for the window library's clipboard carries text only. The picture is there until
// another program copies something or this one ends.
#pragma once

#include <memory>
#include <string>

namespace pourbook::platform {

class PictureClipboard {
public:
    PictureClipboard();
    ~PictureClipboard();
    PictureClipboard(const PictureClipboard&) = delete;
    PictureClipboard& operator=(const PictureClipboard&) = delete;

    /// False where this system has no such clipboard, or none for so large a picture.
    bool offer(std::string png);

private:
    class Owner;
    std::unique_ptr<Owner> owner_;
};

} // namespace pourbook::platform
