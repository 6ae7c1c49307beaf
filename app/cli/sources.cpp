#include "cli/context.hpp"

#include "report/json.hpp"
#include "report/text.hpp"

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
    auto key = std::make_shared<std::string>();
    CLI::App* c = context.command("sources", "the references, or one of them");
    c->add_option("KEY", *key, "key of a source");
    c->callback([&context, key] {
        context.answer = [&context, key](const Catalogue& catalogue) {
            return context.answered(
                references_named(catalogue, *key), [](const auto& list) { return json_of_references(list); },
                [](const auto& list, UnitSystem) { return text_of_references(list); });
        };
    });
}

} // namespace pourbook
