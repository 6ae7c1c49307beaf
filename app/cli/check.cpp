#include "cli/context.hpp"

#include "report/json.hpp"
#include "report/text.hpp"

namespace pourbook {

void declare_check(Context& context) {
    struct Words {
        bool coverage = false, conflicts = false;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("check", "a self-check of the reference: what it holds and where sources disagree");
    c->add_flag("--coverage", words->coverage, "metal by property: number of values, preferred source, how known");
    c->add_flag("--conflicts", words->conflicts, "answers whose sources disagree");
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            const Result<CheckResult> result = check(catalogue);
            const int code = context.answered(
                result, [&](const CheckResult& r) { return json_of(r, catalogue, words->coverage, words->conflicts); },
                [&](const CheckResult& r, UnitSystem) {
                    return text_of(r, catalogue, words->coverage, words->conflicts);
                });
            constexpr int damaged = 4;
            return code == 0 && !result->faults.empty() ? damaged : code;
        };
    });
}

} // namespace pourbook
