#include "gui/state/view_file.hpp"

#include "answers/askers.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

namespace pourbook {

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
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ViewState, view, pins, dark, workshop_units, help, selected, find, rank,
                                                curves, versus, drop_setup, drop, mix, shelf, source, find_source)

namespace {

/// By the fields' names: a text, or several.
nlohmann::json json_of(const Stated& stated) {
    nlohmann::json out = nlohmann::json::object();
    for (const QuestionField& field : stated.question().fields) {
        const Texts& texts = stated.texts(field.name);
        if (field.many)
            out[field.name] = texts;
        else if (!texts.empty())
            out[field.name] = texts.back();
    }
    return out;
}

/// What the file says of the question's fields; what it doesn't know stays as it is.
void read_stated(const nlohmann::json& file, const char* name, Stated& stated) {
    if (!file.contains(name) || !file[name].is_object()) return;
    for (const QuestionField& field : stated.question().fields) {
        const auto value = file[name].find(field.name);
        stated.set_all(field.name, {});
        if (value == file[name].end()) continue;
        if (value->is_array())
            stated.set_all(field.name, value->get<Texts>());
        else if (value->is_string())
            stated.set(field.name, value->get<std::string>());
    }
}

void read_asked(const nlohmann::json& file, AskChoice& ask) {
    if (!file.contains("ask") || !file["ask"].is_object()) return;
    const nlohmann::json& asked = file["ask"];
    if (asked.contains("question") && asked["question"].is_string()) ask.question = asked["question"];
    for (const Asker& asker : askers()) {
        const std::string& name = asker.question->name;
        if (!asked.contains(name)) continue;
        read_stated(asked, name.c_str(), ask.stated.try_emplace(name, *asker.question).first->second);
    }
}

} // namespace

Result<ViewState> read_view(const std::string& file, const ViewState& start) {
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored)) return start;
    try {
        std::ifstream in(file);
        const nlohmann::json json = nlohmann::json::parse(in);
        ViewState view = json.get<ViewState>();
        read_stated(json, "conditions", view.conditions);
        view.pour = start.pour;
        read_stated(json, "pour", view.pour);
        read_asked(json, view.ask);
        return view;
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
        nlohmann::json json(view);
        json["conditions"] = json_of(view.conditions);
        json["pour"] = json_of(view.pour);
        json["ask"]["question"] = view.ask.question;
        for (const auto& [name, stated] : view.ask.stated) json["ask"][name] = json_of(stated);
        out << json.dump(2) << '\n';
        if (!out.flush()) return failed("no room or no permission");
    }
    fs::rename(fresh, target, error);
    if (error) return failed(error.message());
    return std::nullopt;
}

} // namespace pourbook
