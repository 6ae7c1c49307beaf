#include "questions/drop/fall_time.hpp"

#include "core/quantity/unit.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

/// The amount that goes with the holding, NaN with the same size.
Result<double> held_amount(const Catalogue& catalogue, const FallWords& words, Holding holding) {
    if (!words.mass.empty() && holding != Holding::mass) return unreadable("--mass goes with --holding mass");
    if (!words.budget.empty() && holding != Holding::budget) return unreadable("--budget goes with --holding budget");
    if (holding == Holding::size) return no_number;
    const bool mass = holding == Holding::mass;
    const std::string option = mass ? "--mass" : "--budget", text = mass ? words.mass : words.budget,
                      example = mass ? "300g" : usual_budget(catalogue);
    if (text.empty())
        return unreadable("--holding " + std::string(mass ? "mass" : "budget") +
                          ": a fall needs to know how much: " + option + " " + example);
    const Result<double> amount =
        mass ? parse_si(text, base_dimension(Dimension::kilogram), option) : usd_from(catalogue, text, option);
    if (!amount && !mass) return amount.problem();
    if (!amount || !(*amount > 0) || !std::isfinite(*amount))
        return unreadable(option + " '" + text + "': an amount above zero is expected, such as " + example);
    return *amount;
}

} // namespace

std::string usual_budget(const Catalogue& catalogue, const char* gap) {
    return round_amount(catalogue, 20, gap);
}

Result<std::shared_ptr<const FallTime>> FallTime::from_words(const Catalogue& catalogue, const FallWords& words,
                                                             Holding holding) {
    if (words.setup.magnet.empty() || words.setup.tube.empty())
        return unreadable("fall_time needs a magnet and a tube: --magnet cylinder:12mmx10mm --grade N42 --tube "
                          "13mm:15mm:1m, as for drop");
    Result<DropSetup> setup = drop_setup(catalogue, words.setup);
    if (!setup) return setup.problem();
    const Result<double> held = held_amount(catalogue, words, holding);
    if (!held) return held.problem();
    return std::shared_ptr<const FallTime>(new FallTime(std::move(*setup), holding, *held));
}

FallTime::FallTime(DropSetup setup, Holding holding, double held_si)
    : setup_(std::move(setup)), holding_(holding), held_si_(held_si), properties_{"resistivity"} {
    if (holding != Holding::size) properties_.push_back("density");
    if (holding == Holding::budget) properties_.push_back("price");
    if (holding == Holding::size)
        tube_.emplace(setup_.inputs);
    else
        family_.emplace(setup_.inputs);
}

double FallTime::wall_area_m2(const std::vector<double>& values, double length_m) const {
    if (holding_ == Holding::size) return eddy::nominal_wall_area_m2(setup_.inputs);
    const double per_volume = holding_ == Holding::mass ? values[1] : values[1] * values[2];
    return held_si_ / (per_volume * length_m);
}

double FallTime::wall_m(double area_m2) const {
    const double bore = setup_.inputs.bore_radius_m.value;
    return std::sqrt(bore * bore + area_m2 / std::numbers::pi) - bore;
}

std::string FallTime::fault(const std::vector<double>& values) const {
    if (setup_.inputs.slits.count == 0 && setup_.inputs.off_axis_m == 0) return {};
    const double area = wall_area_m2(values);
    if (family_)
        if (const auto path = family_->path_factor(area); !path) return path.problem().text;
    const double conductivity = 1 / values[0];
    const eddy::FallSetup s = tube_ ? tube_->setup(conductivity) : family_->setup(conductivity, area);
    const auto fast = low_speed_fault(s, eddy::fall(s).terminal_speed_m_s);
    return fast ? fast->text : std::string();
}

double FallTime::value(const std::vector<double>& values) const {
    const double conductivity = 1 / values[0];
    return tube_ ? tube_->fall(tube_->setup(conductivity)).time_s
                 : family_->fall_time_s(conductivity, wall_area_m2(values));
}

std::vector<double> FallTime::samples(const Columns& columns, const std::vector<double>& nominal, Draws& draws) const {
    std::vector<double> conductivities;
    for (const double resistivity : columns[0]) conductivities.push_back(1 / resistivity);
    if (tube_) return eddy::fall_times_s(*tube_, conductivities, tube_->variations(draws));
    std::vector<double> areas, values(columns.size());
    const std::vector<double>& length = draws.of("tube.length");
    for (std::size_t s = 0; s < conductivities.size(); ++s) {
        for (std::size_t i = 0; i < columns.size(); ++i) values[i] = columns[i][s];
        areas.push_back(wall_area_m2(values, setup_.inputs.tube_length_m.at(length[s])));
    }
    return family_->fall_times_s(wall_area_m2(nominal), conductivities, areas, draws);
}

} // namespace pourbook
