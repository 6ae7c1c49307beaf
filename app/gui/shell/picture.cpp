#include "gui/shell/picture.hpp"

#include "answers/picture/pixels.hpp"
#include "gui/shell/gl.hpp"
#include "platform/files.hpp"

#include <algorithm>

namespace pourbook {

std::optional<Problem> save_picture(const std::string& file, int width, int height) {
    const std::size_t row = static_cast<std::size_t>(width) * 4;
    std::vector<unsigned char> pixels(row * static_cast<std::size_t>(height));
    gl::read_pixels(width, height, pixels.data());
    Pixels upright{width, height, std::vector<unsigned char>(pixels.size())};
    for (std::size_t y = 0; y < static_cast<std::size_t>(height); ++y)
        std::copy_n(pixels.begin() + static_cast<std::ptrdiff_t>(y * row), row,
                    upright.bytes.end() - static_cast<std::ptrdiff_t>((y + 1) * row));
    const Result<std::string> png = png_of(upright);
    return png ? platform::write_file(file, *png) : png.problem();
}

} // namespace pourbook
