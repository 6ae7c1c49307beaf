#include "questions/pour/pour_words.hpp"

#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

/// One word: what it is, how an example looks, and where the number goes.
struct Word {
    const char* name;
    std::string PourWords::*word;
    const char* unit; // fixes the dimension
    const char* what;
    const char* example;
    void (*put)(PourRequest&, double);
};

using R = PourRequest;
constexpr std::array words_table = {
    Word{"mould-temperature", &PourWords::mould_temperature, "K", "a temperature", "650degC",
         [](R& r, double x) { r.mould_K = x; }},
    Word{"start", &PourWords::start, "K", "a temperature", "20degC", [](R& r, double x) { r.start_K = x; }},
    Word{"stock", &PourWords::stock, "m", "a length", "1mm", [](R& r, double x) { r.stock_m = x; }},
    Word{"clear", &PourWords::clear, "m", "a length", "12mm", [](R& r, double x) { r.clear_m = x; }},
    Word{"shell-wall", &PourWords::shell_wall, "m", "a length", "9mm", [](R& r, double x) { r.shell_wall_m = x; }},
    Word{"melt-loss", &PourWords::melt_loss, "%", "a share", "3%", [](R& r, double x) { r.melt_loss = x; }},
    Word{"yield", &PourWords::yield, "%", "a share", "50%", [](R& r, double x) { r.yield = x; }},
    Word{"efficiency", &PourWords::efficiency, "%", "a share", "30%", [](R& r, double x) { r.efficiency = x; }},
    Word{"gating", &PourWords::gating, "kg", "a mass", "200g", [](R& r, double x) { r.gating_kg = x; }},
    Word{"heel", &PourWords::heel, "kg", "a mass", "100g", [](R& r, double x) { r.heel_kg = x; }},
    Word{"power", &PourWords::power, "W", "a power", "2kW", [](R& r, double x) { r.power_W = x; }},
    Word{"furnace-max", &PourWords::furnace_max, "K", "a temperature", "1150degC",
         [](R& r, double x) { r.workshop.furnace_maximum_K = x; }},
    Word{"mould-max", &PourWords::mould_max, "K", "a temperature", "870degC",
         [](R& r, double x) { r.workshop.mould_maximum_K = x; }},
    Word{"crucible-volume", &PourWords::crucible_volume, "m3", "a volume", "500cm3",
         [](R& r, double x) { r.workshop.crucible_volume_m3 = x; }},
    Word{"lift-max", &PourWords::lift_max, "kg", "a mass", "10kg",
         [](R& r, double x) { r.workshop.lift_maximum_kg = x; }},
};

Problem wrong(const std::string& name, const std::string& word, const std::string& why) {
    return {Problem::Kind::unreadable, "--" + name + " '" + word + "': " + why, 0};
}

Result<double> number_of(const Word& w, const std::string& word) {
    const Result<Unit> unit = parse_unit(w.unit);
    const Result<double> value = parse_si(word, unit ? unit->dimension : Dimension{}, w.what);
    if (!value)
        return wrong(w.name, word, value.problem().text + (is_bare(word) ? "" : ": write " + std::string(w.example)));
    return value;
}

/// A difference of temperatures: 80K, 80degC and 144degF are alike.
Result<double> superheat_K(const std::string& word) {
    std::string_view rest = word;
    const Result<double> number = take_written_number(rest);
    const std::string unit_word = bare_numbers_are_si() && is_bare(word) ? "K" : unit_behind(word);
    if (number && unit_word.empty()) return wrong("superheat", word, word + " what? " + word + "K or " + word + "F");
    const Result<Unit> unit = parse_unit(unit_word);
    if (!number || !unit || !(unit->dimension == base_dimension(Dimension::kelvin)))
        return wrong("superheat", word, "a difference of temperature is expected: write 80K or 144F");
    return *number * unit->scale;
}

/// "HEIGHT" or "HEIGHT:FOOT" (foot: diameter at the lower end).
std::string read_sprue(const std::string& word, PourRequest& request) {
    const std::size_t colon = word.find(':');
    const Word length{"sprue", nullptr, "m", "a length", "200mm:12mm", nullptr};
    std::vector<std::string> written = {word.substr(0, colon)};
    if (colon != std::string::npos) written.push_back(word.substr(colon + 1));
    const auto sizes =
        bare_numbers_are_si() ? Result<std::vector<std::string>>(written) : with_shared_unit(written, ":");
    if (!sizes) return wrong("sprue", word, sizes.problem().text).text;
    const Result<double> height = number_of(length, sizes->front());
    if (!height) return height.problem().text;
    request.sprue_height_m = *height;
    if (sizes->size() == 1) return {};
    const Result<double> foot = number_of(length, sizes->back());
    if (!foot) return foot.problem().text;
    request.sprue_foot_m = *foot;
    return {};
}

std::string read_numbers(const PourWords& words, PourRequest& request) {
    for (const Word& w : words_table) {
        const std::string& word = words.*w.word;
        if (word.empty()) continue;
        const Result<double> value = number_of(w, word);
        if (!value) return value.problem().text;
        w.put(request, *value);
    }
    if (!words.superheat.empty()) {
        const Result<double> superheat = superheat_K(words.superheat);
        if (!superheat) return superheat.problem().text;
        request.superheat_K = *superheat;
    }
    return words.sprue.empty() ? "" : read_sprue(words.sprue, request);
}

/// The unit of a mesh: STL has none, so the one used is always said.
Result<double> mesh_unit_m(const std::string& word) {
    const Result<Unit> unit = parse_unit(word.empty() ? "mm" : word);
    if (!unit || !(unit->dimension == base_dimension(Dimension::metre)))
        return wrong("stl-unit", word, "mm, cm, m or in is expected");
    return unit->scale;
}

Result<casting::Piece> piece_from(const std::string& words, const std::string& stl_unit, const MeshReader& read_mesh,
                                  std::vector<std::string>& remarks) {
    const Result<PartWords> part = part_from(words);
    if (!part) return part.problem();
    if (part->shape) return casting::Piece{words, part->shape, *casting::measured(*part->shape)};
    if (!read_mesh) return wrong("part", words, "this program was built without a reader of meshes");
    const Result<double> unit = mesh_unit_m(stl_unit);
    if (!unit) return unit.problem();
    const Result<casting::Mesh> mesh = read_mesh(part->file);
    if (!mesh) return mesh.problem();
    const Result<casting::Solid> solid = casting::measured(*mesh, *unit);
    if (!solid) return solid.problem();
    if (stl_unit.empty())
        remarks.push_back("An STL file carries no unit: " + part->file +
                          " was read in millimetres; if that is wrong, say --stl-unit in (or cm, m).");
    return casting::Piece{words, std::nullopt, *solid};
}

} // namespace

Result<PourRequest> pour_request_from(const PourWords& words, const MeshReader& read_mesh) {
    PourRequest request;
    request.metal = words.metal;
    request.process = words.process;
    request.count = words.count;
    request.feeder = !words.no_feeder;
    request.acknowledge_hazard = words.acknowledge_hazard;
    request.workshop.crucible_material = words.crucible_material;
    request.workshop.mould_material = words.mould_material;
    if (const std::string fault = read_numbers(words, request); !fault.empty())
        return Problem{Problem::Kind::unreadable, fault, 0};
    for (const std::string& part : words.parts) {
        const auto piece = piece_from(part, words.stl_unit, read_mesh, request.part_remarks);
        if (!piece) return piece.problem();
        request.pieces.push_back(*piece);
    }
    return request;
}

std::string key_of(const PourWords& w) {
    std::string key = w.metal + "|" + w.process + "|" + std::to_string(w.count) + (w.no_feeder ? "n" : "f") +
                      (w.acknowledge_hazard ? "a" : "");
    for (const Word& word : words_table) key += "|" + w.*word.word;
    for (const std::string* word : {&w.superheat, &w.sprue, &w.stl_unit, &w.crucible_material, &w.mould_material})
        key += "|" + *word;
    for (const std::string& part : w.parts) key += "|" + part;
    return key;
}

std::string pour_word_fault(const std::string& name, const std::string& word) {
    if (word.empty()) return {};
    if (name == "superheat") {
        const Result<double> value = superheat_K(word);
        return value ? "" : value.problem().text;
    }
    if (name == "sprue") {
        PourRequest unused;
        return read_sprue(word, unused);
    }
    const auto at = std::find_if(words_table.begin(), words_table.end(), [&](const Word& w) { return w.name == name; });
    if (at == words_table.end()) return {};
    const Result<double> value = number_of(*at, word);
    return value ? "" : value.problem().text;
}

} // namespace pourbook
