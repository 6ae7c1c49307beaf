// The fields of the questions about metals: one value, a whole sheet, several side by side, which there are, a curve.
#pragma once

#include "questions/metals/compare.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/metals/curve.hpp"
#include "questions/metals/sheet.hpp"
#include "questions/metals/value.hpp"

namespace pourbook {

struct MetalsRequest {
    std::string find;
    std::vector<std::string> where;
    Conditions conditions;
};

const QuestionOf<ValueRequest>& value_question();
const QuestionOf<SheetRequest>& sheet_question();
const QuestionOf<CompareRequest>& compare_question();
const QuestionOf<MetalsRequest>& metals_question();

} // namespace pourbook
