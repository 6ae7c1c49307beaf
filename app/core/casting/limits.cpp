#include "core/casting/limits.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook::casting {
namespace {

std::string celsius(double kelvin) {
    return trimmed(std::round(kelvin - 273.15), 4) + " degC";
}

class Check {
public:
    Check(const Catalogue& catalogue, const Metal& metal, const Workshop& workshop, const Demand& demand)
        : catalogue_(catalogue), metal_(metal), workshop_(workshop), demand_(demand) {}

    Result<Checked> run() {
        for (const auto step : {&Check::furnace, &Check::crucible, &Check::mould, &Check::volume})
            if (const std::string why = (this->*step)(); !why.empty()) return refused(why);
        weight();
        if (workshop_.empty())
            out_.cautions.push_back(
                "No limits of your workshop were given: whether furnace, crucible and mould stand " +
                celsius(demand_.pour_K) + " and hold the melt is for you to check.");
        return out_;
    }

private:
    std::string furnace() {
        const auto& most = workshop_.furnace_maximum_K;
        if (!most || demand_.pour_K <= *most) return {};
        return "the pour needs " + celsius(demand_.pour_K) + ", the furnace reaches " + celsius(*most) +
               ": a lower-melting alloy, less superheat, or another furnace";
    }

    std::string crucible() {
        if (workshop_.crucible_material.empty()) return {};
        for (const Practice* p : of_material(practices(catalogue_, metal_, "crucible_attack", demand_.process),
                                             workshop_.crucible_material)) {
            out_.sources.push_back(source_of(*p));
            return workshop_.crucible_material + " crucible and " + metal_.name + ": " + p->text;
        }
        const Range limit = range_of(
            of_material(practices(catalogue_, metal_, "crucible_limit", demand_.process), workshop_.crucible_material));
        if (limit.empty()) {
            out_.cautions.push_back("No temperature limit is cited for a crucible of " + workshop_.crucible_material +
                                    ": ask its maker.");
            return {};
        }
        out_.sources.insert(out_.sources.end(), limit.sources.begin(), limit.sources.end());
        if (demand_.pour_K <= limit.low_si) return {};
        return "a crucible of " + workshop_.crucible_material + " is cited up to " + celsius(limit.low_si) +
               ", the pour needs " + celsius(demand_.pour_K);
    }

    std::string mould() {
        for (const Practice* p :
             of_material(practices(catalogue_, metal_, "mould_attack", demand_.process), workshop_.mould_material)) {
            out_.sources.push_back(source_of(*p));
            if (p->grade == "refuse") return workshop_.mould_material + " mould and " + metal_.name + ": " + p->text;
            out_.cautions.push_back(p->text + ".");
        }
        if (std::isnan(demand_.mould_K)) return {};
        if (workshop_.mould_maximum_K && demand_.mould_K > *workshop_.mould_maximum_K)
            return "the mould is to be at " + celsius(demand_.mould_K) + ", yours stands " +
                   celsius(*workshop_.mould_maximum_K) + ": state a lower preheat or another mould";
        for (const Practice* p : practices(catalogue_, metal_, "mould_limit", demand_.process)) {
            if (p->process != demand_.process) continue;
            out_.sources.push_back(source_of(*p));
            const bool same = workshop_.mould_material == p->material;
            if (demand_.mould_K <= p->figure.value_si) continue;
            const std::string why = p->material + " stands preheating to " + celsius(p->figure.value_si) +
                                    ", planned is " + celsius(demand_.mould_K) + ": " + p->text;
            if (same) return why;
            out_.cautions.push_back("If the mould is of " + why + ".");
        }
        return {};
    }

    std::string volume() {
        const auto& holds = workshop_.crucible_volume_m3;
        if (!holds) return {};
        const double fits = std::floor(*holds / demand_.heat_volume_m3);
        if (fits >= 1) {
            out_.castings_per_heat = static_cast<std::size_t>(std::min(fits, 1e6));
            return {};
        }
        return "one casting needs " + trimmed(demand_.heat_volume_m3 * 1e6, 4) + " cm3 of melt, the crucible holds " +
               trimmed(*holds * 1e6, 4) + " cm3: a casting can't be poured from two heats";
    }

    void weight() {
        const Range person = range_of(practices(catalogue_, metal_, "one_person_mass", demand_.process));
        const double most = workshop_.lift_maximum_kg.value_or(person.empty() ? no_number : person.low_si);
        if (!(demand_.heat_mass_kg > most)) return;
        if (!workshop_.lift_maximum_kg)
            out_.sources.insert(out_.sources.end(), person.sources.begin(), person.sources.end());
        out_.cautions.push_back("The melt alone weighs " + trimmed(demand_.heat_mass_kg, 3) + " kg, more than " +
                                trimmed(most, 3) + " kg for one person: two people and a shank, or a tilting furnace.");
    }

    const Catalogue& catalogue_;
    const Metal& metal_;
    const Workshop& workshop_;
    const Demand& demand_;
    Checked out_;
};

} // namespace

bool Workshop::empty() const {
    return !furnace_maximum_K && !crucible_volume_m3 && crucible_material.empty() && mould_material.empty() &&
           !mould_maximum_K && !lift_maximum_kg;
}

Result<Checked> within_limits(const Catalogue& catalogue, const Metal& metal, const Workshop& workshop,
                              const Demand& demand) {
    return Check(catalogue, metal, workshop, demand).run();
}

} // namespace pourbook::casting
