#include "questions/workshop/keep.hpp"

#include "core/workshop/check_entry.hpp"
#include "core/workshop/data.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/pour/part_words.hpp"
#include "questions/rank/goal_plan.hpp"
#include "questions/workshop/own_metal.hpp"
#include "questions/workshop/trial.hpp"

#include <algorithm>

namespace pourbook {
namespace {

using Checked = Result<bool>;

Problem missing(const std::string& what, const std::string& type) {
    return {Problem::Kind::unreadable, "a " + type + " trial needs " + what, 0};
}

Checked goal_is_sound(const Catalogue& catalogue, const SavedGoal& goal) {
    GoalWords words;
    words.formula = goal.formula;
    words.where = goal.where;
    const Result<GoalPlan> plan = plan_goal(catalogue, words);
    if (!plan) return plan.problem();
    return true;
}

Checked drop_is_sound(const Catalogue& catalogue, const Trial& t) {
    if (t.times_s.empty() && t.frames.empty()) return missing("times, or frames with their frame rate", "drop");
    if (!t.frames.empty() && !t.frame_rate_per_s) return missing("the frame rate", "drop");
    const auto positive = [](double x) { return x > 0; };
    if (!std::all_of(t.times_s.begin(), t.times_s.end(), positive) ||
        !std::all_of(t.frames.begin(), t.frames.end(), positive) || (t.frame_rate_per_s && !(*t.frame_rate_per_s > 0)))
        return missing("times, frames and a frame rate above zero", "drop");
    const Result<DropSetup> setup = drop_setup(catalogue, setup_of(t));
    if (!setup) return setup.problem();
    return true;
}

Checked four_wire_is_sound(const Trial& t) {
    SetupWords words;
    words.tube = t.tube;
    const Result<DropSetup> setup = tube_setup(words);
    if (!setup) return setup.problem();
    return true;
}

Checked shape_is_sound(const std::string& words) {
    const Result<PartWords> part = part_from(words);
    if (!part) return part.problem();
    if (!part->shape)
        return Problem{Problem::Kind::unreadable, "part '" + words + "': a measured shape is expected, not a mesh", 0};
    return true;
}

Checked weighing_is_sound(const Catalogue& catalogue, const Trial& t) {
    if (t.part.empty() && t.mass_in_water.empty()) return missing("part (its size), or mass_in_water", "weighing");
    if (!t.mass_in_water.empty()) {
        std::vector<std::string> unused;
        if (const Result<Weighed> weighed = weighed_from(catalogue, t, unused); !weighed) return weighed.problem();
    }
    if (t.part.empty()) return true;
    const Checked part = shape_is_sound(t.part);
    if (!part || t.pattern.empty()) return part;
    const Checked pattern = shape_is_sound(t.pattern);
    if (!pattern) return pattern;
    if (part_from(t.part)->shape->form != part_from(t.pattern)->shape->form)
        return Problem{Problem::Kind::unreadable, "part and pattern must be the same shape", 0};
    return true;
}

Checked trial_is_sound(const Catalogue& catalogue, const Kind& kind, const Entry& entry) {
    if (const auto fields = missing_fields(kind, entry); !fields.empty()) {
        std::string names;
        for (const Field* f : fields) names += (names.empty() ? "" : ", ") + f->name + " (" + f->meaning + ")";
        return missing(names, text_of(kind, entry, "type"));
    }
    const Trial t = trial_from(entry);
    switch (t.type) {
    case TrialType::drop:
        return drop_is_sound(catalogue, t);
    case TrialType::four_wire:
        return four_wire_is_sound(t);
    default:
        return weighing_is_sound(catalogue, t);
    }
}

Checked value_is_sound(const Catalogue& catalogue, const OwnValue& value) {
    const Metal* metal = catalogue.metal(value.metal);
    if (!metal || !metal->own)
        return Problem{Problem::Kind::refused,
                       "'" + value.metal +
                           "' is a metal of the reference: enter one of your own first, `pourbook own-metal add NAME "
                           "--like " +
                           value.metal + "`",
                       1};
    const Result<Record> record = own_record(catalogue, value);
    if (!record) return record.problem();
    return true;
}

Checked means_something(const Catalogue& catalogue, const Kind& kind, const Entry& entry) {
    if (kind.name == "goal") return goal_is_sound(catalogue, goal_from(entry));
    if (kind.name == "trial") return trial_is_sound(catalogue, kind, entry);
    if (kind.name == "value") return value_is_sound(catalogue, own_value_from(entry));
    if (kind.name == "metal") {
        const Result<Metal> metal = own_metal(catalogue, own_metal_from(entry));
        if (!metal) return metal.problem();
    }
    return true;
}

} // namespace

Result<Entry> sound(const Catalogue& catalogue, const Kind& kind, Entry entry) {
    const Result<Entry> fields = checked(kind, std::move(entry), catalogue);
    if (!fields) return fields;
    const Checked whole = means_something(catalogue, kind, *fields);
    if (whole) return fields;
    Problem p = whole.problem();
    p.column = 0;
    return p;
}

Result<Kept> keep(Workshop& workshop, const Kind& kind, const Entry& entry, const std::string& words) {
    const auto batch = workshop.begin(words);
    if (!batch) return batch.problem();
    const Result<Put> put = (*batch)->put(kind, entry);
    if (!put) return put.problem();
    const std::int64_t id = (*batch)->last_id();
    const Result<bool> done = (*batch)->commit();
    if (!done) return done.problem();
    const Result<Entry> now = workshop.numbered(kind, id);
    if (!now) return now.problem();
    return Kept{*put, *now};
}

Result<bool> remove(Workshop& workshop, const Kind& kind, const std::vector<Entry>& entries, const std::string& words) {
    const auto batch = workshop.begin(words);
    if (!batch) return batch.problem();
    for (const Entry& entry : entries) {
        const Result<bool> removed = (*batch)->remove(kind, entry.id);
        if (!removed) return removed;
    }
    return (*batch)->commit();
}

} // namespace pourbook
