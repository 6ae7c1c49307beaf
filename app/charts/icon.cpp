#include "charts/icon.hpp"

#include <initializer_list>

namespace pourbook {
namespace {

constexpr Colour icon_wall{0xB8, 0x6B, 0x3C}, icon_wall_light{0xE0, 0x9A, 0x68}, icon_bore{0x1C, 0x22, 0x2B};
constexpr Colour icon_north{0xD5, 0x5E, 0x00}, icon_south{0x00, 0x72, 0xB2}, icon_current{0xFF, 0xF4, 0xE6};

} // namespace

Scene icon(double size) {
    Scene scene;
    scene.width = scene.height = size;
    const double u = size / 64; // drawn on a grid of 64
    const auto bar = [&](double x, double y, double width, double height, Colour colour) {
        scene.parts.push_back(Rectangle{{x * u, y * u, width * u, height * u}, colour});
    };
    const auto dot = [&](double x, double y, double radius, Colour colour) {
        scene.parts.push_back(Circle{{x * u, y * u}, radius * u, colour});
    };
    bar(9, 3, 46, 58, icon_wall);
    bar(9, 3, 3, 58, icon_wall_light);
    bar(20, 3, 24, 58, icon_bore);
    bar(22, 21, 20, 11, icon_north);
    bar(22, 32, 20, 11, icon_south);
    for (const double y : {14.0, 50.0}) // where the field changes most, before and behind the magnet
        for (const double x : {15.5, 49.5}) dot(x, y, 3, icon_current);
    for (const double x : {15.5, 49.5}) dot(x, 50, 1.5, icon_wall);
    return scene;
}

} // namespace pourbook
