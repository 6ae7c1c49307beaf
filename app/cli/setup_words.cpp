#include "cli/setup_words.hpp"

namespace pourbook {

void with_setup(CLI::App* c, SetupWords& words) {
    c->add_option("--magnet", words.magnet,
                  "sphere:D, cylinder:DxL or ring:ODxIDxL, such as cylinder:12mmx10mm; a tolerance as 12+-0.1mm")
        ->required();
    c->add_option("--grade", words.grade, "grade of the magnet, such as N42");
    c->add_option("--br", words.br, "remanence at 20 degC, such as 1.3T or 1.30+-0.02T");
    c->add_option("--surface-field", words.surface_field,
                  "field measured on the axis, such as 0.45T@1mm from the pole face");
    c->add_option("--recoil-permeability", words.recoil_permeability, "recoil permeability, usually 1.05");
    c->add_option("--magnet-mass", words.magnet_mass, "mass of the magnet, such as 8.5g");
    c->add_option("--magnet-at", words.magnet_at, "temperature of the magnet (default 20degC)");
    c->add_option("--tube", words.tube, "ID:OD:LENGTH, such as 13mm:15mm:1m")->required();
}

void with_tube_metal(CLI::App* c, std::string& metal, std::string& resistivity) {
    c->add_option("--metal", metal, "metal of the tube");
    c->add_option("--resistivity", resistivity,
                  "its resistivity or conductivity instead: 1.75uohm.cm, 58MS/m, 101%IACS");
}

} // namespace pourbook
