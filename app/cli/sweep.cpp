#include "cli/context.hpp"

#include "cli/setup_words.hpp"
#include "cli/table_words.hpp"
#include "core/quantity/unit.hpp"
#include "report/eddy_json.hpp"
#include "report/eddy_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct SweepWords {
    SweepRequest request;
    std::vector<std::string> over;
    TableWords table;
};

Result<SweepRequest> request_from(const SweepWords& words) {
    SweepRequest r = words.request;
    const std::string& what = words.over[0];
    r.over = what == "wall"          ? SweepOver::wall
             : what == "bore"        ? SweepOver::bore
             : what == "temperature" ? SweepOver::temperature
                                     : SweepOver::budget;
    const std::string& range = words.over[1];
    const std::size_t colon = range.find(':');
    const Dimension dimension = base_dimension(r.over == SweepOver::temperature ? Dimension::kelvin
                                               : r.over == SweepOver::budget    ? Dimension::money
                                                                                : Dimension::metre);
    const Problem expected{Problem::Kind::unreadable,
                           "--over " + what + " '" + range + "': FROM:TO is expected, such as " +
                               (r.over == SweepOver::temperature ? "77K:300K"
                                : r.over == SweepOver::budget    ? "5USD:50USD"
                                                                 : "1mm:5mm"),
                           0};
    if (colon == std::string::npos) return expected;
    const Result<double> from = parse_si(range.substr(0, colon), dimension, what),
                         to = parse_si(range.substr(colon + 1), dimension, what);
    if (!from || !to) return expected;
    r.from_si = *from;
    r.to_si = *to;
    return r;
}

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
                static const std::vector<std::string> known = {"wall", "bore", "temperature", "budget"};
                if (std::find(known.begin(), known.end(), words->over[0]) == known.end())
                    return context.failed(
                        {Problem::Kind::unreadable,
                         "--over '" + words->over[0] + "': wall, bore, temperature or budget is expected", 0});
                Result<SweepRequest> asked = request_from(*words);
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
