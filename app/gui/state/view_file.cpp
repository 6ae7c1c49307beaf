#include "gui/state/view_file.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

namespace pourbook {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(RankChoice, goal, formula, best_high, holding, mass, budget, price_form,
                                                two_goals, second_goal, second_formula, second_high, where, only_pinned,
                                                on_shelf, include_unusual, samples)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(CurveChoice, property, log, celsius)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(VersusChoice, first, second)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(SetupWords, magnet, grade, br, surface_field, recoil_permeability,
                                                magnet_mass, magnet_at, tube, slits, off_axis)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(PourWords, metal, parts, process, stl_unit, superheat,
                                                mould_temperature, stock, clear, melt_loss, yield, gating, heel,
                                                shell_wall, sprue, power, efficiency, start, furnace_max,
                                                crucible_volume, mould_max, lift_max, crucible_material, mould_material,
                                                count, no_feeder, acknowledge_hazard)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(DropChoice, metal, against, second, second_metal, over, range)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixStockWords, mass, metal, paid)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixSheetWords, bare, stocks, composition, treatment, melt_loss, target,
                                                with, phases_at, impurities, measured)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(MixChoice, words, chart)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ViewState, view, pins, dark, workshop_units, help, temperature,
                                                condition, selected, find, rank, curves, versus, drop_setup, drop, mix,
                                                pour, shelf, source, find_source)

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
