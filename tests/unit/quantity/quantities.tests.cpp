// What people type where a quantity is asked for: the reading expected, or a part of the line of refusal.
// Exact factors: inch 25.4 mm, pound 0.45359237 kg (1959 agreement), troy ounce 31.1034768 g; 0 degC = 273.15 K.
#include "core/quantity/ounce.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "core/workshop/check_entry.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/metals/temperature_words.hpp"
#include "questions/pour/part_words.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using Catch::Matchers::Contains;

namespace {

struct Read {
    const char* text;
    const char* unit; // of the dimension asked for
    double si;
};

struct Refused {
    const char* text;
    const char* unit;
    const char* words; // part of the line
};

constexpr Read read_rows[] = {
    // lengths
    {"25mm", "m", 0.025},
    {"25 mm", "m", 0.025},
    {"25.4mm", "m", 0.0254},
    {"25,4mm", "m", 0.0254},
    {"25,4 mm", "m", 0.0254},
    {"0,125in", "m", 0.003175},
    {"2.5cm", "m", 0.025},
    {"2,5cm", "m", 0.025},
    {"1m", "m", 1},
    {"1in", "m", 0.0254},
    {"1 in", "m", 0.0254},
    {"1 inch", "m", 0.0254},
    {"2 inches", "m", 0.0508},
    {"1\"", "m", 0.0254},
    {"1''", "m", 0.0254},
    {"1″", "m", 0.0254},
    {"1”", "m", 0.0254},
    {"1/2in", "m", 0.0127},
    {"1/2 in", "m", 0.0127},
    {"1/2\"", "m", 0.0127},
    {"3/64in", "m", 0.0254 * 3 / 64},
    {"1 1/2in", "m", 0.0381},
    {"1-1/2in", "m", 0.0381},
    {"1 1/2 \"", "m", 0.0381},
    {"½in", "m", 0.0127},
    {"1½in", "m", 0.0381},
    {"1 ½ in", "m", 0.0381},
    {"2¼\"", "m", 0.05715},
    {"⅜in", "m", 0.009525},
    {"1 ft", "m", 0.3048},
    {"1'", "m", 0.3048},
    {"2 feet", "m", 0.6096},
    {"1 foot", "m", 0.3048},
    {"5 thou", "m", 0.000127},
    {"5 mil", "m", 0.000127},
    {"3/8 in", "m", 0.009525},
    {"100 um", "m", 1e-4},
    {"100µm", "m", 1e-4},
    {"1e-3m", "m", 1e-3},
    {"+3mm", "m", 0.003},
    {".5mm", "m", 0.0005},
    {"1,25mm", "m", 0.00125},
    {"1,2345mm", "m", 0.0012345},
    {"1200,5mm", "m", 1.2005},
    {"1200mm", "m", 1.2},
    // temperatures
    {"20C", "K", 293.15},
    {"20 C", "K", 293.15},
    {"20degC", "K", 293.15},
    {"20 degC", "K", 293.15},
    {"20 deg C", "K", 293.15},
    {"20°C", "K", 293.15},
    {"20 °C", "K", 293.15},
    {"20 ° C", "K", 293.15},
    {"20℃", "K", 293.15},
    {"20 celsius", "K", 293.15},
    {"20 Celsius", "K", 293.15},
    {"68F", "K", 293.15},
    {"68 F", "K", 293.15},
    {"70F", "K", 294.26111111111111},
    {"900F", "K", 755.37222222222222},
    {"68degF", "K", 293.15},
    {"68°F", "K", 293.15},
    {"68℉", "K", 293.15},
    {"68 fahrenheit", "K", 293.15},
    {"-196C", "K", 77.15},
    {"−196 °C", "K", 77.15},
    {"-78.5degC", "K", 194.65},
    {"-78,5C", "K", 194.65},
    {"77K", "K", 77},
    {"77 K", "K", 77},
    {"0K", "K", 0},
    {"4.2K", "K", 4.2},
    {"room", "K", 293.15},
    {"Room temperature", "K", 293.15},
    {"ice", "K", 273.15},
    {"dry ice", "K", 194.65},
    {"dry-ice", "K", 194.65},
    {"liquid nitrogen", "K", 77.355},
    {"liquid-nitrogen", "K", 77.355},
    {"LN2", "K", 77.355},
    {"liquid helium", "K", 4.222},
    {"boiling water", "K", 373.124},
    // masses
    {"2kg", "kg", 2},
    {"2 kg", "kg", 2},
    {"1,5 kg", "kg", 1.5},
    {"5 kilos", "kg", 5},
    {"1 kilo", "kg", 1},
    {"300g", "kg", 0.3},
    {"300 grams", "kg", 0.3},
    {"1 gram", "kg", 1e-3},
    {"8,5g", "kg", 0.0085},
    {"250mg", "kg", 2.5e-4},
    {"1lb", "kg", 0.45359237},
    {"2 lbs", "kg", 0.90718474},
    {"2 pounds", "kg", 0.90718474},
    {"1/2 lb", "kg", 0.226796185},
    {"1 1/2 lb", "kg", 0.680388555},
    {"1oz", "kg", 0.45359237 / 16},
    {"2 ounces", "kg", 0.45359237 / 8},
    {"1ozav", "kg", 0.45359237 / 16},
    {"1ozt", "kg", 0.0311034768},
    {"20dwt", "kg", 0.0311034768},
    {"1t", "kg", 1000},
    {"1 tonne", "kg", 1000},
    // volumes
    {"250ml", "m3", 250e-6},
    {"250 ml", "m3", 250e-6},
    {"250mL", "m3", 250e-6},
    {"250cc", "m3", 250e-6},
    {"250 cm3", "m3", 250e-6},
    {"250 cm³", "m3", 250e-6},
    {"2l", "m3", 2e-3},
    {"2 L", "m3", 2e-3},
    {"1,5 l", "m3", 1.5e-3},
    {"1 litre", "m3", 1e-3},
    {"2 liters", "m3", 2e-3},
    {"10 in3", "m3", 10 * 1.6387064e-5},
    // power, time, speed
    {"2kW", "W", 2000},
    {"2 kW", "W", 2000},
    {"2,2kW", "W", 2200},
    {"1500W", "W", 1500},
    {"8.1s", "s", 8.1},
    {"8,1s", "s", 8.1},
    {"8 sec", "s", 8},
    {"8 seconds", "s", 8},
    {"1/60s", "s", 1.0 / 60},
    {"250ms", "s", 0.25},
    {"5 min", "s", 300},
    {"2 minutes", "s", 120},
    {"1 hour", "s", 3600},
    {"0.5m/s", "m/s", 0.5},
    {"50 mm/s", "m/s", 0.05},
    {"60", "1/s", 60},
    {"60/s", "1/s", 60},
    {"29.97 1/s", "1/s", 29.97},
    {"300 ft/min", "m/s", 1.524},
    {"5 in/s", "m/s", 0.127},
    // force, pressure, energy: standard gravity 9.80665 m/s2 (CGPM 1901)
    {"3 N", "N", 3},
    {"2 lbf", "N", 2 * 0.45359237 * 9.80665},
    {"0,5 kgf", "N", 4.903325},
    {"30 psi", "Pa", 30 * 0.45359237 * 9.80665 / (0.0254 * 0.0254)},
    {"2 kWh", "J", 7.2e6},
    // electrical and magnetic
    {"1.3T", "T", 1.3},
    {"1,3 T", "T", 1.3},
    {"450mT", "T", 0.45},
    {"13kG", "T", 1.3},
    {"1.7uohm.cm", "ohm.m", 1.7e-8},
    {"1,7 µΩ·cm", "ohm.m", 1.7e-8},
    {"58MS/m", "ohm.m", 1 / 58e6},
    {"100%IACS", "ohm.m", 1 / 58e6},
    {"100 % IACS", "S/m", 58e6},
    {"0.36mohm", "ohm", 0.36e-3},
    {"360 µΩ", "ohm", 360e-6},
    // shares: their dimension is 1 and a number may stand bare
    {"3%", "1", 0.03},
    {"3 %", "1", 0.03},
    {"2,5 %", "1", 0.025},
    {"0.03", "1", 0.03},
    {"2000", "1", 2000},
    {"500 ppm", "1", 5e-4},
};

constexpr Refused refused_rows[] = {
    {"24", "m", "24 what? 24mm or 24in"},
    {"0.024", "m", "0.024 what?"},
    {"1/2", "m", "1/2 what? 1/2mm or 1/2in"},
    {"25,4", "m", "25,4 what?"},
    {"20", "K", "20 what? 20C, 20F or 20K"},
    {"77", "K", "77C, 77F or 77K"},
    {"700", "K", "700 what? 700C"},
    {"-196", "K", "-196 what? -196C"},
    {"5", "kg", "5 what? 5kg, 5g or 5lb"},
    {"250", "m3", "250 what? 250ml or 250cm3"},
    {"2", "W", "2 what? 2kW or 2W"},
    {"8.1", "s", "8.1 what? 8.1s"},
    {"1.3", "T", "1.3 what? 1.3T"},
    {"1.7", "ohm.m", "1.7 what? 1.7uohm.cm"},
    {"58", "S/m", "58 what? 58MS/m or 58%IACS"},
    {"0.36", "ohm", "what? 0.36mohm"},
    {"0.5", "m/s", "0.5 what? 0.5m/s"},
    {"20", "USD", "20 what? 20USD"},
    {"1,200 g", "kg", "may be 1.200 or 1200"},
    {"1,130 kg", "kg", "may be 1.130 or 1130"},
    {"1,200,000 g", "kg", "no commas"},
    {"1.234,5 g", "kg", "no commas"},
    {"1 200 g", "kg", "two numbers in a row"},
    {"5KG", "kg", "did you mean 'kg'?"},
    {"5 MM", "m", "did you mean 'mm'?"},
    {"5 IN", "m", "did you mean 'in'?"},
    {"25 mmm", "m", "unknown unit 'mmm'"},
    {"5 apples", "kg", "unknown unit 'apples'"},
    {"20°", "K", "can't read"},
    {"-300C", "K", "0 K"},
    {"-1K", "K", "0 K"},
    {"-500 degF", "K", "0 K"},
    {"20mm", "K", "can't have the unit"},
    {"20C", "m", "can't have the unit"},
    {"3kg", "m", "can't have the unit"},
    {"5%", "m", "can't have the unit"},
    {"2 m", "kg", "can't have the unit"},
    {"twelve", "m", "a number is expected"},
    {"", "m", "a number is expected"},
    {"mm", "m", "a number is expected"},
    {"nan", "m", "a number is expected"},
    {"inf", "m", "a number is expected"},
    {"1e400m", "m", "a number is expected"},
    {"1/0in", "m", ""},
    {"--3mm", "m", "a number is expected"},
    {"20 room", "K", "unknown unit"},
};

Dimension dimension_of(const char* unit) {
    return std::string(unit) == "1" ? Dimension{} : parse_unit(unit)->dimension;
}

} // namespace

TEST_CASE("what people type as a quantity is read as they mean it") {
    for (const Read& row : read_rows) {
        INFO(row.text << " as " << row.unit);
        const Result<double> si = parse_si(row.text, dimension_of(row.unit), "it");
        REQUIRE(si);
        CHECK(*si == Approx(row.si).epsilon(1e-12).margin(1e-15));
    }
}

TEST_CASE("a quantity that may mean two things, or says no unit, is asked back") {
    for (const Refused& row : refused_rows) {
        INFO(row.text << " as " << row.unit);
        const Result<double> si = parse_si(row.text, dimension_of(row.unit), "it");
        REQUIRE_FALSE(si);
        CHECK_THAT(si.problem().text, Contains(row.words));
        CHECK(si.problem().kind == Problem::Kind::unreadable);
    }
}

TEST_CASE("only a script that asks for it has bare numbers in SI, and what is kept says its unit all the same") {
    read_bare_numbers_as_si(true);
    const Result<double> length = parse_si("0.025", dimension_of("m"), "it");
    const Result<PartWords> part = part_from("bar:0.02:0.3");
    const Field power = known_kind("profile").fields[known_kind("profile").at("power")];
    const Result<double> kept = quantity_si(power, "2000");
    read_bare_numbers_as_si(false);
    REQUIRE(length);
    CHECK(*length == 0.025);
    REQUIRE(part);
    CHECK(part->shape->size_m[1] == 0.3);
    CHECK_FALSE(kept);
    CHECK_FALSE(parse_si("0.025", dimension_of("m"), "it"));
}

TEST_CASE("one mm cm or in at the end of a chain serves all of it and another unit does not") {
    const std::pair<const char*, double> bores[] = {{"tube:22:28:400mm", 0.022},       {"tube:22mm:28mm:400mm", 0.022},
                                                    {"tube:2,2:2,8:40cm", 0.022},      {"tube:1/2:5/8:12in", 0.0127},
                                                    {"tube:1/2\":5/8\":12\"", 0.0127}, {"tube:22:28:400 mm", 0.022},
                                                    {"tube:1/2:5/8:12\"", 0.0127},     {"tube:22mm:28:400mm", 0.022}};
    for (const auto& [text, bore_m] : bores) {
        INFO(text);
        const Result<PartWords> part = part_from(text);
        REQUIRE(part);
        CHECK(part->shape->size_m[0] == Approx(bore_m));
    }
    const std::pair<const char*, const char*> refused[] = {{"tube:26:44:300", "26 what? 26mm:44mm:300mm"},
                                                           {"tube:13:15:1m", "13 what? 13mm:15mm:1m"},
                                                           {"tube:13mm:15:1m", "15 what? 13mm:15mm:1m"},
                                                           {"tube:1:2:3ft", "1 what? 1mm:2mm:3ft"},
                                                           {"bar:20x300", "20 what? 20mmx300mm"},
                                                           {"sphere:24", "24 what? 24mm"},
                                                           {"tube:26mm:44mm:300", "300 what? 26mm:44mm:300mm"}};
    for (const auto& [text, words] : refused) {
        INFO(text);
        const Result<PartWords> part = part_from(text);
        REQUIRE_FALSE(part);
        CHECK_THAT(part.problem().text, Contains(words));
    }
}

TEST_CASE("a magnet and a tube follow the same rule, tolerances too") {
    SetupWords words;
    words.magnet = "cylinder:12x10mm";
    const Result<eddy::Magnet> magnet = magnet_shape(words);
    REQUIRE(magnet);
    CHECK(2 * magnet->outer_radius_m == Approx(0.012));
    words.tube = "13+-0.1:15:400mm";
    const Result<DropSetup> tube = tube_setup(words);
    REQUIRE(tube);
    CHECK(2 * tube->inputs.bore_radius_m.value == Approx(0.013));
    CHECK(2 * tube->inputs.bore_radius_m.spread == Approx(0.0001));
    words.magnet = "sphere:24";
    CHECK_THAT(magnet_shape(words).problem().text, Contains("24 what? 24mm"));
    words.tube = "26:44:300";
    CHECK_THAT(tube_setup(words).problem().text, Contains("26 what? 26mm:44mm:300mm"));
}

TEST_CASE("in a list a comma separates, and what may be one decimal number is refused with both readings") {
    const Dimension second = dimension_of("s");
    const std::pair<const char*, std::vector<double>> lists[] = {
        {"8.1s", {8.1}},
        {"8.1, 8.3, 8.0 s", {8.1, 8.3, 8.0}},
        {"4.2s,4.3s", {4.2, 4.3}},
        {"4.2,4.3s", {4.2, 4.3}},
        {"8s,1s", {8, 1}},
        {"8, 1s", {8, 1}},
        {"4,5,6s", {4, 5, 6}},
        {"8,1s; 8,3s", {8.1, 8.3}},
        {"8,1; 8,3 s", {8.1, 8.3}},
    };
    for (const auto& [text, expected] : lists) {
        INFO(text);
        const auto read = parse_si_list(text, second, "a time");
        REQUIRE(read);
        CHECK(*read == expected);
    }
    for (const char* text : {"8,1s", "4,12 s", "8,1,8,3s"}) {
        INFO(text);
        const auto read = parse_si_list(text, second, "a time");
        REQUIRE_FALSE(read);
        CHECK_THAT(read.problem().text, Contains("may be"));
    }
    CHECK_THAT(parse_si_list("8,1s", second, "a time").problem().text, Contains("8.1s or 8s and 1s"));
    CHECK_FALSE(parse_si_list("8.1, 8.3", second, "a time"));
    CHECK(*parse_si_list("252,250", {}, "frames") == std::vector<double>{252, 250});
}

TEST_CASE("prices as they are written") {
    const std::tuple<const char*, double, const char*> rows[] = {{"8.50 EUR/kg", 8.5, "EUR"},
                                                                 {"8,50 EUR/kg", 8.5, "EUR"},
                                                                 {"8,50 €/kg", 8.5, "EUR"},
                                                                 {"€8.50/kg", 8.5, "EUR"},
                                                                 {"€ 8,50/kg", 8.5, "EUR"},
                                                                 {"$4.40/lb", 4.4 / 0.45359237, "USD"},
                                                                 {"4.40 $/lb", 4.4 / 0.45359237, "USD"},
                                                                 {"440 USc/lb", 4.4 / 0.45359237, "USD"},
                                                                 {"£7/kg", 7, "GBP"},
                                                                 {"8 EUR per kg", 8, "EUR"},
                                                                 {"30 USD/ozt", 30 / 0.0311034768, "USD"},
                                                                 {"1130 USD/t", 1.13, "USD"}};
    for (const auto& [text, per_kg, currency] : rows) {
        INFO(text);
        const Result<Money> money = money_from(text);
        REQUIRE(money);
        CHECK(money->per_kg == Approx(per_kg));
        CHECK(money->currency == currency);
    }
    for (const char* text : {"8.50", "8.50 EUR", "EUR/kg", "-5 EUR/kg", "0 EUR/kg", "1,130 USD/kg", "8 kg/EUR"}) {
        INFO(text);
        CHECK_FALSE(money_from(text));
    }
}

TEST_CASE("an ounce of a precious metal is asked back") {
    CHECK(doubtful_ounce("5oz", 92.5));
    CHECK(doubtful_ounce("5 ounces", 92.5));
    CHECK(doubtful_ounce("30 USD/oz", 100));
    CHECK_FALSE(doubtful_ounce("5ozt", 92.5));
    CHECK_FALSE(doubtful_ounce("5ozav", 92.5));
    CHECK_FALSE(doubtful_ounce("5oz", 0));
    CHECK_FALSE(doubtful_ounce("155g", 92.5));
    CHECK_THAT(doubtful_ounce("5oz", 92.5)->text, Contains("5ozt") && Contains("5ozav"));
}

TEST_CASE("workshop fields refuse what no workshop has") {
    const auto fault = [](const char* kind_name, const char* field, const char* text) {
        const Kind& kind = known_kind(kind_name);
        const Result<double> si = quantity_si(kind.fields[kind.at(field)], text);
        return si ? std::string() : si.problem().text;
    };
    CHECK_THAT(fault("stock", "mass", "-1 kg"), Contains("1 mg to 10 t"));
    CHECK_THAT(fault("stock", "mass", "0 kg"), Contains("1 mg to 10 t"));
    CHECK_THAT(fault("stock", "mass", "1e308 kg"), Contains("1 mg to 10 t"));
    CHECK_THAT(fault("profile", "power", "-2 kW"), Contains("10 W to 1 MW"));
    CHECK_THAT(fault("profile", "power", "2"), Contains("2 what? 2kW"));
    CHECK_THAT(fault("profile", "efficiency", "300 %"), Contains("100 %"));
    CHECK_THAT(fault("profile", "efficiency", "30"), Contains("did you mean 30 %?"));
    CHECK_THAT(fault("profile", "lift_maximum", "-5 kg"), Contains("0.1 kg"));
    CHECK_THAT(fault("profile", "furnace_maximum", "-500 degC"), Contains("0 K"));
    CHECK_THAT(fault("profile", "furnace_maximum", "1100"), Contains("1100C"));
    CHECK_THAT(fault("rate", "usd", "-1.08"), Contains("above 0"));
    CHECK_THAT(fault("rate", "usd", "0"), Contains("above 0"));
    CHECK_THAT(fault("crucible", "volume", "-5 cm3"), Contains("0.1 ml"));
    CHECK_THAT(fault("crucible", "volume", "250"), Contains("250ml"));
    CHECK_THAT(fault("trial", "mass", "-5 g"), Contains("1 mg"));
    CHECK(fault("trial", "frame_rate", "60").empty());
    CHECK(fault("stock", "mass", "2,5 kg").empty());
    CHECK(fault("rate", "usd", "1.08").empty());
}
