// The fields of a magnet, a tube and its metal, as the questions about them share them.
#pragma once

#include "questions/drop/magnet_words.hpp"
#include "questions/metals/conditions.hpp"

#include <string>
#include <utility>
#include <vector>

namespace pourbook {

/// magnet, grade, br, surface-field, recoil-permeability, magnet-mass, magnet-at.
const QuestionOf<SetupWords>& magnet_question();
/// The same with tube, slits, off-axis, release, stop.
const QuestionOf<SetupWords>& setup_question();

/// Each field's name with its words, in the order in which setup_question() has them.
std::vector<std::pair<const char*, const std::string*>> setup_texts(const SetupWords& words);
/// States those of the words that the question has fields for.
void state_setup(Stated& stated, const SetupWords& words);

/// metal and resistivity: one of them.
template <class R> void add_tube_metal(QuestionOf<R>& question) {
    question.add(input::metal("metal", "the metal"), &R::metal);
    question.add(
        input::words("resistivity", "its resistivity or conductivity instead", "1.75uohm.cm, 58MS/m or 101%IACS"),
        &R::resistivity);
}

/// samples and seed, where a request has both.
template <class R> void add_samples(QuestionOf<R>& question, const std::string& usual, double low, double high) {
    question.add(input::whole_number("samples", "samples for the interval", usual, low, high), &R::samples);
    question.add(input::whole_number("seed", "seed of the samples", "1", 0, 1e18), &R::seed);
}

} // namespace pourbook
