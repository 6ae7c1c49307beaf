// The cairo pen: size, ink where it belongs, the same bytes again, every letter drawn.
#include "answers/picture/picture.hpp"
#include "answers/picture/letters.hpp"

#include "charts/marker.hpp"
#include "charts/palette.hpp"

#include <catch2/catch.hpp>

#include <cairo.h>

#include <string>

using namespace pourbook;

namespace {

constexpr Colour white{255, 255, 255}, red{255, 0, 0}, none{0, 0, 0, 0};

Scene one_of_each() {
    Scene s{200, 100, {}, {}};
    s.parts = {Rectangle{{10, 10, 20, 20}, red},
               Polyline{{{50, 20}, {90, 20}}, red, 4, false},
               Polyline{{{50, 30}, {90, 30}}, red, 2, true},
               Band{{{100, 10}, {120, 10}}, {{100, 30}, {120, 30}}, red},
               Circle{{140, 20}, 8, red, 0},
               Circle{{170, 20}, 8, red, 2},
               ClipTo{{0, 50, 40, 50}},
               Rectangle{{20, 60, 100, 20}, red},
               ClipEnd{},
               Text{{60, 70}, "ρ = 1.7 µΩ·cm ≈ ∝ ⁻¹", red, Anchor::start, TextStyle::title}};
    add_marker(s, 1, {190, 20}, 5, red);
    return s;
}

/// The picture read again by cairo's PNG reader.
class Pixels {
public:
    explicit Pixels(const std::string& png) : left_(png) {
        surface_ = cairo_image_surface_create_from_png_stream(
            [](void* self, unsigned char* to, unsigned int count) {
                std::string& left = static_cast<Pixels*>(self)->left_;
                if (left.size() < count) return CAIRO_STATUS_READ_ERROR;
                left.copy(reinterpret_cast<char*>(to), count);
                left.erase(0, count);
                return CAIRO_STATUS_SUCCESS;
            },
            this);
    }
    ~Pixels() { cairo_surface_destroy(surface_); }
    int width() const { return cairo_image_surface_get_width(surface_); }
    int height() const { return cairo_image_surface_get_height(surface_); }
    std::uint32_t at(int x, int y) const {
        const unsigned char* row =
            cairo_image_surface_get_data(surface_) + y * cairo_image_surface_get_stride(surface_);
        return reinterpret_cast<const std::uint32_t*>(row)[x];
    }
    int inked(int x, int y, int w, int h) const {
        int count = 0;
        for (int j = y; j < y + h; ++j)
            for (int i = x; i < x + w; ++i) count += at(i, j) != at(0, 0);
        return count;
    }

private:
    std::string left_;
    cairo_surface_t* surface_;
};

std::string png(const Scene& scene, Colour ground, double scale = 1) {
    const Result<std::string> bytes = picture_of(scene, PictureFormat::png, {scale, ground, "", ""});
    REQUIRE(bytes);
    return *bytes;
}

} // namespace

TEST_CASE("a PNG has the scene's size and ink where the scene has it") {
    const Pixels p(png(one_of_each(), white));
    CHECK(p.width() == 200);
    CHECK(p.height() == 100);
    CHECK(p.at(0, 0) == 0xFFFFFFFF);
    CHECK(p.at(15, 15) == 0xFFFF0000);
    CHECK(p.inked(8, 8, 24, 24) == 400);      // the rectangle, to the pixel
    CHECK(p.inked(45, 15, 50, 10) == 40 * 4); // the line
    const int dashed = p.inked(45, 27, 50, 6);
    CHECK(dashed > 20);
    CHECK(dashed < 40 * 3);
    CHECK(p.inked(98, 8, 24, 24) == 400); // the band
    CHECK(p.at(140, 20) == 0xFFFF0000);
    CHECK(p.at(170, 20) == 0xFFFFFFFF); // hollow
    CHECK(p.at(30, 70) == 0xFFFF0000);
    CHECK(p.at(50, 62) == 0xFFFFFFFF); // clipped away
    CHECK(p.inked(60, 60, 140, 20) > 100);
}

TEST_CASE("scale enlarges the picture and a see-through ground stays so") {
    const Pixels p(png(one_of_each(), none, 2.5));
    CHECK(p.width() == 500);
    CHECK(p.height() == 250);
    CHECK(p.at(0, 0) == 0);
    CHECK(p.at(37, 37) == 0xFFFF0000);
}

TEST_CASE("the same scene and date give the same bytes in each format") {
    for (const PictureFormat f : {PictureFormat::png, PictureFormat::svg, PictureFormat::pdf}) {
        const PictureLook look{1, white, "one of each", "2026-11-25"};
        const auto once = picture_of(one_of_each(), f, look), again = picture_of(one_of_each(), f, look);
        REQUIRE(once);
        REQUIRE(again);
        CHECK(*once == *again);
        CHECK(once->size() > 500);
    }
    const auto pdf_of = [](const char* date) {
        return picture_of(one_of_each(), PictureFormat::pdf, {1, white, "", date});
    };
    const auto pdf = pdf_of("2026-11-25"), later = pdf_of("2026-11-26"); // cairo 1.18 packs the date away
    REQUIRE(pdf);
    REQUIRE(later);
    CHECK(*pdf != *later);
}

TEST_CASE("the ending of the name decides, and another is refused in words") {
    CHECK(*picture_format("a.b/c.PNG") == PictureFormat::png);
    CHECK(*picture_format("x.svg") == PictureFormat::svg);
    CHECK(*picture_format("x.pdf") == PictureFormat::pdf);
    for (const char* name : {"x.jpg", "x", "png", "a.png/x", ""}) {
        const auto f = picture_format(name);
        REQUIRE_FALSE(f);
        CHECK(f.problem().kind == Problem::Kind::unreadable);
    }
}

TEST_CASE("signs that Inter lacks come from DejaVu") {
    const auto l = letters();
    REQUIRE(l);
    CHECK((*l)->covers("ρ µΩ·cm ≈ ∝ → − ⁻¹ ○ ● é"));
    CHECK_FALSE((*l)->covers("漢"));
    CHECK((*l)->glyphs("a∝", TextStyle::label)[1].face != (*l)->glyphs("a∝", TextStyle::label)[0].face);
    CHECK((*l)->width("copper", TextStyle::title) > (*l)->width("copper", TextStyle::label));
    CHECK((*l)->width("\xff", TextStyle::label) > 0); // bytes that are no UTF-8 don't stop it
}
