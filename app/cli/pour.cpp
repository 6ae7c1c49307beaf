#include "cli/context.hpp"

#include "answers/pour/pour_file.hpp"
#include "answers/writers/write_file.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/pour/pour_words.hpp"

namespace pourbook {
namespace {

int written(const Context& context, const PourResult& plan, const Catalogue& catalogue, const std::string& file) {
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    const Result<std::string> bytes = pour_sheet_file(plan, catalogue, *units, file, context.date);
    if (!bytes) return context.failed(bytes.problem());
    if (const auto problem = write_file(file, *bytes)) return context.failed(*problem);
    return context.printed("wrote " + file + "\n");
}

int answer(const Context& context, const PourWords& words, const std::string& to, const Catalogue& catalogue) {
    const Result<PourRequest> request = pour_request_from(words, context.read_mesh);
    if (!request) return context.failed(request.problem());
    const Result<PourResult> plan = pour_in_workshop(catalogue, *request, context.own);
    if (plan && !to.empty()) return written(context, *plan, catalogue, to);
    return context.answered(
        plan, [&](const PourResult& r) { return json_of(r, catalogue); },
        [&](const PourResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
}

void declare_part(CLI::App* c, PourWords& w) {
    c->add_option("metal", w.metal, "the metal to cast")->required();
    c->add_option("--part", w.parts,
                  "tube:BORE:OUTSIDE:LENGTH | bar:DxL | plate:LxWxT | cone:D1:D2:L | sphere:D | ring:OUTSIDE:BORE:L | "
                  "stl:FILE; repeat to add")
        ->required();
    c->add_option("--stl-unit", w.stl_unit, "unit of an STL file: mm (default), cm, m, in");
    c->add_option("--process", w.process, "shell (default), sand, plaster, permanent")
        ->check(CLI::IsMember({"shell", "sand", "plaster", "permanent"}));
    c->add_option("--stock", w.stock, "machining stock on each face, such as 1mm");
    c->add_option("--clear", w.clear, "diameter that must pass the finished bore (the magnet's)");
    c->add_option("--count", w.count, "castings wanted (default 1)")->check(CLI::Range(1, 10000));
}

void declare_melt(CLI::App* c, PourWords& w) {
    c->add_option("--superheat", w.superheat, "above the liquidus, such as 80K (default: printed practice)");
    c->add_option("--mould-temperature", w.mould_temperature, "mould at the pour (default: printed practice)");
    c->add_option("--shell-wall", w.shell_wall, "thickness of a ceramic shell");
    c->add_option("--sprue", w.sprue, "HEIGHT:FOOT, such as 200mm:12mm: speed and time of filling");
    c->add_option("--gating", w.gating, "metal in sprue, runner and cup of one casting (default: printed share)");
    c->add_flag("--no-feeder", w.no_feeder, "plan without a feeder");
    c->add_option("--melt-loss", w.melt_loss, "share lost in melting, such as 3% (default: printed)");
    c->add_option("--heel", w.heel, "metal that stays in the crucible");
    c->add_option("--yield", w.yield, "casting over charge, such as 50%: instead of gating, feeder, loss and heel");
    c->add_option("--power", w.power, "power of an electric furnace, such as 2kW");
    c->add_option("--efficiency", w.efficiency, "share of the furnace's heat in the charge, such as 30%");
    c->add_option("--start", w.start, "temperature of the charge at the start (default 20degC)");
}

void declare_workshop(CLI::App* c, PourWords& w) {
    c->add_flag("--acknowledge-hazard", w.acknowledge_hazard, "lead or magnesium: you are equipped for it");
    c->add_option("--furnace-max", w.furnace_max, "highest temperature of your furnace");
    c->add_option("--crucible", w.crucible_material,
                  "your crucible: graphite, clay-graphite, silicon carbide, alumina, fused silica ...");
    c->add_option("--crucible-volume", w.crucible_volume, "melt your crucible holds, such as 500cm3");
    c->add_option("--mould", w.mould_material, "your mould: fused silica, gypsum investment ...");
    c->add_option("--mould-max", w.mould_max, "highest temperature your mould stands");
    c->add_option("--lift-max", w.lift_max, "what one person lifts, crucible and metal");
}

} // namespace

void declare_pour(Context& context) {
    auto words = std::make_shared<PourWords>();
    CLI::App* c = context.command("pour", "from a metal and a part to a casting plan on one page");
    declare_part(c, *words);
    declare_melt(c, *words);
    declare_workshop(c, *words);
    context.metal_words.push_back(&words->metal);
    auto to = std::make_shared<std::string>();
    c->add_option("--to", *to, "write the sheet to FILE.pdf (A4, for the wall), .html, .md, .txt or .json");
    c->callback([&context, words, to] {
        context.answer = [&context, words, to](const Catalogue& catalogue) {
            return answer(context, *words, *to, catalogue);
        };
    });
}

} // namespace pourbook
