#include "cli/context.hpp"

#include "cli/setup_words.hpp"
#include "report/eddy_json.hpp"
#include "report/eddy_text.hpp"

namespace pourbook {

void declare_drop(Context& context) {
    auto request = std::make_shared<DropRequest>();
    CLI::App* c = context.command("drop", "how long a magnet falls through a tube");
    with_setup(c, request->setup);
    with_tube_metal(c, request->metal, request->resistivity);
    c->add_option("--samples", request->samples, "samples for the interval (default 1000)")
        ->check(CLI::Range(10, 100000));
    c->add_option("--seed", request->seed, "seed of the samples (default 1)");
    context.with_conditions(c);
    context.metal_words.push_back(&request->metal);
    c->callback([&context, request] {
        context.answer =
            context.under_conditions([&context, request](const Catalogue& catalogue, const Conditions& conditions) {
                request->conditions = conditions;
                return context.answered(
                    drop(catalogue, *request), [&](const DropResult& r) { return json_of(r, catalogue); },
                    [&](const DropResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
