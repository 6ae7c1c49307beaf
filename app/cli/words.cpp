#include "cli/words.hpp"

namespace pourbook {

int exit_code(const Problem& problem) {
    switch (problem.kind) {
    case Problem::Kind::unreadable:
        return 2;
    case Problem::Kind::refused:
        return 5;
    case Problem::Kind::file:
        return 4;
    default:
        return 3;
    }
}

Result<UnitSystem> units_from(const std::string& word) {
    if (word == "si") return UnitSystem::shown;
    if (word == "workshop") return UnitSystem::workshop;
    return Problem{Problem::Kind::unreadable, "--units '" + word + "': si or workshop is expected", 0};
}

} // namespace pourbook
