// Short fuzz run under the address and undefined-behaviour sanitizers: seeded mutations of good inputs go through every
// reader of foreign text. Nothing may crash, hang or be undefined; whether an input is accepted is the unit tests'
// business. fuzz ROUNDS [SEED [CORPUS]]: with a folder CORPUS/READER each input that was answered in a new way is kept
// there and is a starting point of the next run (tests/fuzz/campaign.sh).
#include "core/materials/catalogue.hpp"
#include "core/quantity/unit.hpp"
#include "core/ranking/formula.hpp"
#include "core/workshop/check_entry.hpp"
#include "db/store/workshop_file.hpp"
#include "importers/common/located_json.hpp"
#include "importers/compile/figure.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"

#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iostream>
#include <random>
#include <set>
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
    std::function<std::string(const std::string&)> read; // how it answered: "" accepted, else the message
    std::vector<std::string> good;
    bool binary = false; // bits are flipped; slow, so a hundredth of the rounds
};

template <class T> std::string answer_of(const Result<T>& result) {
    return result ? std::string() : result.problem().text;
}

/// A list read to its end and every row checked.
std::string read_list(const std::string& text, const char* kind_name, const Catalogue& names) {
    const Kind& kind = known_kind(kind_name);
    const auto rows = read_rows(std::make_unique<std::istringstream>(text), text.size(), "fuzz", kind, {});
    if (!rows) return rows.problem().text;
    std::string last;
    for (SourceRow row;;) {
        const Result<bool> more = (*rows)->next(row);
        if (!more || !*more) return more ? last : more.problem().text;
        last = row.fault.empty() ? answer_of(checked(kind, row.entry, names)) : row.fault;
    }
}

std::string content_of(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// The bytes as a workshop file of their own, opened, read and undone.
std::string read_workshop_file(const std::string& bytes) {
    namespace fs = std::filesystem;
    const fs::path folder = fs::temp_directory_path() / ("pourbook-fuzz-" + std::to_string(getpid()));
    fs::remove_all(folder);
    fs::create_directories(folder);
    std::ofstream(folder / "w.sqlite", std::ios::binary) << bytes;
    std::string last;
    {
        const auto workshop = open_workshop(folder / "w.sqlite");
        if (!workshop) last = workshop.problem().text;
        if (workshop)
            for (const Kind& kind : workshop_kinds()) last += answer_of((*workshop)->entries(kind));
        if (workshop) last += answer_of((*workshop)->newest_prices()) + answer_of((*workshop)->undo());
    }
    fs::remove_all(folder);
    return last;
}

std::vector<Reader> readers() {
    static const Catalogue names = dictionary();
    static const Metal metal = [] {
        Metal m;
        m.slug = m.name = m.family = m.kind = "copper";
        return m;
    }();
    const auto formula = [](const std::string& text) {
        const auto f = Formula::parse(text, names);
        const auto c = Condition::parse(text, names);
        if (f) f->value(std::vector<double>(f->names().size(), 1.5));
        if (c) c->holds(std::vector<double>(c->names().size(), 1.5), metal);
        return answer_of(f) + answer_of(c);
    };
    const auto json = [](const std::string& text) {
        try {
            parse_located_json("fuzz", text);
            return std::string();
        } catch (const InputError& e) { // the expected answer to bad input
            return std::string(e.what());
        }
    };
    const auto stl = [](const std::string& text) {
        std::istringstream in(text);
        return answer_of(read_stl(in, "fuzz"));
    };
    return {
        {"unit",
         [](const std::string& t) {
             return answer_of(parse_unit(t)) + answer_of(parse_quantity(t)) + answer_of(money_from(t));
         },
         {"uohm.cm", "W/(m.K)", "1e-6/K", "25 mm", "101%IACS", "20 degC", "g/cm³", "Btu/(ft.h.degF)"}},
        {"formula",
         formula,
         {"conductivity / (density * price)", "liquidus < 1100 degC and family != lead",
          "sqrt(abs(density - 8.9 g/cm3)) ^ 2", "not (min(price, 3) > 2) or kind == 'alloy'"}},
        {"figure",
         [](const std::string& t) { return answer_of(read_figure(t, Unit{})); },
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
        {"csv",
         [](const std::string& t) { return read_list(t, "price", names) + read_list(t, "trial", names); },
         {"metal;price [EUR/kg];date;note\r\ncopper;8,50;2026-11-01;\"a \"\"b\"\"\"\r\n",
          "\xEF\xBB\xBF"
          "metal,cost,unit,as of\ncopper,\"1,234.5\",USD/lb,2026-11-01\n",
          "type\tmagnet\ttube\ttimes\tfps\ndrop\tsphere:12mm\t14mm:20mm:1m\t4.2 s, 4.3 s\t60\n",
          R"([{"metal": "copper", "price": "8 EUR/kg", "date": "2026-11-01", "si": {"x": 1}, "times": [1, "2 s"]}])"}},
        {"workshop-file", read_workshop_file, {content_of(POURBOOK_FUZZ_FILE)}, true},
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

std::string flipped(std::string bytes, std::mt19937_64& random) {
    const std::size_t changes = 1 + random() % 8;
    for (std::size_t i = 0; i < changes && !bytes.empty(); ++i) {
        const std::size_t at =
            random() % 3 ? random() % bytes.size() : random() % std::min<std::size_t>(bytes.size(), 200);
        bytes[at] = static_cast<char>(random() % 2 ? bytes[at] ^ (1 << random() % 8) : static_cast<int>(random()));
    }
    if (random() % 10 == 0) bytes.resize(random() % (bytes.size() + 1));
    return bytes;
}

/// An answer without its figures and quotations: the way it was given.
std::string way_of(const std::string& answer) {
    std::string out;
    bool quoted = false;
    for (const char c : answer) {
        if (c == '\'') quoted = !quoted;
        if (!quoted && !std::isdigit(static_cast<unsigned char>(c))) out += c;
    }
    return out;
}

/// Inputs that were answered in a new way, kept as files.
class Corpus {
public:
    Corpus(const std::string& folder, const Reader& reader) {
        if (folder.empty()) return;
        folder_ = std::filesystem::path(folder) / reader.name;
        std::filesystem::create_directories(folder_);
        for (const auto& file : std::filesystem::directory_iterator(folder_)) kept_.push_back(content_of(file.path()));
        for (const std::string& text : kept_) ways_.insert(way_of(reader.read(text)));
    }
    const std::vector<std::string>& kept() const { return kept_; }
    bool offer(const std::string& text, const std::string& answer) {
        if (!ways_.insert(way_of(answer)).second) return false;
        if (!folder_.empty())
            std::ofstream(folder_ / std::to_string(std::hash<std::string>{}(text)), std::ios::binary) << text;
        return true;
    }

private:
    std::filesystem::path folder_;
    std::vector<std::string> kept_;
    std::set<std::string> ways_;
};

} // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::atol(argv[1]) : 1000;
    std::mt19937_64 random(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 20261125);
    const std::string folder = argc > 3 ? argv[3] : "";
    for (const Reader& reader : readers()) {
        Corpus corpus(folder, reader);
        std::vector<std::string> pool = reader.good;
        pool.insert(pool.end(), corpus.kept().begin(), corpus.kept().end());
        const long turns = reader.binary ? std::max(rounds / 100, 1L) : rounds;
        for (long i = 0; i < turns; ++i) {
            const std::string& from = pool[random() % pool.size()];
            const std::string text = reader.binary ? flipped(from, random) : mutated(from, random);
            const bool new_way = corpus.offer(text, reader.read(text));
            if (new_way || pool.size() < 200) pool.push_back(text); // mutants of mutants
        }
        std::cout << reader.name << ": " << turns << " inputs\n";
    }
    std::cout << "passed: fuzz, nothing crashed\n";
    return 0;
}
