// pourbook-compile DB_FOLDER FILE       compiles the data folder into the reference database
// pourbook-compile --check DB_FOLDER    reads and checks only
// pourbook-compile --sources DB_FOLDER  prints sources.md
// pourbook-compile --coverage DB_FOLDER prints the coverage table
#include "db/store/reference_file.hpp"
#include "importers/common/located_json.hpp"
#include "importers/compile/compile.hpp"

#include <iostream>
#include <string>
#include <vector>

namespace {

int compile(const std::vector<std::string>& words) {
    const bool option = words.size() == 2 && words[0].starts_with("--");
    const std::string& folder = option ? words[1] : words[0];
    const pourbook::Compiled compiled = pourbook::compile_folder(folder);
    for (const std::string& fault : compiled.faults) std::cerr << fault << "\n";
    if (!compiled.faults.empty()) {
        std::cerr << "pourbook-compile: " << compiled.faults.size() << " fault(s) in the data, nothing written\n";
        return 4;
    }
    if (!option)
        pourbook::write_reference(compiled.catalogue, words[1]);
    else if (words[0] == "--sources")
        std::cout << pourbook::sources_page(compiled.catalogue);
    else if (words[0] == "--coverage")
        std::cout << pourbook::coverage_page(compiled.catalogue);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    const bool known = words.size() == 2 && (!words[0].starts_with("--") || words[0] == "--check" ||
                                             words[0] == "--sources" || words[0] == "--coverage");
    if (!known) {
        std::cerr << "pourbook-compile: DB_FOLDER FILE, or --check | --sources | --coverage DB_FOLDER\n";
        return 2;
    }
    try {
        return compile(words);
    } catch (const std::exception& e) {
        std::cerr << "pourbook-compile: " << e.what() << "\n";
        return 4;
    }
}
