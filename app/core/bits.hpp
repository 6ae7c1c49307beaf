// The bits of one value read as another's (std::bit_cast, which the browser's library lacks).
#pragma once

#include <cstring>

namespace pourbook {

template <class To, class From> To bits_as(const From& from) {
    static_assert(sizeof(To) == sizeof(From));
    To to;
    std::memcpy(&to, &from, sizeof to);
    return to;
}

} // namespace pourbook
