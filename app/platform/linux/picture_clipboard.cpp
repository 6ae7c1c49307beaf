// Owner of the X11 selection CLIPBOARD (ICCCM 2.0, section 2) on a connection and a thread of its own.
#include "platform/picture_clipboard.hpp"

#include <poll.h>
#include <sys/eventfd.h>
#include <unistd.h>
#include <xcb/xcb.h>

#include <array>
#include <cstdlib>
#include <thread>

namespace pourbook::platform {
namespace {

template <class Reply> using Owned = std::unique_ptr<Reply, decltype(&std::free)>;

constexpr std::size_t message_head = 64; // bytes of a request beside its data, generously

} // namespace

/// One picture on offer, from the taking of the selection to its loss.
class PictureClipboard::Owner {
public:
    explicit Owner(std::string png)
        : png_(std::move(png)), link_(xcb_connect(nullptr, nullptr), xcb_disconnect), stop_(eventfd(0, EFD_CLOEXEC)) {
        owns_ = stop_ >= 0 && xcb_connection_has_error(link_.get()) == 0 && fits() && take();
        if (owns_) thread_ = std::jthread([this] { serve(); });
    }
    ~Owner() {
        if (thread_.joinable()) {
            eventfd_write(stop_, 1);
            thread_.join();
        }
        if (stop_ >= 0) close(stop_);
    }
    Owner(const Owner&) = delete;
    Owner& operator=(const Owner&) = delete;

    bool owns() const { return owns_; }

private:
    bool fits() const {
        const std::size_t words = xcb_get_maximum_request_length(link_.get());
        return png_.size() + message_head <= 4 * words;
    }

    xcb_atom_t atom(const std::string& name) const {
        const auto asked = xcb_intern_atom(link_.get(), 0, static_cast<std::uint16_t>(name.size()), name.c_str());
        const Owned<xcb_intern_atom_reply_t> reply(xcb_intern_atom_reply(link_.get(), asked, nullptr), std::free);
        return reply ? reply->atom : xcb_atom_t{XCB_ATOM_NONE};
    }

    bool take() {
        const xcb_screen_t* screen = xcb_setup_roots_iterator(xcb_get_setup(link_.get())).data;
        window_ = xcb_generate_id(link_.get());
        xcb_create_window(link_.get(), XCB_COPY_FROM_PARENT, window_, screen->root, 0, 0, 1, 1, 0,
                          XCB_WINDOW_CLASS_INPUT_ONLY, XCB_COPY_FROM_PARENT, 0, nullptr);
        const xcb_atom_t clipboard = atom("CLIPBOARD");
        targets_ = atom("TARGETS");
        picture_ = atom("image/png");
        xcb_set_selection_owner(link_.get(), window_, clipboard, XCB_CURRENT_TIME);
        const auto asked = xcb_get_selection_owner(link_.get(), clipboard);
        const Owned<xcb_get_selection_owner_reply_t> reply(xcb_get_selection_owner_reply(link_.get(), asked, nullptr),
                                                           std::free);
        return reply && reply->owner == window_;
    }

    void serve() {
        std::array<pollfd, 2> wait = {pollfd{xcb_get_file_descriptor(link_.get()), POLLIN, 0},
                                      pollfd{stop_, POLLIN, 0}};
        while (xcb_connection_has_error(link_.get()) == 0) {
            while (const Owned<xcb_generic_event_t> event{xcb_poll_for_event(link_.get()), std::free})
                if (!heed(*event)) return;
            poll(wait.data(), wait.size(), -1);
            if (wait[1].revents != 0) return;
        }
    }

    /// False once another program has copied something.
    bool heed(const xcb_generic_event_t& event) {
        constexpr std::uint8_t kind = 0x7f; // without the mark of an event that was sent
        if ((event.response_type & kind) == XCB_SELECTION_CLEAR) return false;
        if ((event.response_type & kind) == XCB_SELECTION_REQUEST)
            hand_over(reinterpret_cast<const xcb_selection_request_event_t&>(event));
        return true;
    }

    void hand_over(const xcb_selection_request_event_t& asked) {
        xcb_selection_notify_event_t told = {};
        told.response_type = XCB_SELECTION_NOTIFY;
        told.time = asked.time;
        told.requestor = asked.requestor;
        told.selection = asked.selection;
        told.target = asked.target;
        told.property = asked.property == XCB_ATOM_NONE ? asked.target : asked.property;
        const std::array<xcb_atom_t, 2> offered = {targets_, picture_};
        const auto put = [&](xcb_atom_t type, std::uint8_t bits, std::size_t count, const void* data) {
            xcb_change_property(link_.get(), XCB_PROP_MODE_REPLACE, told.requestor, told.property, type, bits,
                                static_cast<std::uint32_t>(count), data);
        };
        if (asked.target == targets_)
            put(XCB_ATOM_ATOM, 32, offered.size(), offered.data());
        else if (asked.target == picture_)
            put(picture_, 8, png_.size(), png_.data());
        else
            told.property = XCB_ATOM_NONE; // refused
        xcb_send_event(link_.get(), 0, told.requestor, 0, reinterpret_cast<const char*>(&told));
        xcb_flush(link_.get());
    }

    std::string png_;
    std::unique_ptr<xcb_connection_t, decltype(&xcb_disconnect)> link_;
    int stop_;
    xcb_window_t window_ = 0;
    xcb_atom_t targets_ = 0, picture_ = 0;
    bool owns_ = false;
    std::jthread thread_;
};

PictureClipboard::PictureClipboard() = default;
PictureClipboard::~PictureClipboard() = default;

bool PictureClipboard::offer(std::string png) {
    owner_ = std::make_unique<Owner>(std::move(png));
    if (!owner_->owns()) owner_.reset();
    return owner_ != nullptr;
}

} // namespace pourbook::platform
