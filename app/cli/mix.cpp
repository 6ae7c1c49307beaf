#include "cli/context.hpp"

#include "answers/mix/mix_report.hpp"
#include "cli/table_words.hpp"
#include "core/quantity/unit.hpp"
#include "questions/mix/mix_words.hpp"

namespace pourbook {
namespace {

struct MixOptions {
    std::string blend, composition, treatment = "as-cast", at, loss, target, with, measured;
    std::vector<std::string> impurities;
    bool atomic = false;
    TableWords table;
};

Problem with_argument(const char* argument, Problem p) {
    p.text = std::string(argument) + ": " + p.text;
    return p;
}

std::optional<Problem> read_target(const Catalogue& catalogue, const MixOptions& o, MixRequest& request) {
    if (o.target.empty()) return std::nullopt;
    const Result<Share> content = share_from(catalogue, o.target);
    if (!content) return with_argument("--to", content.problem());
    const std::string with = o.with.empty() ? content->element : o.with;
    const Result<Composition> added = metal_composition(catalogue, with);
    if (!added) return with_argument("--with", added.problem());
    request.target = MixTarget{*content, with, *added};
    return std::nullopt;
}

std::optional<Problem> read_figures(const MixOptions& o, MixRequest& request) {
    static const Dimension ohm_m = parse_unit("ohm.m")->dimension;
    if (!o.at.empty()) {
        const Result<double> t = parse_si(o.at, base_dimension(Dimension::kelvin), "a temperature");
        if (!t) return with_argument("--at", t.problem());
        request.phases_at_K = *t;
    }
    if (!o.loss.empty()) {
        const Result<double> loss = parse_si(o.loss, {}, "a melt loss");
        if (!loss) return with_argument("--melt-loss", loss.problem());
        request.melt_loss = *loss;
    }
    if (!o.measured.empty()) {
        const Result<double> rho = parse_si(o.measured, ohm_m, "a resistivity");
        if (!rho) return with_argument("--measured", rho.problem());
        if (!(*rho > 0))
            return Problem{Problem::Kind::unreadable, "--measured '" + o.measured + "': a positive figure is expected",
                           0};
        request.measured_resistivity_si = *rho;
    }
    return std::nullopt;
}

Result<MixRequest> request_from(const Catalogue& catalogue, const MixOptions& o) {
    MixRequest request;
    if (o.blend.empty() == o.composition.empty())
        return Problem{Problem::Kind::unreadable,
                       "mix needs either stocks, such as \"1.2kg sterling-silver + 300g silver\", or --composition "
                       "\"Ag 92.5 Cu 7.5\"",
                       0};
    if (!o.blend.empty()) {
        const Result<std::vector<Stock>> stocks = stocks_from(catalogue, o.blend);
        if (!stocks) return stocks.problem();
        request.stocks = *stocks;
    } else {
        const Result<Composition> c = composition_from(catalogue, o.composition, o.atomic);
        if (!c) return with_argument("--composition", c.problem());
        request.composition = *c;
    }
    request.treatment = *treatment_named(o.treatment); // checked by the option
    for (const std::string& words : o.impurities) {
        const Result<Share> s = share_from(catalogue, words);
        if (!s) return with_argument("--impurity", s.problem());
        request.impurities.push_back(*s);
    }
    if (const auto fault = read_target(catalogue, o, request)) return *fault;
    if (const auto fault = read_figures(o, request)) return *fault;
    return request;
}

} // namespace

void declare_mix(Context& context) {
    auto o = std::make_shared<MixOptions>();
    CLI::App* c =
        context.command("mix", "what a blend or a composition is: estimated properties, value, how to refine it");
    c->add_option("BLEND", o->blend, "stocks, such as \"1.2kg sterling-silver + 300g silver + 1ozt (Ag 80 Cu 20)\"");
    c->add_option("--composition", o->composition, "instead of stocks: \"Ag 92.5 Cu 7.5\", per cent by mass");
    c->add_flag("--atomic", o->atomic, "--composition is in per cent by atoms");
    c->add_option("--treatment", o->treatment, "as-cast (default), annealed, quenched or aged")
        ->check(CLI::IsMember({"as-cast", "annealed", "quenched", "aged"}));
    c->add_option("--melt-loss", o->loss, "share of the melt that is lost, such as 2%");
    c->add_option("--to", o->target, "bring an element to a content, such as \"Ag 95.8\"");
    c->add_option("--with", o->with, "the metal to add for --to (default: the pure element)");
    c->add_option("--at", o->at, "phases at this temperature, such as 600degC");
    c->add_option("--impurity", o->impurities, "a dissolved impurity, such as \"P 0.02\"; may be repeated");
    c->add_option("--measured", o->measured,
                  "a measured resistivity or conductivity to explain by impurities, such as 85%IACS");
    with_format_word(c, o->table);
    c->callback([&context, o] {
        context.answer = [&context, o](const Catalogue& catalogue) {
            const Result<MixRequest> request = request_from(catalogue, *o);
            if (!request) return context.failed(request.problem());
            return answered(context, catalogue, o->table, mix(catalogue, *request),
                            [&](const MixResult& r) { return json_of(r, catalogue); });
        };
    });
}

} // namespace pourbook
