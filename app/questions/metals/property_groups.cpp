#include "questions/metals/property_groups.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct Named {
    const char* name;
    std::vector<std::string> ids;
};

const std::vector<Named>& named_groups() {
    static const std::vector<Named> groups = {
        {"brakes a magnet",
         {"conductivity", "resistivity", "temperature_coefficient", "magnetic_behaviour", "magnetic_susceptibility",
          "curie_temperature"}},
        {"melts and pours",
         {"melting_point", "solidus", "liquidus", "pouring_temperature", "boiling_point", "latent_heat",
          "specific_heat", "specific_heat_liquid", "density_liquid"}},
        {"shrinks and grows",
         {"contraction_allowance", "solidification_contraction", "volume_change_on_melting", "linear_expansion",
          "linear_expansion_at"}},
        {"weighs and costs", {"density", "price", "metal_value"}},
        {"sounds and stands",
         {"young_modulus", "poisson_ratio", "speed_of_sound", "tensile_strength", "elongation", "brinell_hardness",
          "vickers_hardness"}},
        {"carries heat", {"thermal_conductivity"}}};
    return groups;
}

} // namespace

std::vector<PropertyGroup> property_groups(const Catalogue& catalogue) {
    std::vector<PropertyGroup> out;
    std::vector<const Property*> rest;
    for (const Property& p : catalogue.properties) rest.push_back(&p);
    for (const Named& named : named_groups()) {
        PropertyGroup group{named.name, {}};
        for (const std::string& id : named.ids)
            if (const Property* p = catalogue.property(id)) {
                group.properties.push_back(p);
                std::erase(rest, p);
            }
        if (!group.properties.empty()) out.push_back(std::move(group));
    }
    if (!rest.empty()) out.push_back({"the rest", rest});
    return out;
}

} // namespace pourbook
