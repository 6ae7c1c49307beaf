// A film on its way into numbered pictures: a folder of its own that gets its name last, so that what was stopped or
// failed leaves nothing half-written.
#pragma once

#include "answers/picture/picture.hpp"
#include "charts/film.hpp"

#include <optional>
#include <string>

namespace pourbook {

class FilmWriter {
public:
    /// Of one picture in a film's folder: "frame-00001.png" is the first.
    static std::string file_name(std::size_t frame);
    static constexpr std::size_t most_frames = 20000;

    /// The film outlives it.
    FilmWriter(const Film& film, const PictureLook& look, std::string folder);
    ~FilmWriter();
    FilmWriter(const FilmWriter&) = delete;
    FilmWriter& operator=(const FilmWriter&) = delete;

    /// Errors: file (the folder is there already, or can't be made).
    std::optional<Problem> begin();
    /// The next picture; behind the last the folder gets its name. Errors: those of picture_of; file.
    std::optional<Problem> write_next();
    bool finished() const { return finished_; }
    std::size_t written() const { return written_; }

private:
    const Film& film_;
    PictureLook look_;
    std::string folder_, half_;
    std::size_t written_ = 0;
    bool finished_ = false;
};

} // namespace pourbook
