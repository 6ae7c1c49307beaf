// Questions as people put them, and the command that each one means. The set-ups are invented.
#pragma once

#include <utility>

namespace pourbook::testing {

constexpr std::pair<const char*, const char*> asked_questions[] = {
    // a figure
    {"density of copper", "value copper density"},
    {"How dense is lead?", "value lead density"},
    {"what is the conductivity of sterling silver", "value sterling-silver conductivity"},
    {"resistivity of copper at 77K", "value copper resistivity --at 77K"},
    {"resistivity of copper in liquid nitrogen", "value copper resistivity --at \"liquid nitrogen\""},
    {"copper resistivity in dry ice", "value copper resistivity --at \"dry ice\""},
    {"silver conductivity at 100 C", "value silver conductivity --at 100C"},
    {"aluminium conductivity at 212F", "value aluminium conductivity --at 212F"},
    {"copper density at -40 °C", "value copper density --at -40C"},
    {"When does bismuth melt?", "value bismuth melting_point"},
    {"melting point of tin", "value tin melting_point"},
    {"what temperature does gunmetal melt at", "value bronze-gunmetal-88-10-2 liquidus"},
    {"liquidus of za-12", "value za-12 liquidus"},
    {"what does zinc cost", "value zinc price"},
    {"price of gold", "value gold price"},
    {"how much is silver", "value silver price"},
    {"thermal conductivity of aluminium", "value aluminium thermal_conductivity"},
    {"does brass conduct heat", "value brass-cartridge thermal_conductivity"},
    {"latent heat of zinc", "value zinc latent_heat"},
    {"specific heat of iron", "value iron specific_heat"},
    {"how much does aluminium expand", "value aluminium linear_expansion"},
    {"is nickel magnetic", "value nickel magnetic_behaviour"},
    {"curie point of iron", "value iron curie_temperature"},
    {"boiling point of zinc", "value zinc boiling_point"},
    {"pattern allowance for aluminium a356", "value aluminium-a356-cast contraction_allowance"},
    {"density of copper and lead", "compare copper lead --show density"},
    {"price of copper, tin and zinc", "compare copper tin zinc --show price"},
    // one metal
    {"copper", "sheet copper"},
    {"sterling silver", "sheet sterling-silver"},
    {"925", "sheet sterling-silver"},
    {"tell me about silicon bronze", "sheet bronze-silicon-cast"},
    {"stainless", "sheet stainless-304"},
    {"what is LM25", "sheet aluminium-a356-cast"},
    // one against another
    {"copper vs silver", "versus copper silver"},
    {"is sterling silver a better brake than copper", "versus sterling-silver copper --goal strongest-brake"},
    {"does copper beat aluminium for the money as a brake", "versus copper aluminium --goal braking-per-cost"},
    {"which brakes better, brass or bronze", "versus brass-cartridge bronze-tin-cast --goal strongest-brake"},
    {"copper versus aluminium braking per weight", "versus copper aluminium --goal braking-per-mass"},
    {"is silver a better brake than copper at 77 K", "versus silver copper --goal strongest-brake --at 77K"},
    {"za-12 or gunmetal as a counterweight", "versus za-12 bronze-gunmetal-88-10-2 --goal heavy-for-the-money"},
    {"which conducts better, copper or gold", "versus copper gold --formula conductivity"},
    // which metal
    {"what brakes a magnet best", "rank --goal strongest-brake"},
    {"cheapest brake", "rank --goal braking-per-cost"},
    {"best brake for its weight", "rank --goal braking-per-mass"},
    {"strongest brake on my shelf", "rank --goal strongest-brake --from stock"},
    {"lightest conductor", "rank --goal light-conductor"},
    {"what is easiest to melt", "rank --goal lowest-pour"},
    {"best heat sink for the money", "rank --goal heat-spreading-per-cost"},
    {"which metal has the highest density", "rank --formula density"},
    {"best ballast", "rank --goal heavy-for-the-money"},
    // a fall
    {"how long does a 20x20 mm N42 magnet fall through a copper tube, 22 mm bore, 30 mm outside, 400 mm long",
     "drop --magnet cylinder:20mmx20mm --grade N42 --tube 22mm:30mm:400mm --metal copper-dhp"},
    {"drop a 12 mm ball n42 through 13:15:400mm brass",
     "drop --magnet sphere:12mm --grade N42 --tube 13mm:15mm:400mm --metal brass-cartridge"},
    {"fall of a 15 x 15 mm n45 magnet, bore 18 mm, wall 3 mm, 400 mm long, za-12, in liquid nitrogen",
     "drop --magnet cylinder:15mmx15mm --grade N45 --tube 18mm:24mm:400mm --metal za-12 --at \"liquid nitrogen\""},
    {"how long will a magnet fall in copper", "drop --metal copper"},
    // casting
    {"pour silicon bronze tube:18:24:400mm", "pour bronze-silicon-cast --part tube:18:24:400mm"},
    {"cast sterling bar:10mmx50mm", "pour sterling-silver --part bar:10mmx50mm"},
    {"1kg copper + 100g tin", "mix \"1kg copper + 100g tin\""},
    {"what is 1.2kg sterling-silver + 300g silver", "mix \"1.2kg sterling-silver + 300g silver\""},
    {"round holes in my casting", "defect \"round holes\""},
    {"why is there shrinkage", "defect shrinkage"},
    // as they are typed into the window's field
    {"silicon bronze against gunmetal", "versus bronze-silicon-cast bronze-gunmetal-88-10-2"},
    {"18 mm magnet through 20/26 brass", "drop --magnet cylinder:18mmx18mm --metal brass-cartridge"},
    {"drop 20 mm N52 through 22/30 copper", "drop --magnet cylinder:20mmx20mm --grade N52 --metal copper"},
    {"za-12", "sheet za-12"},
    {"rank my shelf", "rank --from stock"},
    {"why do castings sink", "defect sink"},
};

} // namespace pourbook::testing
