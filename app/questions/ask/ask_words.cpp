#include "questions/ask/ask_words.hpp"

#include <cctype>
#include <vector>

namespace pourbook {
namespace {

struct Meaning {
    const char* id;
    std::vector<const char*> words;
};

// In the order in which they are tried: what is said in several words before what one word says.
const std::vector<Meaning>& property_words() {
    static const std::vector<Meaning> all = {
        {"temperature_coefficient", {"temperature coefficient"}},
        {"thermal_conductivity",
         {"thermal conductivity", "heat conductivity", "conduct heat", "conducts heat", "thermal"}},
        {"specific_heat", {"specific heat", "heat capacity"}},
        {"latent_heat", {"latent heat", "heat of fusion"}},
        {"pouring_temperature",
         {"pouring temperature", "pour temperature", "pour at", "how hot do i pour", "how hot to pour"}},
        {"boiling_point", {"boiling point", "boil", "boils"}},
        {"curie_temperature", {"curie", "curie point"}},
        {"magnetic_behaviour", {"magnetic", "stick to a magnet", "ferromagnetic"}},
        {"contraction_allowance",
         {"contraction", "shrinkage", "shrink", "shrinks", "contract", "contracts", "pattern allowance", "pattern",
          "how much bigger", "how much smaller"}},
        {"young_modulus", {"young's modulus", "youngs modulus", "stiffness", "stiff", "stiffer", "stiffest"}},
        {"tensile_strength", {"tensile strength", "strength", "strong", "stronger", "strongest"}},
        {"brinell_hardness", {"hardness", "how hard", "harder", "hardest", "softer", "softest"}},
        {"elongation", {"elongation", "ductility"}},
        {"speed_of_sound", {"speed of sound"}},
        {"linear_expansion", {"thermal expansion", "expansion", "expand", "expands"}},
        {"solidus", {"solidus"}},
        {"liquidus",
         {"liquidus", "melting point", "melting temperature", "melt", "melts", "melting", "freeze", "freezes"}},
        {"resistivity", {"resistivity", "resistance"}},
        {"conductivity", {"conductivity", "conductive", "conduct", "conducts", "iacs", "conductor"}},
        {"density",
         {"density", "dense", "denser", "densest", "heavy", "heavier", "heaviest", "light", "lighter", "lightest",
          "weigh", "weighs", "specific gravity"}},
        {"price",
         {"price", "cost", "costs", "expensive", "worth", "how much is", "cheap", "cheaper", "cheapest", "dearer",
          "dearest"}}};
    return all;
}

struct Aim {
    const char* id;
    std::vector<const char*> words, and_one_of; // empty: nothing else is needed
};

const std::vector<Aim>& goal_words() {
    static const std::vector<const char*> money = {"money",  "cheap", "cheapest", "cost", "price",
                                                   "dollar", "euro",  "budget",   "costs"};
    static const std::vector<const char*> mass = {"weight", "mass", "light", "lightest", "kilo", "gram"};
    static const std::vector<const char*> brake = {"brake", "brakes", "braking", "slow", "slows", "slowest", "slower",
                                                   "drag",  "eddy",   "magnet",  "fall", "falls", "longest"};
    static const std::vector<Aim> all = {
        {"braking-per-cost", brake, money},
        {"braking-per-mass", brake, mass},
        {"light-conductor", {"light conductor", "lightest conductor"}, {}},
        {"heat-spreading-per-cost", {"heat spreading", "spreads heat", "heat sink", "heatsink", "spread heat"}, {}},
        {"heavy-for-the-money", {"counterweight", "counterweights", "ballast", "flywheel", "weight for the money"}, {}},
        {"heavy-for-the-money", {"heaviest"}, money},
        {"least-energy-to-melt", {"least heat", "least energy", "least fuel", "least gas"}, {}},
        {"least-contraction", {"truest", "true to its pattern", "least contraction", "contracts least"}, {}},
        {"least-shrink", {"least shrinkage", "shrinks least", "shrink least"}, {}},
        {"narrow-freezing", {"narrow freezing", "short freezing", "freezing range"}, {}},
        {"low-drift-resistor", {"resistor", "steady resistance"}, {}},
        {"lowest-pour",
         {"lowest melting", "melts lowest", "easiest to melt", "lowest pour", "melts first", "lowest temperature"},
         {}},
        {"strongest-brake", brake, {}}};
    return all;
}

bool any_of_words(const std::string& text, const std::vector<const char*>& words) {
    for (const char* one : words)
        if (speaks_of(text, one)) return true;
    return false;
}

bool is_word_letter(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

} // namespace

bool speaks_of(const std::string& text, const std::string& words) {
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        const std::size_t end = at + words.size();
        if ((at == 0 || !is_word_letter(text[at - 1])) && (end == text.size() || !is_word_letter(text[end])))
            return true;
    }
    return false;
}

bool asks_for_least(const std::string& question) {
    return any_of_words(question, {"lowest", "least", "smallest", "lightest", "cheapest", "softest", "coolest"});
}

std::string property_asked(const Catalogue& catalogue, const std::string& question, bool element) {
    const bool melt = any_of_words(question, {"molten", "liquid", "melted", "melt"});
    if (melt && any_of_words(question, {"density", "dense", "heavy"}) && catalogue.property("density_liquid"))
        return "density_liquid";
    for (const Meaning& m : property_words())
        if (any_of_words(question, m.words) && catalogue.property(m.id))
            return element && std::string(m.id) == "liquidus" && catalogue.property("melting_point") ? "melting_point"
                                                                                                     : m.id;
    for (const Property& p : catalogue.properties)
        if (speaks_of(question, p.id)) return p.id;
    return {};
}

std::string goal_asked(const Catalogue& catalogue, const std::string& question) {
    for (const Goal& g : catalogue.goals)
        if (speaks_of(question, g.id)) return g.id;
    for (const Aim& aim : goal_words())
        if (any_of_words(question, aim.words) && (aim.and_one_of.empty() || any_of_words(question, aim.and_one_of)) &&
            catalogue.goal(aim.id))
            return aim.id;
    return {};
}

} // namespace pourbook
