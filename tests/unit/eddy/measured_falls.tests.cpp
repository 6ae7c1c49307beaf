#include "questions/workshop/measured_falls.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

SetupWords asked() {
    SetupWords words;
    words.magnet = "cylinder:15mmx15mm";
    words.br = "1.3T";
    words.tube = "18mm:24mm:400mm";
    return words;
}

Trial fall(const std::string& metal, const std::string& tube, std::vector<double> times_s) {
    Trial t;
    t.metal = metal;
    t.magnet = "cylinder:15mmx15mm";
    t.br = "1.3T";
    t.tube = tube;
    t.times_s = std::move(times_s);
    return t;
}

MeasuredFalls measured(const std::vector<Trial>& trials, const SetupWords& setup = asked(), double kelvin = 293.15) {
    Conditions conditions;
    conditions.temperature_K = kelvin;
    const auto out = measured_falls(testing::real_catalogue(), trials, setup, conditions);
    REQUIRE(out);
    return *out;
}

} // namespace

TEST_CASE("trials with the same magnet and tube are gathered by metal, however their sizes are written") {
    const MeasuredFalls found =
        measured({fall("copper", "18mm:24mm:400mm", {12.0}), fall("copper", "1.8cm:2.4cm:40cm", {12.3, 12.1}),
                  fall("aluminium", "18mm:24mm:400mm", {7.5})});
    CHECK(found.at("copper") == std::vector<double>{12.0, 12.3, 12.1});
    CHECK(found.at("aluminium") == std::vector<double>{7.5});
}

TEST_CASE("another tube, magnet, temperature or path is another question") {
    const std::vector<Trial> trial = {fall("copper", "18mm:24mm:400mm", {12.0})};
    CHECK(measured(trial).size() == 1);
    CHECK(measured({fall("copper", "18mm:26mm:400mm", {12.0})}).empty());
    CHECK(measured(trial, asked(), 77).empty());
    for (const auto& [field, words] : {std::pair{&SetupWords::magnet, "sphere:15mm"},
                                       {&SetupWords::br, "1.2T"},
                                       {&SetupWords::magnet_at, "60degC"},
                                       {&SetupWords::slits, "1"}}) {
        SetupWords other = asked();
        other.*field = words;
        CHECK(measured(trial, other).empty());
    }
    Trial cold = trial.front();
    cold.temperature_K = 77;
    CHECK(measured({cold}).empty());
    CHECK(measured({cold}, asked(), 77).size() == 1);
}

TEST_CASE("a trial of no known metal, or of another kind, is passed over") {
    Trial weighing = fall("copper", "18mm:24mm:400mm", {12.0});
    weighing.type = TrialType::weighing;
    CHECK(measured({weighing, fall("", "18mm:24mm:400mm", {12.0}), fall("copper", "a tube", {12.0})}).empty());
}
