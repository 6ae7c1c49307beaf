// A question in the person's own words, read: what is asked, of which metals, with which sizes, temperatures and times.
// Nothing is guessed silently: what was taken is echoed with its unit, and what is missing is named.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

enum class Asked { value, sheet, versus, rank, drop, pour, mix, defect, nothing };

struct QuestionRead {
    Asked asked = Asked::nothing;
    std::vector<std::string> metals; // slugs, in the order named
    std::string property, goal;      // ids
    std::string at;                  // as --at takes it; empty: not said
    std::string magnet, grade, tube; // as the options of drop take them
    std::string part, mix, defect;
    bool from_shelf = false, least = false; // the least of the property is best
    double amount_kg = 0;                   // of the metal whose price is asked; 0: not said
    std::vector<std::string> taken;         // "22 mm bore", "copper (high purity)"
    std::vector<std::string> missing;       // "the magnet's size"

    /// The command that gives the whole answer, its words as a shell takes them: "rank", "--goal", "strongest-brake".
    std::vector<std::string> command() const;
};

QuestionRead read_question(const Catalogue& catalogue, const std::string& words);

/// "pourbook versus copper sterling-silver --at '77.355K'": the command in one line, quoted where needed.
std::string command_line(const QuestionRead& read);

} // namespace pourbook
