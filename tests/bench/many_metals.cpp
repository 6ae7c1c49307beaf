// The shipped reference with very many made-up metals beside its own, written as a reference file: for the benchmark of
// the window.
#include "tests/support/many_metals.hpp"
#include "db/store/reference_file.hpp"

#include <iostream>
#include <string>

int main(int argc, char** argv) {
    if (argc != 4) {
        std::cerr << "many-metals: REFERENCE NEW_REFERENCE COUNT\n";
        return 2;
    }
    pourbook::Catalogue all = pourbook::read_reference(argv[1]);
    const pourbook::Catalogue more = pourbook::testing::many_metals(std::stoul(argv[3]));
    for (pourbook::Metal metal : more.metals) {
        for (pourbook::Record& record : metal.records) record.id = metal.slug + "." + record.id; // unique in the file
        all.metals.push_back(std::move(metal));
    }
    if (!more.price_sets.empty())
        all.price_sets.insert(all.price_sets.end(), more.price_sets.begin(), more.price_sets.end());
    for (const pourbook::Reference& r : more.references)
        if (!all.reference(r.key)) all.references.push_back(r);
    all.index();
    pourbook::write_reference(all, argv[2]);
}
