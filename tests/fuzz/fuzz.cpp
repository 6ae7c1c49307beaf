// Short fuzz run under the address and undefined-behaviour sanitizers: seeded mutations of good inputs go through every
// reader of foreign text. Nothing may crash, hang or be undefined; whether an input is accepted is the unit tests'
// business. fuzz ROUNDS [SEED]
#include "core/materials/catalogue.hpp"
#include "core/quantity/unit.hpp"
#include "core/ranking/formula.hpp"
#include "importers/common/located_json.hpp"
#include "importers/compile/figure.hpp"
#include "importers/mesh/read_stl.hpp"

#include <cstdint>
#include <cstdlib>
#include <functional>
#include <iostream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace pourbook;

namespace {

Catalogue dictionary() {
    Catalogue c;
    for (const auto& [id, unit] :
         {std::pair{"conductivity", "S/m"}, {"density", "kg/m3"}, {"price", "USD/kg"}, {"liquidus", "K"}}) {
        Property p;
        p.id = id;
        p.dimension = parse_unit(unit)->dimension;
        c.properties.push_back(p);
    }
    c.index();
    return c;
}

struct Reader {
    const char* name;
    std::function<void(const std::string&)> read;
    std::vector<std::string> good;
};

std::vector<Reader> readers() {
    static const Catalogue names = dictionary();
    static const Metal metal = [] {
        Metal m;
        m.slug = m.name = m.family = m.kind = "copper";
        return m;
    }();
    const auto formula = [](const std::string& text) {
        if (const auto f = Formula::parse(text, names)) f->value(std::vector<double>(f->names().size(), 1.5));
        if (const auto c = Condition::parse(text, names)) c->holds(std::vector<double>(c->names().size(), 1.5), metal);
    };
    const auto json = [](const std::string& text) {
        try {
            parse_located_json("fuzz", text);
        } catch (const InputError&) { // the expected answer to bad input
        }
    };
    const auto stl = [](const std::string& text) {
        std::istringstream in(text);
        read_stl(in, "fuzz");
    };
    return {
        {"unit",
         [](const std::string& t) {
             parse_unit(t);
             parse_quantity(t);
         },
         {"uohm.cm", "W/(m.K)", "1e-6/K", "25 mm", "101%IACS", "20 degC", "g/cm³", "Btu/(ft.h.degF)"}},
        {"formula",
         formula,
         {"conductivity / (density * price)", "liquidus < 1100 degC and family != lead",
          "sqrt(abs(density - 8.9 g/cm3)) ^ 2", "not (min(price, 3) > 2) or kind == 'alloy'"}},
        {"figure",
         [](const std::string& t) { read_figure(t, Unit{}); },
         {"1.678", "25 to 33", ">= 58", "-2.5e-3 to 1.6"}},
        {"json",
         json,
         {R"({"slug": "x", "records": [{"points": [["1", "2"]], "n": -1.5e3, "t": true, "z": null}]})",
          R"(["µΩ", "\u00b5", {"a": {}}])"}},
        {"stl",
         stl,
         {"solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 "
          "0\nendloop\nendfacet\nendsolid a\n",
          std::string(80, ' ') + std::string("\1\0\0\0", 4) + std::string(50, '\0')}},
    };
}

std::string mutated(std::string text, std::mt19937_64& random) {
    static const std::string pieces[] = {"(", ")",    "/",  "^", "-", "e999", "\"", "[",   "{",
                                         "%", "\xff", "\0", "µ", "1", ".",    " ",  "and", "degC"};
    const std::size_t changes = 1 + random() % 6;
    for (std::size_t i = 0; i < changes; ++i) {
        const std::size_t at = text.empty() ? 0 : random() % text.size();
        switch (random() % 5) {
        case 0:
            text.insert(at, pieces[random() % std::size(pieces)]);
            break;
        case 1:
            if (!text.empty()) text.erase(at, 1 + random() % 4);
            break;
        case 2:
            if (!text.empty()) text[at] = static_cast<char>(random());
            break;
        case 3:
            text += text.substr(at, 1 + random() % 40);
            break;
        default:
            text.insert(at, std::string(1 + random() % 200, text.empty() ? '(' : text[at]));
            break;
        }
        if (text.size() > 20000) text.resize(20000);
    }
    return text;
}

} // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::atol(argv[1]) : 1000;
    std::mt19937_64 random(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 20261125);
    for (const Reader& reader : readers()) {
        std::vector<std::string> pool = reader.good;
        for (long i = 0; i < rounds; ++i) {
            const std::string text = mutated(pool[random() % pool.size()], random);
            reader.read(text);
            if (pool.size() < 200) pool.push_back(text); // mutants of mutants
        }
        std::cout << reader.name << ": " << rounds << " inputs\n";
    }
    std::cout << "passed: fuzz, nothing crashed\n";
    return 0;
}
