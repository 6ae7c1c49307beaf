#include "gui/state/view_file.hpp"

#include "gui/state/view_json.hpp"
#include "platform/files.hpp"

#include <filesystem>
#include <fstream>

namespace pourbook {
namespace {

using Json = nlohmann::json;

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
    const auto [view, odd] = view_from(from, start);
    if (odd.empty()) return {view, ""};
    return {view, "state file '" + file + "': left out what can't be read: " + odd + set_aside(file)};
}

std::optional<Problem> write_view(const std::string& file, const ViewState& view) {
    std::error_code error;
    const std::filesystem::path folder = std::filesystem::path(file).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, error);
    const auto problem =
        platform::write_file(file, json_of(view).dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
    if (!problem) return std::nullopt;
    return refused("what is chosen in the window can't be kept: " + problem->text);
}

ViewState without_files(ViewState view) {
    view.view = "rank";
    Texts parts = view.pour.texts("part");
    std::erase_if(parts, [](const std::string& part) { return part.starts_with("stl:"); });
    view.pour.set_all("part", parts);
    return view;
}

} // namespace pourbook
