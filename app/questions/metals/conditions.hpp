// Under which conditions a property is asked: temperature (or a range of them), condition, form of price, purity.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "questions/fields.hpp"

#include <optional>

namespace pourbook {

/// The place of these fields: asked once for all questions, not in a question's own form.
inline constexpr const char* everywhere = "everywhere";

/// The fields at, condition, price-form and purity-rrr, and those of the state: as, feedstock, porosity, treatment,
/// own-trials. Where nothing is stated, the handbook's metal answers.
const QuestionOf<Conditions>& conditions_question();

inline constexpr const char* state_fields[] = {"as", "feedstock", "porosity", "treatment", "own-trials"};

/// A question about a part that one casts: where nothing is stated, a casting answers. `at`: its Conditions, of the
/// request. Call when the field "as" is there.
template <class R, class At> void as_casting(QuestionOf<R>& question, At at) {
    question.begin([at](R& r) { std::invoke(at, r).casting.emplace(); });
    question.fields[question.at("as")].absent = "casting";
}

/// Conditions where --at may also be a range of temperatures over which the worst counts (rank/judge.hpp).
struct RangedConditions {
    Conditions from;            // where the range begins
    std::optional<double> to_K; // where it ends
    bool operator==(const RangedConditions&) const = default;
};
const QuestionOf<RangedConditions>& ranged_question();

/// The fields of ranged_question() for a request with the members `conditions` and `to_K`.
template <class R> void add_ranged_conditions(QuestionOf<R>& question) {
    const QuestionOf<RangedConditions>& ranged = ranged_question();
    for (std::size_t i = 0; i < ranged.fields.size(); ++i)
        question.add_way(ranged.fields[i], [way = ranged.way(i)](R& r, const QuestionField& field, const Texts& texts,
                                                                 const Catalogue& catalogue) {
            RangedConditions both{std::move(r.conditions), r.to_K};
            const Fault fault = way(both, field, texts, catalogue);
            r.conditions = std::move(both.from);
            r.to_K = both.to_K;
            return fault;
        });
}

/// A mix beside the metals of the reference; whoever asks brings it into the catalogue.
template <class R> void add_also(QuestionOf<R>& question) {
    QuestionField also = input::many(input::metal("also", "a mix beside the metals of the reference"));
    also.example = "\"mix:Ag 92.5 Cu 7.5\"";
    question.add_read(std::move(also), [](R&, const std::string& text, const Catalogue&) {
        return text.starts_with("mix:") ? Fault() : unreadable("a mix is expected, such as \"mix:Ag 92.5 Cu 7.5\"");
    });
}

/// What is stated, with the conditions stated elsewhere for all questions; a question that can't answer over a range of
/// temperatures takes the lower end.
Stated under(const Stated& stated, const Stated& conditions, const Catalogue& catalogue);

} // namespace pourbook
