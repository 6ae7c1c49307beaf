// Readings of a workshop into remanence and conductivity; a magnet past a plate.
#include "questions/drop/measure.hpp"
#include "questions/drop/plate.hpp"

#include "core/quantity/unit.hpp"
#include "core/uncertainty/draws.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;

TEST_CASE("exact readings give back the remanence, whatever their weights", "[eddy]") {
    const eddy::Magnet m{eddy::Shape::cylinder, 6e-3, 0, 10e-3};
    std::vector<eddy::FieldReading> readings;
    for (const double z : {1e-3, 5e-3, 12e-3})
        readings.push_back({1.27 * eddy::axial_field_over_remanence(m, z), 2e-3, z, 1e-4});
    const auto fit = eddy::fitted_remanence(m, readings);
    REQUIRE(fit);
    CHECK(fit->remanence_T == Approx(1.27).epsilon(1e-9));
    CHECK(fit->widened == 1);
    CHECK_FALSE(eddy::fitted_remanence(m, {}));
    CHECK_FALSE(eddy::fitted_remanence(m, {{0.1, 0, 1e-3, 0}}));
}

TEST_CASE("noisy readings hold the true remanence as often as they say", "[eddy]") {
    // Law of large numbers: of 400 seeded trials 68 % lie within one standard uncertainty, give or take 2.3 % (1 s).
    const eddy::Magnet m{eddy::Shape::cylinder, 6e-3, 0, 10e-3};
    constexpr std::size_t trials = 400;
    Draws draws(trials, 3);
    int inside = 0;
    for (std::size_t t = 0; t < trials; ++t) {
        std::vector<eddy::FieldReading> readings;
        for (const double z : {2e-3, 6e-3, 12e-3, 20e-3}) {
            const std::string key = std::to_string(z);
            const double place = z + 1e-4 * draws.of("z" + key)[t];
            readings.push_back(
                {1.27 * eddy::axial_field_over_remanence(m, place) + 1e-3 * draws.of("b" + key)[t], 1e-3, z, 1e-4});
        }
        const auto fit = *eddy::fitted_remanence(m, readings);
        inside += std::abs(fit.remanence_T - 1.27) <= fit.standard_uncertainty_T / fit.widened ? 1 : 0;
    }
    CHECK(inside > 400 * 0.61);
    CHECK(inside < 400 * 0.75);
}

TEST_CASE("readings become words that drop and infer take", "[eddy]") {
    MeasureRequest r;
    r.setup.magnet = "cylinder:12mmx10mm";
    r.setup.magnet_mass = "8.4g";
    const eddy::Magnet m{eddy::Shape::cylinder, 6e-3, 0, 10e-3};
    for (const char* z : {"3mm", "8mm", "15mm"}) {
        const double field = 1.2 * eddy::axial_field_over_remanence(m, std::stod(z) * 1e-3);
        r.fields.push_back(std::to_string(1000 * field) + "mT@" + z);
    }
    r.setup.tube = "13mm:15mm:1m";
    r.current = "5A";
    r.voltage = "1.751mV";
    r.reversed_voltage = "-1.747mV";
    r.span = "0.9m";
    const Result<MeasureResult> result = measure(r);
    REQUIRE(result);
    REQUIRE(result->magnet);
    CHECK(result->magnet->remanence_T == Approx(1.2).epsilon(1e-3));
    CHECK(result->magnet->words.rfind("--br 1.2", 0) == 0);
    REQUIRE(result->tube);
    CHECK(result->tube->resistance_ohm == Approx(1.749e-3 / 5)); // law: U/I, both directions averaged
    const double area = 3.14159265358979 * (7.5e-3 * 7.5e-3 - 6.5e-3 * 6.5e-3);
    CHECK(result->tube->conductivity.value_S_m == Approx(0.9 / (1.749e-3 / 5 * area)).epsilon(1e-6)); // law
    CHECK(result->tube->thermal_voltage_V == Approx(2e-6));
    // The words are read again, with the same standard uncertainty.
    const std::string br = result->magnet->words.substr(5, result->magnet->words.find(" --recoil") - 5);
    const auto back = uncertain_from(br, parse_unit("T")->dimension, "--br");
    REQUIRE(back);
    CHECK(back->standard() == Approx(result->magnet->standard_uncertainty_T).epsilon(0.05));
}

TEST_CASE("readings that can't be meant are refused", "[eddy]") {
    MeasureRequest r;
    CHECK(measure(r)->blank());
    r.setup.magnet = "cylinder:12mmx10mm";
    r.fields = {"0.2T"};
    CHECK(measure(r).problem().text.find("0.21T@5mm") != std::string::npos);
    r.fields = {"12N@1mm"};
    CHECK_FALSE(measure(r));
    r.fields.clear();
    r.current = "5A";
    CHECK(measure(r).problem().text.find("--voltage") != std::string::npos);
    r.voltage = "1mV";
    r.span = "2m";
    r.setup.tube = "13mm:15mm:1m";
    CHECK(measure(r).problem().kind == Problem::Kind::refused); // longer than the tube
}

TEST_CASE("a magnet past a plate", "[eddy]") {
    const Catalogue nothing;
    PlateRequest r;
    r.magnet.magnet = "sphere:12mm";
    r.magnet.br = "1.3T";
    r.magnet.magnet_mass = "6.8g";
    r.height = "20mm";
    r.thickness = "0.05mm"; // thin against the height
    r.resistivity = "58MS/m";
    r.speed = "0.01m/s";
    const Result<PlateResult> slow = plate(nothing, r);
    REQUIRE(slow);
    const double mu0 = eddy::vacuum_permeability, m = slow->moment_A_m2, h = 0.02, w = 5e-5;
    // Limit: low speed over a thin plate, 3 mu0^2 m^2 sigma w v/(128 pi h^4); the plate's own depth takes 2 w/h of it.
    const double law = 3 * mu0 * mu0 * m * m * 58e6 * w * 0.01 / (128 * 3.14159265358979 * std::pow(h, 4));
    CHECK(slow->points.front().drag_N == Approx(law).epsilon(2.5 * w / h));
    // Reitz 1970 (from memory): the peak lies at 1.272 u0, and there drag over lift is u0/v.
    CHECK(slow->peak_drag_speed_m_s == Approx(1.272 * slow->recession_speed_m_s).epsilon(0.02));
    CHECK(slow->points.front().drag_low90_N < slow->points.front().drag_N);
    r.speed = "0.1m/s:100m/s";
    CHECK(plate(nothing, r)->points.size() == 15);
    r.gap = "1mm";
    CHECK_FALSE(plate(nothing, r)); // height and gap
    r.height.clear();
    CHECK(plate(nothing, r)->height_m == Approx(7e-3));
    r.gap = "-1mm";
    CHECK_FALSE(plate(nothing, r));
    r.gap = "1mm";
    r.magnet.magnet = "cylinder:12mmx10mm";
    r.axis = "along";
    CHECK(plate(nothing, r).problem().kind == Problem::Kind::refused); // a lying cylinder too near for a dipole
}
