#include "questions/metals/metal_questions.hpp"

namespace pourbook {
namespace {

constexpr const char* which_metal = "slug, name, alias or designation, or a mix such as \"mix:Ag 92.5 Cu 7.5\"";

} // namespace

const QuestionOf<ValueRequest>& value_question() {
    using namespace input;
    using R = ValueRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("value", "one property of one metal, with uncertainty and sources");
        q.add(needed(by_place(metal("metal", which_metal))), &R::metal);
        q.add(needed(by_place(words("property", "", "resistivity, density or liquidus"))), &R::property);
        q.add_all(conditions_question(), &R::conditions);
        return q;
    }();
    return question;
}

const QuestionOf<SheetRequest>& sheet_question() {
    using namespace input;
    using R = SheetRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("sheet", "everything known of one metal");
        q.add(needed(by_place(metal("metal", which_metal))), &R::metal);
        q.add_all(conditions_question(), &R::conditions);
        return q;
    }();
    return question;
}

const QuestionOf<CompareRequest>& compare_question() {
    using namespace input;
    using R = CompareRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("compare", "metals side by side, each figure with its uncertainty and sources");
        q.add(needed(by_place(many(metal("metal", "one or more metals")))), &R::metals);
        q.add(commas(words("show", "properties, separated by commas", "density,liquidus", "those of the usual goal")),
              &R::properties);
        q.add_all(conditions_question(), &R::conditions);
        return q;
    }();
    return question;
}

const QuestionOf<MetalsRequest>& metals_question() {
    using namespace input;
    using R = MetalsRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("metals", "the metals known, or those that meet conditions");
        q.add(many(words("where", "a condition; may be repeated", "\"liquidus < 1100 degC\"")), &R::where);
        q.add(words("find", "words in name, alias or designation", "bronze"), &R::find);
        q.add_all(conditions_question(), &R::conditions);
        return q;
    }();
    return question;
}

} // namespace pourbook
