#include "gui/state/view_json.hpp"

#include "answers/askers.hpp"

#include <utility>

namespace pourbook {
namespace {

/// Null where no question has this name (a file of another version).
const QuestionTable* question_named(const std::string& name) {
    for (const QuestionTable* question :
         {static_cast<const QuestionTable*>(&pour_question()), static_cast<const QuestionTable*>(&ranged_question())})
        if (question->name == name) return question;
    const Asker* found = asker(name);
    return found ? found->question : nullptr;
}

} // namespace
} // namespace pourbook

/// What is stated, by the fields' names: a text, or several; empty where nothing is. A field that is not known any more
/// is left out.
template <> struct nlohmann::adl_serializer<pourbook::Stated> {
    static void to_json(json& j, const pourbook::Stated& stated) {
        j = {{"question", stated.question().name}};
        for (const pourbook::QuestionField& field : stated.question().fields) {
            if (field.many)
                j[field.name] = stated.texts(field.name);
            else
                j[field.name] = stated.text(field.name);
        }
    }
    static pourbook::Stated from_json(const json& j) {
        const pourbook::QuestionTable* question = pourbook::question_named(j.at("question").get<std::string>());
        if (!question) throw json::other_error::create(501, "no question of this name", &j);
        pourbook::Stated stated(*question);
        for (const pourbook::QuestionField& field : question->fields) {
            if (!j.contains(field.name)) continue;
            if (field.many)
                stated.set_all(field.name, j[field.name].get<pourbook::Texts>());
            else
                stated.set(field.name, j[field.name].get<std::string>());
        }
        return stated;
    }
};

namespace pourbook {

void to_json(nlohmann::json& j, const QuestionsChoice& questions) {
    j = {{"question", questions.question}, {"stated", nlohmann::json::array()}};
    for (const auto& [name, stated] : questions.stated) j["stated"].push_back(stated);
}

void from_json(const nlohmann::json& j, QuestionsChoice& questions) {
    questions.question = j.value("question", questions.question);
    for (const nlohmann::json& one : j.value("stated", nlohmann::json::array())) {
        const Stated stated = one.get<Stated>();
        questions.stated.insert_or_assign(stated.question().name, stated);
    }
}

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(RankChoice, goal, formula, best_high, holding, mass, budget, two_goals,
                                                second_goal, second_formula, second_high, where, only_pinned, on_shelf,
                                                include_unusual, samples)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(CurveChoice, property, log, celsius, log_t)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(CompareChoice, find, sorted_by, falling, folded)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(VersusChoice, first, second)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(SetupWords, magnet, grade, br, surface_field, recoil_permeability,
                                                magnet_mass, magnet_at, tube, slits, off_axis, release, stop)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(WallWords, liner, liner_metal, sleeve, sleeve_metal, below, below_metal,
                                                lower_end, slit_width, slit_length, seam)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(DropChoice, metal, wall, against, second, second_metal, face, nitrogen,
                                                over, range)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixStockWords, mass, metal, paid)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixSheetWords, bare, stocks, composition, treatment, melt_loss, target,
                                                with, phases_at, impurities, measured)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixChoice, words, chart)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(KeptMarks, of)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ViewState, view, pins, marks, splits, letters, dark, workshop_units,
                                                help, conditions, selected, find, rank, questions, pour, pour_face,
                                                curves, versus, compare, drop_setup, drop, mix, shelf, source,
                                                find_source)

namespace {

using Json = nlohmann::json;

/// Its names are a person's metals or panels, not fields of the state.
bool is_map(const std::string& name) {
    return name == "of" || name == "splits";
}

/// Takes each field that fits; the others stay as they were and are named.
void take_fields(Json& whole, Json& into, const Json& from, std::string& odd) {
    for (auto& [name, value] : into.items()) {
        if (!from.contains(name)) continue;
        const bool both = value.is_object() && from[name].is_object();
        if (both && !is_map(name)) {
            take_fields(whole, value, from[name], odd);
            continue;
        }
        const Json before = value;
        if (both)
            value.update(from[name]);
        else
            value = from[name];
        try {
            whole.get<ViewState>();
        } catch (const Json::exception&) {
            value = before;
            odd += (odd.empty() ? "" : ", ") + name;
        }
    }
}

} // namespace

Json json_of(const ViewState& view) {
    return view;
}

ReadView view_from(const Json& from, const ViewState& start) {
    Json view = start;
    std::string odd;
    take_fields(view, view, from, odd);
    return {view.get<ViewState>(), odd};
}

} // namespace pourbook
