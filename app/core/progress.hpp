// How long work says how far it is, and learns that nobody waits for it any more. The core owns no thread and no clock:
// whoever asks decides what to do with the share and when to stop.
#pragma once

#include <functional>

namespace pourbook {

/// Called now and then with the share done, 0 to 1; false means "stop". Empty: nobody listens.
using Progress = std::function<bool(double done)>;

inline bool goes_on(const Progress& progress, double done) {
    return !progress || progress(done);
}

/// The progress of a part that lies between two shares of the whole.
inline Progress part_of(const Progress& whole, double from, double to) {
    if (!whole) return {};
    return [whole, from, to](double done) { return whole(from + (to - from) * done); };
}

} // namespace pourbook
