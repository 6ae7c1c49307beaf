#include "fuzz/readers.hpp"

#include "core/ranking/formula.hpp"
#include "core/workshop/check_entry.hpp"
#include "db/store/workshop_file.hpp"
#include "importers/common/located_json.hpp"
#include "importers/compile/figure.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/mix/mix_words.hpp"
#include "questions/pour/part_words.hpp"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace pourbook::fuzz {
namespace {

Metal metal(const std::string& slug, std::vector<Portion> composition) {
    Metal m;
    m.slug = m.name = m.family = slug;
    m.kind = composition.size() == 1 ? "element" : "alloy";
    m.composition = std::move(composition);
    return m;
}

/// Just enough for every reader; the figures are invented.
Catalogue dictionary() {
    Catalogue c;
    for (const auto& [id, unit] :
         {std::pair{"conductivity", "S/m"}, {"density", "kg/m3"}, {"price", "USD/kg"}, {"liquidus", "K"}}) {
        Property p;
        p.id = id;
        p.dimension = parse_unit(unit)->dimension;
        c.properties.push_back(p);
    }
    c.metals = {metal("copper", {{"Cu", 100, ""}}), metal("sterling-silver", {{"Ag", 90, ""}, {"Cu", 10, ""}})};
    c.alloys.masses = {{"Ag", 110, {}}, {"Cu", 60, {}}, {"Zn", 65, {}}};
    for (const auto& [subject, quantity, value] : {std::tuple{"N42", "remanence", 1.3},
                                                   {"sintered NdFeB", "density", 7500.0},
                                                   {"sintered NdFeB", "temperature_coefficient", -1e-3},
                                                   {"sintered NdFeB", "lowest_temperature", 130.0}}) {
        MagnetFigure f;
        f.subject = subject;
        f.material = "sintered NdFeB";
        f.quantity = quantity;
        f.value_si = value;
        c.magnet_figures.push_back(f);
    }
    c.index();
    return c;
}

const Catalogue& names() {
    static const Catalogue catalogue = dictionary();
    return catalogue;
}

void read_unit(const std::string& text) {
    parse_unit(text);
    parse_quantity(text);
    money_from(text);
}

void read_formula(const std::string& text) {
    const auto f = Formula::parse(text, names());
    const auto c = Condition::parse(text, names());
    if (f) f->value(std::vector<double>(f->names().size(), 1.5));
    if (c) c->holds(std::vector<double>(c->names().size(), 1.5), names().metals.front());
}

void read_json(const std::string& text) {
    try {
        parse_located_json("fuzz", text);
    } catch (const InputError&) { // the expected answer to bad input
    }
}

void read_mesh(const std::string& text) {
    std::istringstream in(text);
    read_stl(in, "fuzz");
}

/// A list read to its end and every row checked.
void read_list(const std::string& text) {
    for (const char* name : {"price", "trial"}) {
        const Kind& kind = known_kind(name);
        const auto rows = read_rows(std::make_unique<std::istringstream>(text), text.size(), "fuzz", kind, {});
        if (!rows) continue;
        SourceRow row;
        for (Result<bool> more = (*rows)->next(row); more && *more; more = (*rows)->next(row))
            if (row.fault.empty()) checked(kind, row.entry, names());
    }
}

void read_mix(const std::string& text) {
    stocks_from(names(), text);
    composition_from(names(), text);
    composition_from(names(), text, true);
    share_from(names(), text);
}

/// One line a word of the set-up, in the order of SetupWords.
void read_setup(const std::string& text) {
    SetupWords words;
    std::istringstream lines(text);
    for (std::string* word : {&words.magnet, &words.tube, &words.grade, &words.br, &words.surface_field,
                              &words.magnet_at, &words.magnet_mass, &words.recoil_permeability})
        std::getline(lines, *word);
    drop_setup(names(), words);
    tube_setup(words);
}

std::string schema_1_file() {
    std::ifstream in(POURBOOK_FUZZ_FILE, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// The good file with changes: three bytes of place, one byte of content; the last place of all cuts the file.
std::string patched(std::string bytes, const std::string& patches) {
    for (std::size_t i = 0; i + 3 < patches.size() && !bytes.empty(); i += 4) {
        const auto part = [&](std::size_t k) {
            return static_cast<std::size_t>(static_cast<unsigned char>(patches[i + k]));
        };
        const std::size_t place = part(0) << 16 | part(1) << 8 | part(2);
        if (place >= 0xff0000)
            bytes.resize((place & 0xffff) * bytes.size() / 0xffff);
        else
            bytes[place % bytes.size()] = patches[i + 3];
    }
    return bytes;
}

/// A workshop file of its own, opened, read and undone.
void read_workshop(const std::string& patches) {
    namespace fs = std::filesystem;
    static const std::string good = schema_1_file();
    const fs::path folder = fs::temp_directory_path() / ("pourbook-fuzz-" + std::to_string(getpid()));
    fs::remove_all(folder);
    fs::create_directories(folder);
    std::ofstream(folder / "w.sqlite", std::ios::binary) << patched(good, patches);
    if (const auto workshop = open_workshop(folder / "w.sqlite")) {
        for (const Kind& kind : workshop_kinds()) (*workshop)->entries(kind);
        (*workshop)->newest_prices();
        (*workshop)->undo();
    }
    fs::remove_all(folder);
}

} // namespace

std::vector<Reader> readers() {
    return {
        {"unit",
         read_unit,
         {"uohm.cm", "W/(m.K)", "1e-6/K", "25 mm", "101%IACS", "20 degC", "g/cm³", "Btu/(ft.h.degF)", "3 EUR/kg"}},
        {"formula",
         read_formula,
         {"conductivity / (density * price)", "liquidus < 1100 degC and family != lead",
          "sqrt(abs(density - 8.9 g/cm3)) ^ 2", "not (min(price, 3) > 2) or kind == 'alloy'"}},
        {"figure",
         [](const std::string& t) { read_figure(t, Unit{}); },
         {"1.678", "25 to 33", ">= 58", "-2.5e-3 to 1.6"}},
        {"json",
         read_json,
         {R"({"slug": "x", "records": [{"points": [["1", "2"]], "n": -1.5e3, "t": true, "z": null}]})",
          R"(["µΩ", "\u00b5", {"a": {}}])"}},
        {"stl",
         read_mesh,
         {"solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 "
          "0\nendloop\nendfacet\nendsolid a\n",
          std::string(80, ' ') + std::string("\1\0\0\0", 4) + std::string(50, '\0')}},
        {"csv",
         read_list,
         {"metal;price [EUR/kg];date;note\r\ncopper;8,50;2026-11-01;\"a \"\"b\"\"\"\r\n",
          "\xEF\xBB\xBF"
          "metal,cost,unit,as of\ncopper,\"1,234.5\",USD/lb,2026-11-01\n",
          "type\tmagnet\ttube\ttimes\tfps\ndrop\tsphere:12mm\t14mm:20mm:1m\t4.2 s, 4.3 s\t60\n",
          R"([{"metal": "copper", "price": "8 EUR/kg", "date": "2026-11-01", "si": {"x": 1}, "times": [1, "2 s"]}])"}},
        {"composition",
         read_mix,
         {"1.2kg sterling-silver + 300 g copper + 1ozt (Ag 80 Cu 20)", "Ag 92.5 Cu 7.5", "Cu70Zn balance", "Ag 95.8%"}},
        {"set-up",
         read_setup,
         {"sphere:12mm\n13mm:15mm:1m\nN42\n\n\n20degC\n6.9g\n1.05", "cylinder:12+-0.1mmx10mm\n14mm:20mm:1m\n\n1.3T\n",
          "ring:20mm×5mm×4mm\n0.9in:1in:3ft\n\n\n0.12T@8mm\n350 K\n"}},
        {"part",
         [](const std::string& t) { part_from(t); },
         {"tube:12mm:16mm:100mm", "plate:0.1x2inx3mm", "ring:4cm:3cm:1cm"}},
        {"workshop-file", read_workshop, {std::string("\0\0\x12\2", 4)}, true},
    };
}

} // namespace pourbook::fuzz
