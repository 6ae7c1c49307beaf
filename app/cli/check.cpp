#include "cli/context.hpp"

#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"
#include "cli/table_words.hpp"

namespace pourbook {

void declare_check(Context& context) {
    struct Words {
        bool coverage = false, conflicts = false;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("check", "a self-check of the reference: what it holds and where sources disagree");
    c->add_flag("--coverage", words->coverage, "metal by property: number of values, preferred source, how known");
    c->add_flag("--conflicts", words->conflicts, "answers whose sources disagree");
    with_table_words(c, words->table);
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            const Result<CheckResult> result = check(catalogue);
            const int code = answered(
                context, catalogue, words->table, result,
                [&](const CheckResult& r) { return json_of(r, catalogue, words->coverage, words->conflicts); },
                [&](const CheckResult& r, UnitSystem) {
                    return text_of(r, catalogue, words->coverage, words->conflicts);
                });
            constexpr int damaged = 4;
            return code == 0 && !result->faults.empty() ? damaged : code;
        };
    });
}

} // namespace pourbook
