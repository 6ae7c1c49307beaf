// Every question with its answer in words: a new one is one line of askers.cpp, and the command line and the window
// both have it.
#pragma once

#include "answers/writers/documents.hpp"
#include "questions/fields.hpp"
#include "questions/workshop/with_workshop.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// What a question is answered with.
struct Asking {
    const Catalogue& catalogue;
    const WorkshopData& own;
    UnitSystem units = UnitSystem::shown;
    std::string date; // "2026-11-25"
};

struct Asker {
    const QuestionTable* question;
    /// Errors: those of the reading and of the answer.
    std::function<Result<std::string>(const Stated&, const Asking&)> text, json;
    /// The answer as a table with its sources; empty where it has none.
    std::function<Result<Document>(const Stated&, const Asking&)> table = {};
    /// The answer alone, and its numbers alone; empty where it has none.
    std::function<Result<std::string>(const Stated&, const Asking&)> brief = {}, plain = {};
};

const std::vector<Asker>& askers();
/// Null where there is none.
const Asker* asker(const std::string& question);

} // namespace pourbook
