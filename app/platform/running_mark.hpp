// A file that lies beside the state file while a window runs, so that the next one learns of a bad end.
#pragma once

#include <string>

namespace pourbook::platform {

/// Says beside the state file that a window runs, until it is destroyed.
class RunningMark {
public:
    /// An empty name: no mark.
    explicit RunningMark(const std::string& state_file);
    ~RunningMark();
    RunningMark(const RunningMark&) = delete;
    RunningMark& operator=(const RunningMark&) = delete;

    /// The last window ended without closing.
    bool left_behind() const { return left_behind_; }
    /// Takes the mark away and ends the process without waiting for any thread.
    [[noreturn]] void leave_at_once(int code) const;

private:
    std::string mark_;
    bool left_behind_ = false;
};

} // namespace pourbook::platform
