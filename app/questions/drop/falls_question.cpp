#include "questions/drop/falls_question.hpp"

namespace pourbook {

Result<std::vector<DropOfMetal>> falls(const Catalogue& catalogue, const FallsAsked& asked) {
    Result<std::vector<DropOfMetal>> drops = drop_in_each(catalogue, asked.request, asked.metals);
    if (!drops) return drops;
    for (const DropOfMetal& d : *drops)
        if (d.result) return drops;
    return Problem{Problem::Kind::no_value, drops->front().metal->name + ": " + drops->front().result.problem().text,
                   0};
}

} // namespace pourbook
