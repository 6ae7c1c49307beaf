#include "answers/picture/film_writer.hpp"

#include "platform/files.hpp"

#include <cstdio>
#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

Problem cannot_write(const std::string& folder, const std::error_code& why) {
    return {Problem::Kind::file, "can't write '" + folder + "': " + why.message(), 0};
}

} // namespace

std::string FilmWriter::file_name(std::size_t frame) {
    char name[32];
    std::snprintf(name, sizeof name, "frame-%05zu.png", frame + 1);
    return name;
}

FilmWriter::FilmWriter(const Film& film, const PictureLook& look, std::string folder)
    : film_(film), look_(look), folder_(std::move(folder)) {}

FilmWriter::~FilmWriter() {
    std::error_code ignored;
    if (!half_.empty() && !finished_) fs::remove_all(half_, ignored);
}

std::optional<Problem> FilmWriter::begin() {
    std::error_code why;
    if (fs::exists(folder_, why))
        return Problem{Problem::Kind::file, "'" + folder_ + "' is there already: name a new folder", 0};
    const std::string half = folder_ + ".part";
    fs::remove_all(half, why);
    if (!fs::create_directories(half, why)) return cannot_write(folder_, why);
    half_ = half;
    return std::nullopt;
}

std::optional<Problem> FilmWriter::write_next() {
    const Result<std::string> bytes = picture_of(film_.scene(written_), PictureFormat::png, look_);
    if (!bytes) return bytes.problem();
    if (auto problem = platform::write_file((fs::path(half_) / file_name(written_)).string(), *bytes)) return problem;
    if (++written_ < film_.frames()) return std::nullopt;
    std::error_code why;
    fs::rename(half_, folder_, why);
    if (why) return cannot_write(folder_, why);
    finished_ = true;
    return std::nullopt;
}

} // namespace pourbook
