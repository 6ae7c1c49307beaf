// Words of the shop that name a kind of metal or a foreign grade and no metal of the reference: the usual grade is
// taken, the answer says which, and the others are offered. Which grade is usual: common practice, no source.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct MetalFamily {
    std::vector<std::string> words; // small letters, hyphens for blanks
    std::string usual;              // slug
    std::vector<std::string> others;
};

/// The family a word names, capitals and blanks alike; nullptr where it names none.
const MetalFamily* metal_family(const std::string& word);

/// The usual grade of the word's family; nullptr where the word names none.
const Metal* usual_grade(const Catalogue& catalogue, const std::string& word);

/// "'brass' is taken as brass-cartridge (...); also: brass-yellow-cast, ..."; empty for a word that names one metal.
std::string family_remark(const Catalogue& catalogue, const std::string& word);

} // namespace pourbook
