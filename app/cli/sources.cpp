#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"
#include "cli/table_words.hpp"

namespace pourbook {
namespace {

Result<std::vector<const Reference*>> references_named(const Catalogue& catalogue, const std::string& key) {
    std::vector<const Reference*> list;
    for (const Reference& r : catalogue.references)
        if (key.empty() || r.key == key) list.push_back(&r);
    if (list.empty()) return Problem{Problem::Kind::unknown, "unknown source '" + key + "': see `pourbook sources`", 0};
    return list;
}

} // namespace

void declare_sources(Context& context) {
    struct Words {
        std::string key;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("sources", "the references, or one of them");
    c->add_option("KEY", words->key, "key of a source");
    with_table_words(c, words->table);
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            return answered(
                context, catalogue, words->table, references_named(catalogue, words->key),
                [](const auto& list) { return json_of_references(list); },
                [](const auto& list, UnitSystem) { return text_of_references(list); });
        };
    });
}

} // namespace pourbook
