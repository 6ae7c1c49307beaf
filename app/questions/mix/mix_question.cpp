#include "questions/mix/mix_question.hpp"

#include "core/alloys/estimate.hpp"
#include "questions/mix/mix_words.hpp"

namespace pourbook {
namespace {

Problem about(const char* option, Problem p) {
    p.text = std::string(option) + ": " + p.text;
    return p;
}

Result<MixTarget> target_of(const Catalogue& catalogue, const MixAsked& asked) {
    const Result<Share> content = share_from(catalogue, asked.target);
    if (!content) return about("--to", content.problem());
    const std::string with = asked.with.empty() ? content->element : asked.with;
    const Result<Composition> added = metal_composition(catalogue, with);
    if (!added) return about("--with", added.problem());
    return MixTarget{*content, with, *added};
}

Fault read_material(const Catalogue& catalogue, const MixAsked& asked, MixRequest& request) {
    if (asked.blend.empty() == asked.composition.empty())
        return unreadable(
            "mix needs either stocks, such as \"1.2kg bronze-gunmetal-88-10-2 + 300g copper-dhp\", or --composition "
            "\"Ag 92.5 Cu 7.5\"");
    if (!asked.blend.empty()) {
        const Result<std::vector<Stock>> stocks = stocks_from(catalogue, asked.blend);
        if (!stocks) return stocks.problem();
        request.stocks = *stocks;
        return {};
    }
    const Result<Composition> c = composition_from(catalogue, asked.composition, asked.atomic);
    if (!c) return about("--composition", c.problem());
    request.composition = *c;
    return {};
}

} // namespace

const QuestionOf<MixAsked>& mix_question() {
    using namespace input;
    using R = MixAsked;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("mix", "what a blend or a composition is: estimated properties, value, how to refine it");
        q.add(by_place(words("blend", "stocks", "\"1.2kg za-12 + 300g zinc + 200g (Cu 80 Sn 20)\"")), &R::blend);
        q.add(words("composition", "instead of stocks: per cent by mass", "\"Ag 92.5 Cu 7.5\""), &R::composition);
        q.add(flag("atomic", "the composition is in per cent by atoms"), &R::atomic);
        q.add(choice("treatment", "what the metal has been through", {"as-cast", "annealed", "quenched", "aged"}),
              &R::treatment);
        q.add(quantity("melt-loss", "%", "share of the melt that is lost", "2%", "none"), &R::melt_loss);
        q.add(words("to", "bring an element to a content", "\"Ag 95.8\"", "", "bring to"), &R::target);
        q.add(words("with", "the metal to add for that", "silver", "the pure element", "by adding"), &R::with);
        QuestionField phases = quantity("at", "K", "phases at this temperature", "600degC", "", "phases at");
        phases.low = 0;
        q.add(std::move(phases), &R::phases_at_K);
        q.add(many(words("impurity", "a dissolved impurity; may be repeated", "\"P 0.02\"")), &R::impurities);
        QuestionField measured =
            quantity("measured", "ohm.m", "a measured resistivity or conductivity to explain by impurities", "85%IACS");
        measured.low = 1e-12;
        q.add(std::move(measured), &R::measured_resistivity_ohm_m);
        return q;
    }();
    return question;
}

Result<MixRequest> mix_request_from(const Stated& stated, const Catalogue& catalogue) {
    const Result<MixAsked> asked = mix_question().read(stated, catalogue);
    if (!asked) return asked.problem();
    MixRequest request;
    if (const Fault fault = read_material(catalogue, *asked, request)) return *fault;
    request.treatment = *treatment_named(asked->treatment);
    request.melt_loss = asked->melt_loss.value_or(0);
    request.phases_at_K = asked->phases_at_K;
    request.measured_resistivity_si = asked->measured_resistivity_ohm_m;
    for (const std::string& words : asked->impurities) {
        const Result<Share> share = share_from(catalogue, words);
        if (!share) return about("--impurity", share.problem());
        request.impurities.push_back(*share);
    }
    if (asked->target.empty()) return request;
    Result<MixTarget> target = target_of(catalogue, *asked);
    if (!target) return target.problem();
    request.target = std::move(*target);
    return request;
}

} // namespace pourbook
