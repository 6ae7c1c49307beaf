#include "core/materials/metal_family.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

const std::vector<MetalFamily>& families() {
    static const std::vector<MetalFamily> all = {
        {{"copper"}, "copper", {"copper-etp (wire, bar)", "copper-dhp (pipe)", "copper-high-conductivity-cast"}},
        {{"copper-wire", "c110", "c1100", "e-cu", "wire-copper", "busbar", "copper-busbar"},
         "copper-etp",
         {"copper-of", "copper"}},
        {{"copper-pipe", "pipe-copper", "c122", "water-pipe", "plumbing-pipe"}, "copper-dhp", {"copper-etp", "copper"}},
        {{"c101", "c102", "ofhc"}, "copper-of", {"copper-etp", "copper"}},
        {{"brass"}, "brass-cartridge", {"brass-yellow-cast", "brass-free-cutting", "brass-85", "brass-muntz"}},
        {{"c260"}, "brass-cartridge", {"brass-67"}},
        {{"c360"}, "brass-free-cutting", {"brass-muntz"}},
        {{"cast-brass"}, "brass-yellow-cast", {"brass-red-leaded-cast", "brass-silicon-cast"}},
        {{"bronze", "tin-bronze"},
         "bronze-tin-cast",
         {"bronze-gunmetal-88-10-2", "bronze-silicon-cast", "bronze-aluminium-9-cast"}},
        {{"aluminium-bronze", "aluminum-bronze"},
         "bronze-aluminium-9-cast",
         {"bronze-aluminium-cast", "bronze-nickel-aluminium"}},
        {{"phosphor-bronze"}, "bronze-phosphor-5", {"bronze-phosphor-8", "bronze-gear-cast"}},
        {{"silicon-bronze"}, "bronze-silicon-cast", {"bronze-silicon-wrought"}},
        {{"gun-metal"}, "bronze-gunmetal-88-10-2", {"brass-red-leaded-cast (leaded)"}},
        {{"sterling", "925", "ag925", "s925", "scrap-silver"},
         "sterling-silver",
         {"sterling-silver-germanium", "britannia-silver", "silver-999"}},
        {{"coin-silver", "900", "90-silver"}, "coin-silver-900", {"sterling-silver", "silver-835"}},
        {{"999", "fine-silver", "pure-silver"}, "silver-999", {"silver", "sterling-silver"}},
        {{"stainless", "stainless-steel", "inox", "18-8", "18/8", "a2"},
         "stainless-304",
         {"stainless-316", "stainless-430", "stainless-410"}},
        {{"a4"}, "stainless-316", {"stainless-304"}},
        {{"steel", "mild-steel", "carbon-steel"}, "steel-1020", {"steel-1095", "stainless-304"}},
        {{"cast-iron", "grey-iron", "gray-iron"}, "iron-grey", {"iron-ductile", "iron-malleable"}},
        {{"lm25", "al-si7mg", "alsi7mg", "a356", "356", "ac-42100", "wheel-scrap", "alloy-wheel", "alloy-wheels",
          "wheels", "cast-aluminium", "cast-aluminum"},
         "aluminium-a356-cast",
         {"aluminium-319-cast", "aluminium-413-cast"}},
        {{"lm4"}, "aluminium-319-cast", {"aluminium-a356-cast"}},
        {{"lm6", "alsi12"}, "aluminium-413-cast", {"aluminium-a356-cast"}},
        {{"lm24", "a380", "adc12"}, "aluminium-380-cast", {"aluminium-319-cast"}},
        {{"zamak", "pot-metal", "zinc-die-casting"}, "zamak-3", {"zamak-5", "zamak-2", "za-12"}},
        {{"za"}, "za-12", {"za-8", "za-27"}},
        {{"solder"}, "solder-63-37", {"solder-60-40", "solder-sac305", "solder-sn99-cu1"}},
        {{"18k", "18ct", "18kt", "18-carat", "18-karat", "750", "18k-gold", "18ct-gold"},
         "gold-18k-yellow",
         {"gold-18k-white"}},
        {{"14k", "14ct", "14kt", "14-carat", "14-karat", "585", "14ct-gold"}, "gold-14k-yellow", {"gold-18k-yellow"}},
        {{"22k", "22ct", "22kt", "22-carat", "22-karat", "916", "22ct-gold"}, "gold-22k", {"gold", "gold-18k-yellow"}},
        {{"24k", "24ct", "24-carat", "24-karat", "fine-gold", "pure-gold"}, "gold", {"gold-22k"}},
        {{"cupronickel", "copper-nickel"}, "cupronickel-90-10", {"cupronickel-70-30", "constantan"}},
        {{"nickel-silver", "german-silver"}, "nickel-silver-18", {}},
        {{"monel"}, "monel-400", {}},
        {{"inconel"}, "inconel-625", {"inconel-600", "inconel-718"}},
        {{"nichrome"}, "nichrome-80-20", {"fecral"}},
        {{"babbitt", "babbit", "white-metal"}, "babbitt-2", {"pewter", "lead-antimonial"}},
        {{"hard-lead", "wheel-weights", "wheel-weight"}, "lead-antimonial", {"lead"}},
        {{"magnesium-alloy", "az91"}, "magnesium-az91d", {"magnesium-am60b", "magnesium-az31b"}},
        {{"titanium-alloy", "ti64", "grade-5"}, "titanium-6al-4v", {"titanium"}},
        {{"beryllium-copper", "becu"}, "copper-beryllium", {}}};
    return all;
}

} // namespace

const MetalFamily* metal_family(const std::string& word) {
    const std::string slug = as_slug(word);
    for (const MetalFamily& family : families())
        if (std::find(family.words.begin(), family.words.end(), slug) != family.words.end()) return &family;
    return nullptr;
}

const Metal* usual_grade(const Catalogue& catalogue, const std::string& word) {
    const MetalFamily* family = metal_family(word);
    return family ? catalogue.metal(family->usual) : nullptr;
}

std::string family_remark(const Catalogue& catalogue, const std::string& word) {
    const MetalFamily* family = metal_family(word);
    const Metal* metal = family ? catalogue.metal(family->usual) : nullptr;
    if (!metal) return {};
    return "'" + word + "' is taken as " + metal->slug + " (" + metal->name + ")" +
           (family->others.empty() ? "" : "; also: " + joined(family->others));
}

} // namespace pourbook
