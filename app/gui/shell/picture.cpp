#include "gui/shell/picture.hpp"

#include "answers/writers/write_file.hpp"
#include "gui/shell/gl.hpp"

#include <stb_image_write.h>

#include <algorithm>
#include <vector>

namespace pourbook {

std::optional<Problem> save_picture(const std::string& file, int width, int height) {
    constexpr int channels = 4;
    const std::size_t row = static_cast<std::size_t>(width) * channels;
    std::vector<unsigned char> pixels(row * static_cast<std::size_t>(height));
    gl::read_pixels(width, height, pixels.data());
    for (std::size_t i = 3; i < pixels.size(); i += channels) pixels[i] = 255; // the window has no see-through parts
    std::vector<unsigned char> upright(pixels.size());
    for (std::size_t y = 0; y < static_cast<std::size_t>(height); ++y)
        std::copy_n(pixels.begin() + static_cast<std::ptrdiff_t>(y * row), row,
                    upright.end() - static_cast<std::ptrdiff_t>((y + 1) * row));
    std::string png;
    const auto take = [](void* to, void* bytes, int count) {
        static_cast<std::string*>(to)->append(static_cast<const char*>(bytes), static_cast<std::size_t>(count));
    };
    if (!stbi_write_png_to_func(take, &png, width, height, channels, upright.data(), static_cast<int>(row)))
        return Problem{Problem::Kind::file, "the picture can't be made: not enough memory", 0};
    return write_file(file, png);
}

} // namespace pourbook
