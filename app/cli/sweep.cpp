#include "cli/context.hpp"

#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"
#include "cli/setup_words.hpp"
#include "cli/table_words.hpp"

namespace pourbook {
namespace {

struct SweepWords {
    SweepRequest request;
    std::vector<std::string> over;
    TableWords table;
};

} // namespace

void declare_sweep(Context& context) {
    auto words = std::make_shared<SweepWords>();
    SweepRequest& request = words->request;
    CLI::App* c = context.command("sweep", "fall time against wall, bore, temperature or budget");
    with_setup(c, request.setup);
    c->add_option("--metal", request.metals, "metals of the tube, separated by commas")->delimiter(',');
    c->add_option("--resistivity", request.resistivity, "a resistivity or conductivity instead");
    c->add_option("--over", words->over, "wall|bore|temperature|budget FROM:TO")->required()->expected(2);
    c->add_option("--steps", request.steps, "number of values (default 15)");
    c->add_option("--samples", request.samples, "samples for the intervals (default 200)")
        ->check(CLI::Range(20, 20000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    with_table_words(c, words->table);
    context.with_conditions(c);
    context.metal_lists.push_back(&request.metals);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                Result<SweepRequest> asked = with_range(catalogue, words->request, words->over[0], words->over[1]);
                if (!asked) return context.failed(asked.problem());
                asked->conditions = conditions;
                return answered(
                    context, catalogue, words->table, sweep(catalogue, *asked),
                    [&](const SweepResult& r) { return json_of(r, catalogue); },
                    [&](const SweepResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
