#include "gui/state/view_file.hpp"

#include "answers/askers.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

namespace pourbook {
namespace {

/// Null where no question has this name (a file of another version).
const Question* question_named(const std::string& name) {
    for (const Question* question :
         {static_cast<const Question*>(&pour_question()), static_cast<const Question*>(&ranged_question())})
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
        const pourbook::Question* question = pourbook::question_named(j.at("question").get<std::string>());
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

void to_json(nlohmann::json& j, const AskChoice& ask) {
    j = {{"question", ask.question}, {"stated", nlohmann::json::array()}};
    for (const auto& [name, stated] : ask.stated) j["stated"].push_back(stated);
}

void from_json(const nlohmann::json& j, AskChoice& ask) {
    ask.question = j.value("question", ask.question);
    for (const nlohmann::json& one : j.value("stated", nlohmann::json::array())) {
        const Stated stated = one.get<Stated>();
        ask.stated.insert_or_assign(stated.question().name, stated);
    }
}

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(RankChoice, goal, formula, best_high, holding, mass, budget, two_goals,
                                                second_goal, second_formula, second_high, where, only_pinned, on_shelf,
                                                include_unusual, samples)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(CurveChoice, property, log, celsius)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(VersusChoice, first, second)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(SetupWords, magnet, grade, br, surface_field, recoil_permeability,
                                                magnet_mass, magnet_at, tube, slits, off_axis)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(DropChoice, metal, against, second, second_metal, over, range)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixStockWords, mass, metal, paid)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixSheetWords, bare, stocks, composition, treatment, melt_loss, target,
                                                with, phases_at, impurities, measured)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixChoice, words, chart)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ViewState, view, pins, dark, workshop_units, help, conditions, selected,
                                                find, rank, ask, pour, curves, versus, drop_setup, drop, mix, shelf,
                                                source, find_source)

Result<ViewState> read_view(const std::string& file, const ViewState& start) {
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored)) return start;
    try {
        std::ifstream in(file);
        return nlohmann::json::parse(in).get<ViewState>();
    } catch (const nlohmann::json::exception& e) {
        return Problem{Problem::Kind::unreadable, "state file '" + file + "' can't be read (" + e.what() + ")", 0};
    }
}

std::optional<Problem> write_view(const std::string& file, const ViewState& view) {
    namespace fs = std::filesystem;
    const auto failed = [&](const std::string& why) {
        return Problem{Problem::Kind::refused, "state file '" + file + "' can't be written: " + why, 0};
    };
    std::error_code error;
    const fs::path target(file), fresh(file + ".new");
    if (target.has_parent_path()) fs::create_directories(target.parent_path(), error);
    {
        std::ofstream out(fresh, std::ios::trunc);
        out << nlohmann::json(view).dump(2) << '\n';
        if (!out.flush()) return failed("no room or no permission");
    }
    fs::rename(fresh, target, error);
    if (error) return failed(error.message());
    return std::nullopt;
}

} // namespace pourbook
