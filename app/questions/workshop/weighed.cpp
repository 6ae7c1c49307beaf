#include "questions/workshop/trial.hpp"

#include "core/casting/contraction.hpp"
#include "core/quantity/unit.hpp"
#include "core/workshop/weighing.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/pour/part_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

constexpr double mass_relative = 0.005, size_half_m = 0.1e-3; // see the header
constexpr double water_half_K = 1, room_half_K = 5;           // of a temperature that was read, and of one that wasn't
constexpr double impossible = 2;                              // standard uncertainties below no porosity at all
constexpr double sponge = 0.3, disagree = 3;

double even(double half_width) {
    return half_width / std::sqrt(3.0);
}

/// Half of the last digit that was written of a quantity, in its SI unit.
double half_digit_si(const std::string& text, double si) {
    std::string number;
    for (const char c : text) {
        if (!std::isdigit(static_cast<unsigned char>(c)) && c != '.' && c != ',') break;
        number += c == ',' ? '.' : c;
    }
    const std::size_t point = number.find('.');
    const double digits = point == std::string::npos ? 0 : static_cast<double>(number.size() - point - 1);
    const double written = std::atof(number.c_str());
    return written > 0 ? si / written * std::pow(10, -digits) / 2 : mass_relative * si;
}

/// Relative standard uncertainty of the volume, each size even within its half width.
double volume_doubt(const casting::Shape& shape, double volume_m3) {
    double variance = 0;
    for (std::size_t i = 0; i < casting::size_names(shape.form).size(); ++i) {
        casting::Shape larger = shape;
        larger.size_m[i] += size_half_m;
        const Result<casting::Solid> changed = casting::measured(larger);
        if (!changed) continue; // a wall thinner than that
        variance += std::pow(even(changed->volume_m3 / volume_m3 - 1), 2);
    }
    return std::sqrt(variance);
}

Result<double> mass_of(const std::string& text, const char* name) {
    return parse_si(text, base_dimension(Dimension::kilogram), name);
}

class Weigh {
public:
    Weigh(const Catalogue& catalogue, const Trial& trial, std::vector<std::string>& remarks)
        : catalogue_(catalogue), t_(trial), remarks_(remarks) {
        if (t_.temperature_K) conditions_.temperature_K = *t_.temperature_K;
        if (!t_.condition.empty()) conditions_.condition = t_.condition;
    }

    Result<Weighed> run() {
        const Result<double> mass = mass_of(t_.mass, "mass");
        if (!mass) return mass.problem();
        out_.mass_kg = *mass;
        if (t_.charge_kg) out_.yield = out_.mass_kg / *t_.charge_kg;
        if (!t_.part.empty())
            if (const auto fault = by_size()) return *fault;
        if (!t_.mass_in_water.empty())
            if (const auto fault = by_water()) return *fault;
        compare();
        return std::move(out_);
    }

private:
    std::optional<Problem> by_size() {
        const Result<PartWords> part = part_from(t_.part);
        if (!part) return part.problem();
        const Result<casting::Solid> solid = casting::measured(*part->shape);
        if (!solid) return solid.problem();
        out_.volume_m3 = solid->volume_m3;
        out_.density_kg_m3 = out_.by_size_kg_m3 = out_.mass_kg / out_.volume_m3;
        out_.density_uncertainty = out_.by_size_uncertainty =
            out_.density_kg_m3 * std::hypot(mass_relative, volume_doubt(*part->shape, out_.volume_m3));
        contraction(*part->shape);
        return {};
    }

    std::optional<Problem> by_water() {
        const Result<double> water = mass_of(t_.mass_in_water, "mass in water");
        if (!water) return water.problem();
        Weighing w;
        w.air_kg = out_.mass_kg;
        w.air_half_kg = half_digit_si(t_.mass, w.air_kg);
        w.water_kg = *water;
        w.water_half_kg = half_digit_si(t_.mass_in_water, w.water_kg);
        w.water_K = t_.water_K.value_or(room_temperature_K);
        w.water_half_K = t_.water_K ? water_half_K : room_half_K;
        const Result<WeighedDensity> d = density_in_water(w);
        if (!d) return d.problem();
        if (std::isfinite(out_.by_size_kg_m3) &&
            std::abs(out_.by_size_kg_m3 - d->density_kg_m3) >
                disagree * std::hypot(out_.by_size_uncertainty, d->standard_uncertainty))
            remarks_.push_back("size and water disagree on the density: a shape that is not quite the one stated, open "
                               "pores that drank, or a slip in a reading");
        out_.in_water = true;
        out_.density_kg_m3 = d->density_kg_m3;
        out_.density_uncertainty = d->standard_uncertainty;
        out_.volume_m3 = d->volume_m3;
        return {};
    }

    void compare() {
        const Result<const Metal*> found = find_metal(catalogue_, t_.metal);
        if (!found) {
            remarks_.push_back("nothing to compare with: the trial names no metal");
            return;
        }
        compare_density(**found);
        if (const auto free = casting::free_contraction({catalogue_, **found, conditions_}))
            out_.predicted_contraction = free->strain.value_si;
    }

    void compare_density(const Metal& m) {
        const Result<Evaluated> expected = evaluate(catalogue_, m, "density", conditions_);
        if (!expected) {
            remarks_.push_back("no porosity: " + expected.problem().text);
            return;
        }
        out_.expected_density = *expected;
        out_.porosity = 1 - out_.density_kg_m3 / expected->value_si;
        out_.porosity_uncertainty =
            (1 - *out_.porosity) * std::hypot(out_.density_uncertainty / out_.density_kg_m3,
                                              expected->standard_uncertainty_si / expected->value_si);
        if (*out_.porosity < -impossible * out_.porosity_uncertainty)
            remarks_.push_back("denser than " + m.slug +
                               " can be: check the sizes, the mass and the metal; no pore is negative");
        if (*out_.porosity - impossible * out_.porosity_uncertainty > sponge)
            remarks_.push_back("lighter than any casting of " + m.slug +
                               ": a third of it would be air; check the sizes, the mass and the metal");
    }

    void contraction(const casting::Shape& part) {
        if (t_.pattern.empty()) return;
        const Result<PartWords> pattern = part_from(t_.pattern);
        if (!pattern || !pattern->shape || pattern->shape->form != part.form) return; // refused when it was entered
        const std::vector<std::string> names = casting::size_names(part.form);
        for (std::size_t i = 0; i < names.size(); ++i)
            out_.contraction.push_back({names[i], pattern->shape->size_m[i] / part.size_m[i] - 1,
                                        std::sqrt(2.0) * even(size_half_m) / part.size_m[i],
                                        casting::is_bore(part.form, i)});
    }

    const Catalogue& catalogue_;
    const Trial& t_;
    std::vector<std::string>& remarks_;
    Conditions conditions_;
    Weighed out_;
};

} // namespace

Result<Weighed> weighed_from(const Catalogue& catalogue, const Trial& trial, std::vector<std::string>& remarks) {
    return Weigh(catalogue, trial, remarks).run();
}

} // namespace pourbook
