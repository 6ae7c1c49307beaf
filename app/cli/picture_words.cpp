#include "cli/picture_words.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/picture/letters.hpp"
#include "answers/picture/picture.hpp"
#include "charts/words.hpp"
#include "platform/files.hpp"

#include <cstdio>

namespace pourbook {
namespace {

struct Size {
    int width = 1600, height = 1000; // pixels
    double scale = 1.6;
};

constexpr Size wide{1920, 1080, 2.6}, tall{1080, 1920, 2.4}; // captions of a video: large letters

Result<Size> size_of(const PictureWords& words) {
    Size out = words.caption == "wide" ? wide : words.caption == "tall" ? tall : Size{};
    char rest = 0;
    const auto fits = [](int pixels) { return pixels >= 200 && pixels <= 10000; };
    if (!words.size.empty() && (std::sscanf(words.size.c_str(), "%dx%d%c", &out.width, &out.height, &rest) != 2 ||
                                !fits(out.width) || !fits(out.height)))
        return Problem{
            Problem::Kind::unreadable,
            "--size '" + words.size + "': WIDTHxHEIGHT of 200 to 10000 pixels is expected, such as 1600x1000", 0};
    if (words.scale > 0) out.scale = words.scale;
    if (out.width / out.scale < 200 || out.height / out.scale < 200)
        return Problem{Problem::Kind::unreadable, "--scale: too large for this size, nothing but letters would be left",
                       0};
    return out;
}

std::string json_of(const Catalogue& catalogue, const PictureWords& words, const Scene& scene,
                    const std::string& date) {
    return json_text({{"file", words.to.empty() ? Json(nullptr) : Json(words.to)},
                      {"title", scene.title},
                      {"conditions", scene.origin.conditions},
                      {"caption", caption_line(catalogue, scene, date)},
                      {"sources", scene.origin.sources},
                      {"data_version", scene.origin.data_version},
                      {"date", date}});
}

std::optional<Problem> write_picture(const PictureWords& words, const Scene& scene, PictureLook look) {
    const Result<PictureFormat> format = picture_format(words.to);
    if (!format) return format.problem();
    look.title = scene.title;
    const Result<std::string> bytes = picture_of(scene, *format, look);
    return bytes ? platform::write_file(words.to, *bytes) : bytes.problem();
}

} // namespace

void with_picture_words(CLI::App* c, PictureWords& words) {
    auto* to = c->add_option("--to", words.to, "the file: .png, .svg or .pdf");
    c->add_option("--format", words.format, "svg, png or pdf to standard output")
        ->check(CLI::IsMember({"svg", "png", "pdf"}))
        ->excludes(to);
    auto* size = c->add_option("--size", words.size, "WIDTHxHEIGHT in pixels (default 1600x1000)");
    c->add_option("--scale", words.scale, "size of letters and lines (default 1.6)")->check(CLI::Range(0.2, 20.0));
    auto* light = c->add_flag("--light", words.light, "light ground (default)");
    c->add_flag("--dark", words.dark, "dark ground")->excludes(light);
    c->add_option("--caption", words.caption,
                  "a picture for a video with large letters: wide (1920x1080) or tall (1080x1920)")
        ->check(CLI::IsMember({"wide", "tall"}))
        ->excludes(size);
    c->add_option("--ground", words.ground, "solid (default) or transparent")
        ->check(CLI::IsMember({"solid", "transparent"}));
    c->add_flag("--caption-line", words.caption_line, "print one line with title, conditions and short sources");
}

int answer_picture(const Context& context, const Catalogue& catalogue, const PictureWords& words,
                   const std::function<Scene(const Canvas&)>& chart) {
    if (words.to.empty() && words.format.empty() && !words.caption_line && !context.json)
        return context.failed(
            {Problem::Kind::unreadable,
             "chart: name the picture, --to FILE.png, .svg or .pdf, or ask for --format svg or --caption-line", 0});
    if (!words.to.empty())
        if (const auto format = picture_format(words.to); !format) return context.failed(format.problem());
    const Result<Size> size = size_of(words);
    if (!size) return context.failed(size.problem());
    const Result<const Letters*> measure = letters();
    if (!measure) return context.failed(measure.problem());
    const Palette& colours = palette(words.dark);
    Canvas canvas{size->width / size->scale, size->height / size->scale, colours, **measure, context.date};
    if (!words.caption.empty())
        canvas.source_name = [&](const std::string& key) { return short_source(catalogue, key); };
    const Scene scene = chart(canvas);
    const Colour ground = words.ground == "solid" ? colours.ground : colours.ground.with_alpha(0);
    if (!words.to.empty())
        if (const auto problem = write_picture(words, scene, {size->scale, ground, "", context.date}))
            return context.failed(*problem);
    if (!words.format.empty()) {
        const Result<std::string> bytes =
            picture_of(scene, *picture_format("." + words.format), {size->scale, ground, scene.title, context.date});
        return bytes ? context.printed(*bytes) : context.failed(bytes.problem());
    }
    if (context.json) return context.printed(json_of(catalogue, words, scene, context.date));
    return context.printed(
        words.caption_line ? folded(caption_line(catalogue, scene, context.date) + "\n", terminal_columns()) : "");
}

} // namespace pourbook
