// The fields of the questions about a magnet's fall, its drag, and what a fall says of a tube.
#pragma once

#include "questions/drop/against.hpp"
#include "questions/drop/drag.hpp"
#include "questions/drop/infer.hpp"
#include "questions/drop/measure.hpp"
#include "questions/drop/plate.hpp"
#include "questions/drop/setup_question.hpp"
#include "questions/drop/sweep.hpp"

namespace pourbook {

/// A set-up, and with the fields "against-..." what is different in a second one.
const QuestionOf<DropRequest>& drop_question();
/// Of its fields, those of a wall of several parts and of slits that are more than narrow cuts.
const std::vector<std::string>& wall_fields();
bool states_two(const Stated& stated);
/// Both set-ups, where two are stated. Errors: unreadable.
Result<AgainstRequest> against_request_from(const Stated& stated, const Catalogue& catalogue);

const QuestionOf<DragRequest>& drag_question();

/// Falls timed, or counted in frames of a film.
struct InferAsked {
    InferRequest request;
    std::vector<double> frames;
    std::optional<double> frame_rate_1_s, time_reading_s;
};
const QuestionOf<InferAsked>& infer_question();
/// Errors: unreadable (frames without a rate).
Result<InferRequest> infer_request_from(const Stated& stated, const Catalogue& catalogue);

struct SweepAsked {
    SweepRequest request;
    std::vector<std::string> over; // what is swept, and its range
    std::string hold;
    std::optional<double> mass_kg, budget_usd; // the amount that is held
};
const QuestionOf<SweepAsked>& sweep_question();
/// Errors: unreadable; those of with_range.
Result<SweepRequest> sweep_request_from(const Stated& stated, const Catalogue& catalogue);

const QuestionOf<PlateRequest>& plate_question();
const QuestionOf<MeasureRequest>& measure_question();

} // namespace pourbook
