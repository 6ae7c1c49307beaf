#include "importers/compile/compile.hpp"

#include "importers/common/located_json.hpp"
#include "importers/compile/fields.hpp"
#include "importers/compile/read_casting.hpp"
#include "importers/compile/read_diagrams.hpp"
#include "importers/compile/read_dictionary.hpp"
#include "importers/compile/read_magnets.hpp"
#include "importers/compile/read_metal.hpp"
#include "importers/compile/withdrawn.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <set>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

/// JSON files of a folder in the order of their names; none if the folder does not exist.
std::vector<std::string> json_files(const fs::path& folder) {
    std::vector<std::string> files;
    if (fs::is_directory(folder))
        for (const auto& entry : fs::directory_iterator(folder))
            if (entry.path().extension() == ".json") files.push_back(entry.path().string());
    std::sort(files.begin(), files.end());
    return files;
}

template <class Read> void guarded(Faults& faults, Read read) {
    try {
        read();
    } catch (const InputError& e) {
        faults.push_back(e.what());
    }
}

/// Names the state of the data: FNV-1a over the content of every file, in order.
std::string content_version(const std::vector<std::string>& files) {
    std::uint64_t h = 0xcbf29ce484222325ULL;
    for (const std::string& file : files)
        for (char c : read_text_file(file)) h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    char text[24];
    std::snprintf(text, sizeof text, "%012llx", static_cast<unsigned long long>(h >> 16));
    return text;
}

/// "2026-11-30." where the folder says when its figures were last gone through; the content decides the rest.
std::string edition_of(const fs::path& root) {
    const std::string file = (root / "version.json").string();
    if (!fs::is_regular_file(file)) return {};
    const JsonNode node = parse_located_json(file, read_text_file(file));
    Fields f(file, "", node);
    const std::string date = f.text("date");
    f.finish();
    return date + ".";
}

void check_slugs(const Catalogue& c, Faults& faults) {
    std::set<std::string> seen;
    for (const Metal& m : c.metals)
        if (!seen.insert(m.slug).second) faults.push_back(m.slug + ": two files describe this metal");
}

} // namespace

Compiled compile_folder(const std::string& folder) {
    Compiled out;
    Catalogue& c = out.catalogue;
    const fs::path root(folder);
    std::vector<std::string> files = {(root / "properties.json").string(), (root / "references.json").string(),
                                      (root / "cautions.json").string(), (root / "price_forms.json").string()};
    guarded(out.faults, [&] { read_properties(files[0], c, out.faults); });
    guarded(out.faults, [&] { read_references(files[1], c, out.faults); });
    c.index();
    guarded(out.faults, [&] { read_cautions(files[2], c, out.faults); });
    guarded(out.faults, [&] { read_price_forms(files[3], c, out.faults); });
    for (const char* kind : {"elements", "alloys"})
        for (const std::string& file : json_files(root / kind)) {
            guarded(out.faults, [&] { c.metals.push_back(read_metal(file, c, out.faults)); });
            files.push_back(file);
        }
    std::sort(c.metals.begin(), c.metals.end(), [](const Metal& a, const Metal& b) { return a.slug < b.slug; });
    check_slugs(c, out.faults);
    if (const fs::path withdrawn = root / "withdrawn_ids.json"; fs::is_regular_file(withdrawn))
        guarded(out.faults, [&] { check_withdrawn(withdrawn.string(), c, out.faults); });
    c.index();
    if (const fs::path names = root / "known_names.json"; fs::is_regular_file(names)) {
        guarded(out.faults, [&] { read_known_names(names.string(), c, out.faults); });
        files.push_back(names.string());
    }
    for (const std::string& file : json_files(root / "prices")) {
        guarded(out.faults, [&] { read_price_set(file, c, out.faults); });
        files.push_back(file);
    }
    std::stable_sort(c.price_sets.begin(), c.price_sets.end(),
                     [](const PriceSet& a, const PriceSet& b) { return a.as_of > b.as_of; });
    for (const std::string& file : json_files(root / "goals")) {
        guarded(out.faults, [&] { read_goal(file, c, out.faults); });
        files.push_back(file);
    }
    for (const std::string& file : json_files(root / "casting")) {
        guarded(out.faults, [&] { read_practices(file, c, out.faults); });
        files.push_back(file);
    }
    if (const fs::path magnets = root / "magnets.json"; fs::is_regular_file(magnets)) {
        guarded(out.faults, [&] { read_magnets(magnets.string(), c, out.faults); });
        files.push_back(magnets.string());
    }
    const auto alloy_data = [&](const fs::path& file, auto read) {
        if (!fs::is_regular_file(file)) return;
        guarded(out.faults, [&] { read(file.string(), c, out.faults); });
        files.push_back(file.string());
    };
    alloy_data(root / "atomic_masses.json", read_atomic_masses);
    alloy_data(root / "increments.json", read_increments);
    for (const std::string& file : json_files(root / "diagrams")) alloy_data(file, read_diagram);
    if (out.faults.empty()) c.data_version = edition_of(root) + content_version(files);
    c.index();
    return out;
}

} // namespace pourbook
