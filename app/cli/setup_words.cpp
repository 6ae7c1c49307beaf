#include "cli/setup_words.hpp"

#include <map>

namespace pourbook {

void with_magnet(CLI::App* c, SetupWords& words, bool required) {
    c->add_option("--magnet", words.magnet,
                  "sphere:D, cylinder:DxL, ring:ODxIDxL or cube:SIDE, such as cylinder:12mmx10mm; a tolerance as "
                  "12+-0.1mm; a stack as "
                  "'2 x cylinder:12mmx10mm opposed gap 5mm'")
        ->required(required);
    c->add_option("--grade", words.grade, "grade of the magnet, such as N42");
    c->add_option("--br", words.br, "remanence at 20 degC, such as 1.3T or 1.30+-0.02T");
    c->add_option("--surface-field", words.surface_field,
                  "field measured on the axis, such as 0.45T@1mm from the pole face");
    c->add_option("--recoil-permeability", words.recoil_permeability, "recoil permeability, usually 1.05");
    c->add_option("--magnet-mass", words.magnet_mass, "mass of the magnet, such as 8.5g");
    c->add_option("--magnet-at", words.magnet_at, "temperature of the magnet (default 20degC)");
}

void with_setup(CLI::App* c, SetupWords& words, bool required) {
    with_magnet(c, words, required);
    c->add_option("--tube", words.tube, "ID:OD:LENGTH, such as 13mm:15mm:1m")->required(required);
    c->add_option("--slits", words.slits, "narrow slits along the whole tube (thin walls)");
    c->add_option("--off-axis", words.off_axis, "distance of the magnet's axis from the tube's, such as 0.5mm");
    c->add_option("--release", words.release,
                  "where the magnet is let go: centre (at the mouth, default), face (its lower face there), or the "
                  "height of its centre above the mouth");
    c->add_option("--stop", words.stop,
                  "where the timing ends: centre (leaves, default), out (wholly out), or the height of the tube's "
                  "lower end above the floor it strikes");
}

void with_holding(CLI::App* c, GoalWords& goal) {
    static const std::map<std::string, Holding> holdings = {
        {"size", Holding::size}, {"mass", Holding::mass}, {"budget", Holding::budget}};
    c->add_option("--holding", goal.holding, "what is equal for all: size (default), mass or budget")
        ->transform(CLI::CheckedTransformer(holdings).description("{size,mass,budget}"));
    c->add_option("--mass", goal.fall.mass, "with --holding mass and a fall: the mass of the tube, such as 300g");
    c->add_option("--budget", goal.fall.budget,
                  "with --holding budget and a fall: what the tube's metal may cost, such as 20USD");
    with_setup(c, goal.fall.setup, false);
}

void with_tube_metal(CLI::App* c, std::string& metal, std::string& resistivity) {
    c->add_option("--metal", metal, "metal of the tube");
    c->add_option("--resistivity", resistivity,
                  "its resistivity or conductivity instead: 1.75uohm.cm, 58MS/m, 101%IACS");
}

} // namespace pourbook
