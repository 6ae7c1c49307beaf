#include "charts/palette.hpp"

namespace pourbook {
namespace {

constexpr Colour hex(std::uint32_t rgb) {
    return {static_cast<std::uint8_t>(rgb >> 16), static_cast<std::uint8_t>(rgb >> 8), static_cast<std::uint8_t>(rgb)};
}

} // namespace

const Palette& palette(bool dark) {
    static constexpr Palette dark_one = {hex(0x15181B),
                                         hex(0x1E2226),
                                         hex(0x2B3137),
                                         hex(0x343B42),
                                         hex(0x7A858F),
                                         hex(0xE7E9EA),
                                         hex(0x9DA6AE),
                                         hex(0xE39A6A),
                                         hex(0xF27D6B),
                                         hex(0x8FA3B5),
                                         {hex(0x56B4E9), hex(0xE69F00), hex(0x009E73), hex(0xCC79A7), hex(0xD55E00),
                                          hex(0x187FC3), hex(0xF0E442), hex(0x999999)}};
    static constexpr Palette light_one = {hex(0xF7F6F3),
                                          hex(0xFFFFFF),
                                          hex(0xE9E6E0),
                                          hex(0xD5D1C9),
                                          hex(0x857F74),
                                          hex(0x1D2124),
                                          hex(0x5D656B),
                                          hex(0xA24E1C),
                                          hex(0xB02A1C),
                                          hex(0x5B7185),
                                          {hex(0x3187C0), hex(0xB07400), hex(0x00805C), hex(0xB85C94), hex(0x9E3308),
                                           hex(0x123F7A), hex(0x5C5800), hex(0x707070)}};
    return dark ? dark_one : light_one;
}

} // namespace pourbook
