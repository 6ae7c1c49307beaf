// Amounts in the units of the bench and of the workshop. Exact factors: inch 25.4 mm, pound 0.45359237 kg (1959
// agreement), standard gravity 9.80665 m/s2 (CGPM 1901), 0 degC = 273.15 K, degF = 1.8 degC + 32.
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

constexpr UnitSystem bench = UnitSystem::shown, workshop = UnitSystem::workshop;

struct Said {
    const char* written;
    const char* bench;
    const char* workshop;
};

constexpr Said sentences[] = {
    {"The sprue is 200 mm high.", "The sprue is 200 mm high.", "The sprue is 7.87 in high."},
    {"printed for 3.2 to 6.3 mm at the least", "printed for 3.2 to 6.3 mm at the least",
     "printed for 0.13 to 0.25 in at the least"},
    {"from 20 mm x 40 mm", "from 20 mm x 40 mm", "from 0.79 in x 1.6 in"},
    {"some 15 cm from pacemakers", "some 15 cm from pacemakers", "some 5.9 in from pacemakers"},
    {"must stand 400 degC", "must stand 400 °C", "must stand 752 °F"},
    {"520 to 540 degC some hours", "520 to 540 °C some hours", "968 to 1004 °F some hours"},
    {"cited data end at 373.15 K, 450 K short of it", "cited data end at 100 °C, 450 K short of it",
     "cited data end at 212 °F, 810 °F short of it"},
    {"the mould 120 K in 0.31 s, of which 67 K come", "the mould 120 K in 0.31 s, of which 67 K come",
     "the mould 216 °F in 0.31 s, of which 120 °F come"},
    {"mean over 293.15 K to 773.15 K", "mean over 20 °C to 500 °C", "mean over 68 °F to 932 °F"},
    {"a bath at 77 K", "a bath at 77 K", "a bath at -321 °F"},
    {"weighs 300 g, more than 25 kg", "weighs 300 g, more than 25 kg", "weighs 10.6 oz, more than 55 lb"},
    {"1.6 cm3 in all", "1.6 cm3 in all", "0.098 in3 in all"},
    {"for 0.5 m/s, from below", "for 0.5 m/s, from below", "for 20 in/s, from below"},
    {"a load of 4.45 N", "a load of 4.45 N", "a load of 1 lbf"},
    {"Aluminium: 75 to 210 m/min", "Aluminium: 75 to 210 m/min", "Aluminium: 250 to 689 ft/min"},
    // what stays
    {"22 1e-6/K of expansion", "22 1e-6/K of expansion", "22 1e-6/K of expansion"},
    {"limit 0.05 mg/m3, about 1700 times", "limit 0.05 mg/m3, about 1700 times", "limit 0.05 mg/m3, about 1700 times"},
    {"as it was printed [source, table 3: 660 degC]", "as it was printed [source, table 3: 660 degC]",
     "as it was printed [source, table 3: 660 degC]"},
    {"part tube:22mm:28mm:100mm, CT10 to CT13", "part tube:22mm:28mm:100mm, CT10 to CT13",
     "part tube:22mm:28mm:100mm, CT10 to CT13"},
    {"log10 S = -2700/T + 2.72 (cm3 in 100 g)", "log10 S = -2700/T + 2.72 (cm3 in 100 g)",
     "log10 S = -2700/T + 2.72 (cm3 in 100 g)"},
    {"3 to 5 min, stand 5 min", "3 to 5 min, stand 5 min", "3 to 5 min, stand 5 min"},
};

} // namespace

TEST_CASE("a sentence said in SI is told in the units of its reader", "[say]") {
    for (const Said& s : sentences) {
        INFO(s.written);
        CHECK(in_units_of(bench, s.written) == s.bench);
        CHECK(in_units_of(workshop, s.written) == s.workshop);
        CHECK(in_units_of(UnitSystem::base, s.written) == s.written);
        CHECK(in_units_of(workshop, s.workshop) == s.workshop); // once is enough
    }
}

TEST_CASE("a length of the workshop is told to the sixty-fourth of an inch", "[say]") {
    CHECK(length_text(0.0127, workshop) == "1/2 in");
    CHECK(length_text(0.0254, workshop) == "1 in");
    CHECK(length_text(0.0254 * (1 + 9.0 / 64), workshop) == "1 9/64 in");
    CHECK(length_text(0.02, workshop) == "0.7874 in (25/32)"); // 50.4 sixty-fourths
    CHECK(length_text(1, workshop) == "39.37 in (39 3/8)");
    CHECK(length_text(0.003, workshop) == "0.1181 in"); // a sixty-fourth would be an eighth of it
    CHECK(length_text(0.02, bench) == "20 mm");
    CHECK(length_text(0.1234567, bench, 3) == "123 mm");
    CHECK(sixty_fourths(0.028403) == "1 1/8");
    CHECK(sixty_fourths(0.001).empty());
}

TEST_CASE("masses, forces, volumes and temperatures of the workshop", "[say]") {
    CHECK(mass_text(0.1, workshop) == "3.53 oz");
    CHECK(mass_text(2, workshop) == "4.41 lb");
    CHECK(mass_text(0.1, bench) == "100 g");
    CHECK(metal_mass_unit_for(1, true, workshop).si == Approx(31.1034768e-3)); // the troy ounce, 480 grains
    CHECK(metal_mass_unit_for(1, true, bench).name == "kg");
    CHECK(mass_range_text(0.0007, 0.0014, bench) == "0.70 to 1.4 g");
    CHECK(mass_range_text(0.4, 0.6, workshop) == "0.88 to 1.3 lb");
    CHECK(force_text(4.4482216152605, workshop) == "1.00 lbf");
    CHECK(force_text(0.461, bench) == "0.461 N");
    CHECK(volume_text(16.387064e-6, workshop) == "1.000 in3");
    CHECK(area_text(645.16e-6, workshop) == "1.00 in2");
    CHECK(density_text(27680, workshop, 4) == "1.000 lb/in³");
    CHECK(damping_text(175.127, workshop) == "1.000 lbf·s/in");
    CHECK(temperature_text(293.15, workshop) == "68 °F");
    CHECK(difference_text(0.00073, bench) == "0.73 mK");
    CHECK(difference_text(10, workshop) == "18 °F");
}
