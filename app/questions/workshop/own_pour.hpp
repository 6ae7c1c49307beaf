// What the person's own file says of a pour of a metal: the contraction castings reached, by size and in this mould;
// the yield they had; the lots on the shelf.
//
// Contraction: pattern / casting - 1 of each measured size; a trial that does not say its mould counts for all. Its
// uncertainty holds the two measured sizes (0.1 mm either way) and the scatter between castings
// (db/casting/state.json).
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/workshop/data.hpp"
#include "questions/pour/pour_request.hpp"

namespace pourbook {

OwnPour own_pour(const Catalogue& catalogue, const Metal& metal, const std::string& process, const WorkshopData& own);

/// The request with it; unchanged where its metal is not known.
PourRequest with_own_pour(const Catalogue& catalogue, PourRequest request, const WorkshopData& own);

} // namespace pourbook
