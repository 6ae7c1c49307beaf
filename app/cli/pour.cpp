#include "cli/context.hpp"

#include "core/quantity/unit.hpp"
#include "report/pour_report.hpp"
#include "usecases/part_words.hpp"

namespace pourbook {
namespace {

struct PourWords {
    PourRequest request;
    std::vector<std::string> parts;
    std::string stl_unit, superheat, mould_temperature, stock, clear, melt_loss, yield, gating, heel, shell_wall;
    std::string sprue, power, efficiency, start, furnace_max, crucible_volume, mould_max, lift_max;
    bool no_feeder = false;
};

Dimension dimension_of(const char* unit) {
    const Result<Unit> parsed = parse_unit(unit);
    return parsed ? parsed->dimension : Dimension{};
}

Problem wrong(const std::string& option, const std::string& word, const std::string& why) {
    return {Problem::Kind::unreadable, option + " '" + word + "': " + why, 0};
}

/// Reads an option into its place; an empty word leaves the place alone. Returns the problem's text, empty if fine.
template <class Place>
std::string read(const std::string& option, const std::string& word, const Dimension& dimension, const char* what,
                 const char* example, Place& place) {
    if (word.empty()) return {};
    const Result<double> value = parse_si(word, dimension, what);
    if (!value) return wrong(option, word, value.problem().text + ": write " + example).text;
    place = *value;
    return {};
}

/// A difference of temperatures: 80, 80K, 80degC and 144degF are alike.
std::string read_superheat(const std::string& word, std::optional<double>& place) {
    if (word.empty()) return {};
    std::string_view rest = word;
    double number = 0;
    const bool read = take_number(rest, number);
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    const Result<Unit> unit = rest.empty() ? Result<Unit>(Unit{base_dimension(Dimension::kelvin)}) : parse_unit(rest);
    if (!read || !unit || !(unit->dimension == base_dimension(Dimension::kelvin)))
        return wrong("--superheat", word, "a difference of temperature is expected: write 80K or 144degF").text;
    place = number * unit->scale;
    return {};
}

/// "HEIGHT" or "HEIGHT:FOOT" (foot: diameter at the lower end).
std::string read_sprue(const std::string& word, PourRequest& request) {
    const std::size_t colon = word.find(':');
    const Dimension length = base_dimension(Dimension::metre);
    std::string fault =
        read("--sprue", word.substr(0, colon), length, "a length", "200mm:12mm", request.sprue_height_m);
    if (fault.empty() && colon != std::string::npos)
        fault = read("--sprue", word.substr(colon + 1), length, "a length", "200mm:12mm", request.sprue_foot_m);
    return fault;
}

std::string read_numbers(PourWords& w) {
    PourRequest& r = w.request;
    casting::Workshop& shop = r.workshop;
    const Dimension length = base_dimension(Dimension::metre), mass = base_dimension(Dimension::kilogram),
                    kelvin = base_dimension(Dimension::kelvin), volume = dimension_of("m3"), watt = dimension_of("W"),
                    one{};
    for (const std::string& fault :
         {read_superheat(w.superheat, r.superheat_K), read_sprue(w.sprue, r),
          read("--mould-temperature", w.mould_temperature, kelvin, "a temperature", "650degC", r.mould_K),
          read("--start", w.start, kelvin, "a temperature", "20degC", r.start_K),
          read("--stock", w.stock, length, "a length", "1mm", r.stock_m),
          read("--clear", w.clear, length, "a length", "12mm", r.clear_m),
          read("--shell-wall", w.shell_wall, length, "a length", "9mm", r.shell_wall_m),
          read("--melt-loss", w.melt_loss, one, "a share", "3%", r.melt_loss),
          read("--yield", w.yield, one, "a share", "50%", r.yield),
          read("--efficiency", w.efficiency, one, "a share", "30%", r.efficiency),
          read("--gating", w.gating, mass, "a mass", "200g", r.gating_kg),
          read("--heel", w.heel, mass, "a mass", "100g", r.heel_kg),
          read("--power", w.power, watt, "a power", "2kW", r.power_W),
          read("--furnace-max", w.furnace_max, kelvin, "a temperature", "1150degC", shop.furnace_maximum_K),
          read("--mould-max", w.mould_max, kelvin, "a temperature", "870degC", shop.mould_maximum_K),
          read("--crucible-volume", w.crucible_volume, volume, "a volume", "500cm3", shop.crucible_volume_m3),
          read("--lift-max", w.lift_max, mass, "a mass", "10kg", shop.lift_maximum_kg)})
        if (!fault.empty()) return fault;
    return {};
}

/// The unit of a mesh: STL has none, so the one used is always said.
Result<double> mesh_unit_m(const std::string& word) {
    const Result<Unit> unit = parse_unit(word.empty() ? "mm" : word);
    if (!unit || !(unit->dimension == base_dimension(Dimension::metre)))
        return wrong("--stl-unit", word, "mm, cm, m or in is expected");
    return unit->scale;
}

Result<casting::Piece> piece_from(const Context& context, const PourWords& w, const std::string& words,
                                  std::vector<std::string>& remarks) {
    const Result<PartWords> part = part_from(words);
    if (!part) return part.problem();
    if (part->shape) return casting::Piece{words, part->shape, *casting::measured(*part->shape)};
    if (!context.read_mesh) return wrong("--part", words, "this program was built without a reader of meshes");
    const Result<double> unit = mesh_unit_m(w.stl_unit);
    if (!unit) return unit.problem();
    const Result<casting::Mesh> mesh = context.read_mesh(part->file);
    if (!mesh) return mesh.problem();
    const Result<casting::Solid> solid = casting::measured(*mesh, *unit);
    if (!solid) return solid.problem();
    if (w.stl_unit.empty())
        remarks.push_back("An STL file carries no unit: " + part->file +
                          " was read in millimetres; if that is wrong, say --stl-unit in (or cm, m).");
    return casting::Piece{words, std::nullopt, *solid};
}

int answer(const Context& context, PourWords& w, const Catalogue& catalogue) {
    if (const std::string fault = read_numbers(w); !fault.empty())
        return context.failed({Problem::Kind::unreadable, fault, 0});
    w.request.feeder = !w.no_feeder;
    for (const std::string& words : w.parts) {
        const Result<casting::Piece> piece = piece_from(context, w, words, w.request.part_remarks);
        if (!piece) return context.failed(piece.problem());
        w.request.pieces.push_back(*piece);
    }
    return context.answered(
        pour(catalogue, w.request), [&](const PourResult& r) { return json_of(r, catalogue); },
        [&](const PourResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
}

void declare_part(CLI::App* c, PourWords& w) {
    c->add_option("metal", w.request.metal, "the metal to cast")->required();
    c->add_option("--part", w.parts,
                  "tube:BORE:OUTSIDE:LENGTH | bar:DxL | plate:LxWxT | cone:D1:D2:L | sphere:D | ring:OUTSIDE:BORE:L | "
                  "stl:FILE; repeat to add")
        ->required();
    c->add_option("--stl-unit", w.stl_unit, "unit of an STL file: mm (default), cm, m, in");
    c->add_option("--process", w.request.process, "shell (default), sand, plaster, permanent")
        ->check(CLI::IsMember({"shell", "sand", "plaster", "permanent"}));
    c->add_option("--stock", w.stock, "machining stock on each face, such as 1mm");
    c->add_option("--clear", w.clear, "diameter that must pass the finished bore (the magnet's)");
    c->add_option("--count", w.request.count, "castings wanted (default 1)")->check(CLI::Range(1, 10000));
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
    casting::Workshop& shop = w.request.workshop;
    c->add_flag("--acknowledge-hazard", w.request.acknowledge_hazard, "lead or magnesium: you are equipped for it");
    c->add_option("--furnace-max", w.furnace_max, "highest temperature of your furnace");
    c->add_option("--crucible", shop.crucible_material,
                  "your crucible: graphite, clay-graphite, silicon carbide, alumina, fused silica ...");
    c->add_option("--crucible-volume", w.crucible_volume, "melt your crucible holds, such as 500cm3");
    c->add_option("--mould", shop.mould_material, "your mould: fused silica, gypsum investment ...");
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
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) { return answer(context, *words, catalogue); };
    });
}

} // namespace pourbook
