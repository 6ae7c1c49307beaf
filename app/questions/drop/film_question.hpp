// A film of one to four falls side by side. Magnet, tube, metal and temperature may be stated several times: the first
// of each belongs to the first fall, the second to the second; what is stated once is the same for all.
#pragma once

#include "questions/drop/drop_question.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct FilmAsked {
    double rate_1_s = 60; // frames a second of the film
    double slow = 1;      // how many times slower than life
    int width = 1920, height = 1080;
    std::string ground = "dark"; // dark | light | clear
};

const QuestionOf<FilmAsked>& film_question();

/// The falls in their order. Errors: unreadable (more than four, numbers that don't match); those of drop_setup; a fall
/// that can't be, where it is the only one.
Result<std::vector<DropOfMetal>> film_falls(const Stated& stated, const Catalogue& catalogue);

} // namespace pourbook
