#include "answers/askers.hpp"

#include "answers/ask/short_answer.hpp"
#include "answers/drop/drop_documents.hpp"
#include "answers/drop/sweep_json.hpp"
#include "answers/mix/mix_report.hpp"
#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"
#include "answers/writers/writers.hpp"
#include "questions/drop/drop_question.hpp"
#include "questions/metals/metal_questions.hpp"
#include "questions/mix/mix_question.hpp"
#include "questions/rank/rank_question.hpp"
#include "questions/workshop/rank_in_workshop.hpp"

#include <memory>

namespace pourbook {
namespace {

using Words = Result<std::string>;

/// answer(stated, asking) gives the result; text(result, asking) and json(result, asking) say it.
template <class Answer, class Text, class Json>
Asker said(const QuestionTable& question, Answer answer, Text text, Json json) {
    const auto with = [answer](auto say) {
        return [answer, say](const Stated& stated, const Asking& a) -> Words {
            const auto result = answer(stated, a);
            if (!result) return result.problem();
            return say(*result, a);
        };
    };
    return {&question, with(text), with(json)};
}

/// An answer that is one document, in every form.
template <class Answer> Asker documented(const QuestionTable& question, Answer answer) {
    const auto in = [answer](const Stated& stated, const Asking& a, UnitSystem units) -> Result<Document> {
        const auto result = answer(stated, a);
        if (!result) return result.problem();
        return document_of(*result, {a.catalogue, units, a.date});
    };
    Asker out{&question, {}, {}, [in](const Stated& s, const Asking& a) { return in(s, a, a.units); }};
    out.text = [in](const Stated& s, const Asking& a) -> Words {
        const Result<Document> document = in(s, a, a.units);
        if (!document) return document.problem();
        return answer_text(*document);
    };
    out.json = [in](const Stated& s, const Asking& a) -> Words {
        const Result<Document> document = in(s, a, UnitSystem::base);
        if (!document) return document.problem();
        return answer_json(*document);
    };
    return out;
}

/// The same, where the JSON is not the document's.
template <class Answer> Asker documented_but_for_json(const QuestionTable& question, Answer answer) {
    Asker out = documented(question, answer);
    out.json = [answer](const Stated& stated, const Asking& a) -> Words {
        const auto result = answer(stated, a);
        if (!result) return result.problem();
        return json_of(*result, a.catalogue);
    };
    return out;
}

/// An answer worked out from the request and the catalogue alone.
template <class R, class Work> auto worked_out(const QuestionOf<R>& question, Work work) {
    return [&question, work](const Stated& stated, const Asking& a) -> decltype(work(a.catalogue, R{})) {
        const Result<R> request = question.read(stated, a.catalogue);
        if (!request) return request.problem();
        return work(a.catalogue, *request);
    };
}

/// The same where the request is not what the fields say one by one.
template <class From, class Work> auto worked_out_from(From request_from, Work work) {
    return [request_from, work](const Stated& stated, const Asking& a) {
        const auto request = request_from(stated, a.catalogue);
        using Answer = decltype(work(a.catalogue, *request));
        if (!request) return Answer(request.problem());
        return Answer(work(a.catalogue, *request));
    };
}

/// With the short forms.
template <class Answer> Asker shortly(Asker asker, Answer answer) {
    asker.brief = [answer](const Stated& stated, const Asking& a) -> Words {
        const auto result = answer(stated, a);
        if (!result) return result.problem();
        return short_answer(*result, a.catalogue, a.units);
    };
    asker.plain = [answer](const Stated& stated, const Asking& a) -> Words {
        const auto result = answer(stated, a);
        if (!result) return result.problem();
        return plain_answer(*result, a.units);
    };
    return asker;
}

template <class Answer> Asker documented_and_short(const QuestionTable& question, Answer answer) {
    return shortly(documented(question, answer), answer);
}

/// A ranking, and the catalogue that its metals are of.
struct Ranking {
    std::shared_ptr<const RankedFrom> from;
    RankResult result;
};

Document document_of(const Ranking& ranking, const DocumentSetting& setting) {
    return pourbook::document_of(ranking.result, {ranking.from->in(setting.catalogue), setting.units, setting.date});
}

std::string short_answer(const Ranking& ranking, const Catalogue& catalogue, UnitSystem units) {
    return pourbook::short_answer(ranking.result, ranking.from->in(catalogue), units);
}

std::string plain_answer(const Ranking& ranking, UnitSystem units) {
    return pourbook::plain_answer(ranking.result, units);
}

Result<Ranking> ranking(const Stated& stated, const Asking& a) {
    const Result<RankRequest> request = rank_question().read(stated, a.catalogue);
    if (!request) return request.problem();
    Result<RankedFrom> from = ranked_from(a.own, a.catalogue, *request);
    if (!from) return from.problem();
    const auto kept = std::make_shared<const RankedFrom>(std::move(*from));
    Result<RankResult> result = rank(kept->in(a.catalogue), kept->request);
    if (!result) return result.problem();
    return Ranking{kept, std::move(*result)};
}

/// One set-up, or two side by side.
Asker dropped() {
    const Asker one = documented_and_short(drop_question(), worked_out(drop_question(), drop));
    const Asker two = documented(drop_question(), worked_out_from(against_request_from, against));
    const auto either = [](auto first, auto second) {
        return [first, second](const Stated& stated, const Asking& a) {
            return states_two(stated) ? second(stated, a) : first(stated, a);
        };
    };
    // With a second set-up the whole answer is given, as two short ones would not compare.
    return {&drop_question(),
            either(one.text, two.text),
            either(one.json, two.json),
            either(one.table, two.table),
            either(one.brief, two.text),
            either(one.plain, two.text)};
}

/// What is on the shelf is likelier.
Result<InferResult> inferred(const Stated& stated, const Asking& a) {
    Result<InferRequest> request = infer_request_from(stated, a.catalogue);
    if (!request) return request.problem();
    request->on_the_shelf = metals_on_the_shelf(a.own);
    return infer(a.catalogue, *request);
}

/// Under the limits of the person's own workshop.
Asker designed() {
    return documented(design_question(), [](const Stated& stated, const Asking& a) -> Result<DesignResult> {
        const Result<DesignRequest> request = design_question().read(stated, a.catalogue);
        if (!request) return request.problem();
        return design(a.catalogue, within_workshop(*request, a.own));
    });
}

Asker measured() {
    return documented(measure_question(), worked_out(measure_question(), [](const Catalogue&, const MeasureRequest& r) {
                          return measure(r);
                      }));
}

Asker listed_metals() {
    const auto answer = worked_out(metals_question(), [](const Catalogue& c, const MetalsRequest& r) {
        return list_metals(c, r.find, r.where, r.conditions);
    });
    return said(
        metals_question(), answer, [](const auto& metals, const Asking&) { return text_of_metals(metals); },
        [](const auto& metals, const Asking&) { return json_of_metals(metals); });
}

/// A table is its only form.
Asker compared() {
    Asker out = documented(compare_question(), worked_out(compare_question(), compare));
    const auto in = [table = out.table](const Stated& stated, Asking a, TableFormat format) -> Words {
        if (format == TableFormat::json) a.units = UnitSystem::base;
        const Result<Document> document = table(stated, a);
        if (!document) return document.problem();
        return written(*document, format);
    };
    out.text = [in](const Stated& s, const Asking& a) { return in(s, a, TableFormat::text); };
    out.json = [in](const Stated& s, const Asking& a) { return in(s, a, TableFormat::json); };
    return out;
}

Asker swept() {
    return documented_but_for_json(sweep_question(), worked_out_from(sweep_request_from, sweep));
}

Asker two_goals() {
    return documented(
        tradeoff_question(),
        worked_out(tradeoff_question(), [](const Catalogue& c, const TradeoffRequest& r) { return tradeoff(c, r); }));
}

Asker mixed() {
    return documented_but_for_json(
        mix_question(),
        worked_out_from([](const Stated& s, const Catalogue& c) { return mix_request_from(s, c); }, mix));
}

} // namespace

const std::vector<Asker>& askers() {
    static const std::vector<Asker> all = {
        listed_metals(),
        documented_and_short(value_question(), worked_out(value_question(), value)),
        documented_but_for_json(sheet_question(), worked_out(sheet_question(), sheet)),
        compared(),
        documented_and_short(rank_question(), ranking),
        two_goals(),
        documented_and_short(versus_question(), worked_out(versus_question(), versus)),
        dropped(),
        documented(drag_question(), worked_out(drag_question(), drag)),
        documented(infer_question(), inferred),
        swept(),
        designed(),
        documented(plate_question(), worked_out(plate_question(), plate)),
        measured(),
        mixed(),
    };
    return all;
}

const Asker* asker(const std::string& question) {
    for (const Asker& a : askers())
        if (a.question->name == question) return &a;
    return nullptr;
}

} // namespace pourbook
