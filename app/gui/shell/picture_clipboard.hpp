// Offers a picture to other programs: owner of the X11 selection CLIPBOARD (ICCCM 2.0, section 2) on a connection and a
// thread of its own, for the window library's clipboard carries text only. The picture is there until another program
// copies something or this one ends.
#pragma once

#include <memory>
#include <string>

namespace pourbook {

class PictureClipboard {
public:
    PictureClipboard();
    ~PictureClipboard();
    PictureClipboard(const PictureClipboard&) = delete;
    PictureClipboard& operator=(const PictureClipboard&) = delete;

    /// False where there is no such display, or the picture is larger than one message of it.
    bool offer(std::string png);

private:
    class Owner;
    std::unique_ptr<Owner> owner_;
};

} // namespace pourbook
