// A set-up whose fall is worked out in one metal or in several, for pictures.
#pragma once

#include "questions/drop/drop_question.hpp"
#include "questions/drop/setup_question.hpp"
#include "questions/metals/conditions.hpp"

#include <functional>
#include <string>
#include <vector>

namespace pourbook {

struct FallsAsked {
    DropRequest request;
    std::vector<std::string> metals;
};

/// The fields of magnet, tube and metal; then those of drop_question() that are named.
template <class R, class At> void add_falls(QuestionOf<R>& q, At at, const std::vector<std::string>& also) {
    const auto request = [at](R& r) -> DropRequest& { return std::invoke(at, r).request; };
    const QuestionOf<DropRequest>& drop = drop_question();
    for (const QuestionField& field : setup_question().fields) q.add_one(drop, field.name, request);
    q.place("Metal of the tube");
    q.add(input::needed(input::commas(input::metal("metal", "metals of the tube, separated by commas"))),
          [at](R& r) -> std::vector<std::string>& { return std::invoke(at, r).metals; });
    for (const std::string& field : also) q.add_one(drop, field, request);
    for (const char* field : state_fields) q.add_one(drop, field, request);
    as_casting(q, [request](R& r) -> Conditions& { return request(r).conditions; });
}

/// The falls in all metals; an error where no metal has one.
Result<std::vector<DropOfMetal>> falls(const Catalogue& catalogue, const FallsAsked& asked);

} // namespace pourbook
