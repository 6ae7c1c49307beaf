// Published curves of alloys beside ours, as numbers and as the pictures of the help page "laws".
// POURBOOK_WRITE_HELP=1 draws the pictures anew.
#include "answers/picture/letters.hpp"
#include "answers/picture/picture.hpp"
#include "charts/curve_chart.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/constants.hpp"
#include "core/uncertainty/draws.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <cstdlib>
#include <fstream>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

struct PrintedFigure {
    double kelvin, printed;
};

/// One published curve, and the metal with one figure of it from which the law carries.
struct Beside {
    std::string name;
    Metal metal;
    double anchor_K;
    std::vector<PrintedFigure> printed;
};

CurveSpot spot_of(const Metal& m, const char* property, double kelvin, double unit) {
    Conditions c;
    c.temperature_K = kelvin;
    c.story = false;
    const Result<Evaluated> e = evaluate(real_catalogue(), m, property, c);
    INFO(m.name << " at " << kelvin << " K");
    REQUIRE(e);
    const double spread = std::exp(normal_90 * log_spread(e->standard_uncertainty_si / std::abs(e->value_si)));
    const double x = e->value_si / unit;
    return {kelvin, x, x / spread, x * spread, ""};
}

CurveLine line_of(const Beside& b, std::size_t slot, const char* property, double unit) {
    CurveLine line{b.name, b.name, slot, {{}}, {}, "", {}};
    const double low = b.printed.front().kelvin, high = b.printed.back().kelvin;
    for (int i = 0; i <= 60; ++i)
        line.stretches[0].push_back(spot_of(b.metal, property, low + (high - low) * i / 60, unit));
    for (const PrintedFigure& f : b.printed) line.printed.push_back({f.kelvin, f.printed, f.printed, f.printed, ""});
    line.by_law = {true};
    return line;
}

void draw(const CurveChart& chart, const std::string& name) {
    if (!std::getenv("POURBOOK_WRITE_HELP")) return;
    const Result<const Letters*> measure = letters();
    REQUIRE(measure);
    const Palette& colours = palette(false);
    PictureLook look;
    look.ground = colours.ground;
    const auto picture = picture_of(layout(chart, {900, 520, colours, **measure}), PictureFormat::svg, look);
    REQUIRE(picture);
    std::ofstream(std::string(POURBOOK_DB) + "/../app/help/pictures/" + name) << *picture;
}

/// How many published figures lie in the 90 % interval of ours, away from the figure that ours goes through.
double share_inside(const std::vector<Beside>& all, const char* property, double unit) {
    double inside = 0, asked = 0;
    for (const Beside& b : all)
        for (const PrintedFigure& f : b.printed) {
            if (std::abs(f.kelvin - b.anchor_K) < 15) continue;
            const CurveSpot ours = spot_of(b.metal, property, f.kelvin, unit);
            INFO(b.name << " at " << f.kelvin << " K: " << ours.y << " (" << ours.low << " to " << ours.high
                        << "), published " << f.printed);
            CHECK(ours.y == Approx(f.printed).epsilon(0.5)); // no figure of another kind
            inside += ours.low <= f.printed && f.printed <= ours.high ? 1 : 0;
            asked += 1;
        }
    return inside / asked;
}

Metal binary_of(const char* host, double wt, const char* solute, const PrintedFigure& at) {
    Metal m;
    m.slug = m.name = "binary";
    m.kind = "alloy";
    m.family = "copper";
    m.reference_condition = "annealed";
    m.composition = {{host, wt, ""}, {solute, 100 - wt, ""}};
    m.records = {series("resistivity", {{at.kelvin, at.printed * 1e-8}})};
    m.records.front().uncertainty_relative = 0.01;
    return m;
}

/// The reference's own metal with one point left of what it is cited with for a property.
Metal with_one_point(const std::string& slug, const char* property, const std::string& source, double kelvin,
                     std::vector<PrintedFigure>& printed) {
    Metal m = *real_catalogue().metal(slug);
    Record kept;
    for (const Record& r : m.records)
        if (r.property == property && r.citation.source == source && r.points.size() > 1) {
            kept = r;
            break;
        }
    REQUIRE(kept.points.size() > 1);
    for (const Point& p : kept.points) printed.push_back({p.temperature_K, p.value_si});
    std::erase_if(kept.points, [&](const Point& p) { return std::abs(p.temperature_K - kelvin) > 1; });
    REQUIRE(kept.points.size() == 1);
    m.records.erase_if([&](const Record& r) { return r.property == property; });
    m.records.push_back(kept);
    return m;
}

} // namespace

TEST_CASE("published: evaluated binary alloys between 100 and 400 K beside the law") {
    // C. Y. Ho et al., J. Phys. Chem. Ref. Data 12 (1983) 183, as a handbook's table of selected alloys prints it (the
    // table's page read): microohm cm at 100, 273, 293, 300, 350 and 400 K. Ours is carried from the figure at 293 K.
    struct Row {
        const char *name, *host, *solute;
        double wt;
        std::array<double, 6> figures;
    };
    constexpr std::array temperatures = {100.0, 273.0, 293.0, 300.0, 350.0, 400.0};
    std::vector<Beside> all;
    for (const Row& r : {Row{"Al 1 % Cu", "Al", "Cu", 99, {0.531, 2.51, 2.74, 2.82, 3.38, 3.95}},
                         Row{"Al 1 % Mg", "Al", "Mg", 99, {0.958, 2.96, 3.18, 3.26, 3.82, 4.39}},
                         Row{"Al 5 % Mg", "Al", "Mg", 95, {3.01, 5.05, 5.28, 5.36, 5.93, 6.51}},
                         Row{"Al 10 % Mg", "Al", "Mg", 90, {5.42, 7.52, 7.76, 7.85, 8.43, 9.02}},
                         Row{"Cu 1 % Al", "Cu", "Al", 99, {3.22, 4.46, 4.60, 4.65, 5.00, 5.37}},
                         Row{"Cu 5 % Al", "Cu", "Al", 95, {7.92, 9.43, 9.61, 9.68, 10.2, 10.7}},
                         Row{"Cu 10 % Al", "Cu", "Al", 90, {8.71, 10.8, 11.0, 11.1, 11.7, 12.3}}}) {
        Beside b{r.name, binary_of(r.host, r.wt, r.solute, {293, r.figures[2]}), 293, {}};
        for (std::size_t i = 0; i < temperatures.size(); ++i) b.printed.push_back({temperatures[i], r.figures[i]});
        all.push_back(std::move(b));
    }
    CHECK(share_inside(all, "resistivity", 1e-8) >= 0.85);
    CurveChart chart;
    chart.title = "Resistivity of binary alloys: published, and carried from 293 K";
    chart.x_label = "temperature, K";
    chart.y_label = "resistivity, µΩ·cm";
    chart.legend = "marks: published · line and band: ours, with its 90 % interval";
    chart.origin = {{"crc-ho1983"}, real_catalogue().data_version};
    for (std::size_t i = 0; i < all.size(); ++i) chart.lines.push_back(line_of(all[i], i, "resistivity", 1e-8));
    draw(chart, "laws-resistivity.svg");
}

TEST_CASE("published: a low-temperature compilation of alloys beside the law") {
    // Fits of a national laboratory's cryogenic programme, evaluated at their temperatures; in the reference under
    // nist-cryo-al and nist-cryo-fits. Ours is carried from the figure at 300 K, all else of the property taken away.
    struct Row {
        const char *slug, *source;
    };
    std::vector<Beside> all;
    for (const Row& r : {Row{"aluminium-3003", "nist-cryo-al"}, Row{"aluminium-6061", "nist-cryo-al"},
                         Row{"stainless-304", "nist-cryo-fits"}, Row{"inconel-718", "nist-cryo-fits"}}) {
        Beside b{real_catalogue().metal(r.slug)->name, {}, 300, {}};
        b.metal = with_one_point(r.slug, "thermal_conductivity", r.source, 300, b.printed);
        std::erase_if(b.printed, [](const PrintedFigure& f) { return f.kelvin < 70; });
        all.push_back(std::move(b));
    }
    CHECK(share_inside(all, "thermal_conductivity", 1) >= 0.85);
    CurveChart chart;
    chart.title = "Thermal conductivity of alloys in the cold: published, and carried from 300 K";
    chart.x_label = "temperature, K";
    chart.y_label = "thermal conductivity, W/(m·K)";
    chart.log = true;
    chart.legend = "marks: published · line and band: ours, with its 90 % interval";
    chart.origin = {{"nist-cryo-al", "nist-cryo-fits"}, real_catalogue().data_version};
    for (std::size_t i = 0; i < all.size(); ++i) chart.lines.push_back(line_of(all[i], i, "thermal_conductivity", 1));
    draw(chart, "laws-conductivity.svg");
}
