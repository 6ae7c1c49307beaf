#include "gui/state/view_file.hpp"

#include "answers/askers.hpp"
#include "answers/writers/write_file.hpp"

#include <nlohmann/json.hpp>

#include <signal.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
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
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(DropChoice, metal, against, second, second_metal, face, nitrogen, over,
                                                range)
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

/// Takes each field that fits; the others stay as they were and are named.
void take_fields(Json& whole, Json& into, const Json& from, std::string& odd) {
    for (auto& [name, value] : into.items()) {
        if (!from.contains(name)) continue;
        if (value.is_object() && from[name].is_object()) {
            take_fields(whole, value, from[name], odd);
            continue;
        }
        const Json before = std::exchange(value, from[name]);
        try {
            whole.get<ViewState>();
        } catch (const Json::exception&) {
            value = before;
            odd += (odd.empty() ? "" : ", ") + name;
        }
    }
}

/// What can't be used is kept for whoever wants to look.
std::string set_aside(const std::string& file) {
    std::error_code error;
    const std::string kept = file + ".unreadable";
    std::filesystem::copy_file(file, kept, std::filesystem::copy_options::overwrite_existing, error);
    return error ? "" : "; the file as it was is '" + kept + "'";
}

} // namespace

KeptView read_view(const std::string& file, const ViewState& start) {
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored)) return {start, ""};
    const auto unusable = [&](const std::string& why) {
        return KeptView{start,
                        "state file '" + file + "' can't be read (" + why + "): starting afresh" + set_aside(file)};
    };
    if (!std::filesystem::is_regular_file(file, ignored)) return unusable("it is no ordinary file");
    std::ifstream in(file, std::ios::binary);
    const Json from = Json::parse(in, nullptr, false);
    if (!from.is_object()) return unusable("it is not what this program writes");
    Json view = start;
    std::string odd;
    take_fields(view, view, from, odd);
    if (odd.empty()) return {view.get<ViewState>(), ""};
    return {view.get<ViewState>(), "state file '" + file + "': left out what can't be read: " + odd + set_aside(file)};
}

std::optional<Problem> write_view(const std::string& file, const ViewState& view) {
    std::error_code error;
    const std::filesystem::path folder = std::filesystem::path(file).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, error);
    const auto problem = write_file(file, Json(view).dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
    if (!problem) return std::nullopt;
    return refused("what is chosen in the window can't be kept: " + problem->text);
}

namespace {

std::array<char, 4096> mark_of_this_window{};

/// Ended on request (a log-out, Ctrl-C): no fault of what the window was reading.
void end_on_request(int number) {
    ::unlink(mark_of_this_window.data());
    ::signal(number, SIG_DFL);
    ::raise(number);
}

} // namespace

RunningMark::RunningMark(const std::string& state_file) {
    if (state_file.empty()) return;
    mark_ = state_file + ".running";
    pid_t last = 0;
    std::ifstream(mark_) >> last;
    left_behind_ = last > 0 && last != ::getpid() && ::kill(last, 0) != 0;
    if (last > 0 && !left_behind_)
        mark_.clear(); // another window's, which lives
    else
        std::ofstream(mark_) << ::getpid() << '\n';
    if (mark_.empty() || mark_.size() >= mark_of_this_window.size()) return;
    mark_.copy(mark_of_this_window.data(), mark_.size());
    for (const int request : {SIGTERM, SIGHUP, SIGINT}) ::signal(request, end_on_request);
}

RunningMark::~RunningMark() {
    std::error_code ignored;
    if (!mark_.empty()) std::filesystem::remove(mark_, ignored);
}

void RunningMark::leave_at_once(int code) const {
    std::error_code ignored;
    if (!mark_.empty()) std::filesystem::remove(mark_, ignored);
    std::_Exit(code);
}

ViewState without_files(ViewState view) {
    view.view = "rank";
    Texts parts = view.pour.texts("part");
    std::erase_if(parts, [](const std::string& part) { return part.starts_with("stl:"); });
    view.pour.set_all("part", parts);
    return view;
}

} // namespace pourbook
