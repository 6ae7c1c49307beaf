#include "answers/picture/pixels.hpp"

#include "answers/picture/surface.hpp"

#include <cstdint>
#include <cstring>

namespace pourbook {

Result<std::string> png_of(const Pixels& pixels) {
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels.width, pixels.height));
    std::string bytes;
    if (unsigned char* to = cairo_image_surface_get_data(surface.get())) {
        const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
        const unsigned char* from = pixels.bytes.data();
        for (std::size_t y = 0; y < static_cast<std::size_t>(pixels.height); ++y)
            for (std::size_t x = 0; x < static_cast<std::size_t>(pixels.width); ++x, from += 4) {
                const std::uint32_t one = std::uint32_t{from[0]} << 16 | std::uint32_t{from[1]} << 8 | from[2];
                std::memcpy(to + y * stride + 4 * x, &one, sizeof one);
            }
        cairo_surface_mark_dirty(surface.get());
        cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
    }
    if (const auto problem = finish(surface.get(), "the picture")) return *problem;
    return bytes;
}

} // namespace pourbook
