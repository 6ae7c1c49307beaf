// A casting plan as people ask for it: words with units into a request. An empty word leaves the place to its default.
#pragma once

#include "questions/pour/part_words.hpp"
#include "questions/pour/pour.hpp"

#include <functional>
#include <string>
#include <vector>

namespace pourbook {

struct PourWords {
    std::string metal;
    std::vector<std::string> parts;
    std::string process = "shell";
    std::string stl_unit, superheat, mould_temperature, stock, clear, melt_loss, yield, gating, heel, shell_wall, sprue;
    std::string power, efficiency, start, furnace_max, crucible_volume, mould_max, lift_max;
    std::string crucible_material, mould_material;
    std::size_t count = 1;
    bool no_feeder = false;
    bool acknowledge_hazard = false;
    bool operator==(const PourWords&) const = default;
};

/// Reads an STL file.
using MeshReader = std::function<Result<casting::Mesh>(const std::string&)>;

/// Errors: unreadable, naming the word ("--superheat '9 apples': ..."); those of the mesh.
Result<PourRequest> pour_request_from(const PourWords& words, const MeshReader& read_mesh);

/// All words in one line: equal for equal requests, so that an answer can be kept under it.
std::string key_of(const PourWords& words);

/// Why one word can't be read (its name as above, without the dashes); empty if it can.
std::string pour_word_fault(const std::string& name, const std::string& word);

} // namespace pourbook
