#include "questions/metals/conditions.hpp"

#include "core/materials/names.hpp"
#include "core/quantity/unit.hpp"
#include "questions/metals/temperature_words.hpp"

#include <cctype>

namespace pourbook {
namespace {

constexpr const char* temperature_examples = "77K, 20degC or 1500degF";

bool is_temper(const std::string& word) {
    return !word.empty() && word.size() <= 8 && std::isupper(static_cast<unsigned char>(word[0]));
}

Fault read_temperature(Conditions& c, const std::string& text, const Catalogue&) {
    const Result<double> t = temperature_from(text);
    if (!t) return t.problem();
    c.temperature_K = *t;
    return {};
}

Fault read_condition(Conditions& c, const std::string& text, const Catalogue&) {
    const bool known = text == reference_condition_name || is_among(text, condition_names);
    if (!known && !is_temper(text)) {
        std::string names = reference_condition_name;
        for (const std::string& name : condition_names) names += ", " + name;
        return unreadable("one of " + names + ", or a temper such as T6");
    }
    (known ? c.condition : c.temper) = text;
    return {};
}

Fault read_rrr(Conditions& c, const std::string& text, const Catalogue&) {
    const Result<double> rrr = parse_si(text, {}, "a residual resistivity ratio");
    if (!rrr || !(*rrr > 1)) return unreadable("a number above 1 is expected");
    c.rrr = *rrr;
    return {};
}

Fault read_range(RangedConditions& c, const std::string& text, const Catalogue&) {
    const Result<TemperatureRange> range = temperature_range(text);
    if (!range) return range.problem();
    c.from.temperature_K = range->from_K;
    c.to_K = range->to_K;
    return {};
}

Fault read_as(Conditions& c, const std::string& text, const Catalogue&) {
    if (text != "casting" && text != "handbook") return unreadable("casting or handbook is expected");
    if (text == "handbook")
        c.casting.reset();
    else if (!c.casting)
        c.casting.emplace();
    return {};
}

/// What is stated of a casting makes the answer one of a casting.
CastingState& state_of(Conditions& c) {
    if (!c.casting) c.casting.emplace();
    return *c.casting;
}

Fault fault_of(const std::string& why) {
    return why.empty() ? Fault() : Fault(unreadable(why));
}

Fault read_own_trials(Conditions& c, const std::string& text, const Catalogue&) {
    if (text != "on" && text != "off") return unreadable("on or off is expected");
    state_of(c).own_trials = text == "on";
    return {};
}

void add_state(QuestionOf<Conditions>& q) {
    using namespace input;
    q.add_read(choice("as", "the part as a home caster gets it, or the handbook's sound and pure metal",
                      {"handbook", "casting"}),
               read_as);
    q.add_read(words("feedstock",
                     "what the casting is melted from: ingot, wire, pipe, scrap, jewellery, or its foreign "
                     "contents in per cent",
                     "\"P 0.02 Fe 0:0.01\"", "not known"),
               [](Conditions& c, const std::string& text, const Catalogue&) {
                   return fault_of(read_feedstock(state_of(c), text));
               });
    q.add_read(words("porosity", "of the casting, share of its volume", "0:3%", "common practice"),
               [](Conditions& c, const std::string& text, const Catalogue&) {
                   return fault_of(read_porosity(state_of(c), text));
               });
    q.add_read(choice("treatment", "of the casting", treatment_names),
               [](Conditions& c, const std::string& text, const Catalogue&) {
                   return fault_of(read_treatment(state_of(c), text));
               });
    q.add_read(choice("own-trials", "whether the castings you measured count", {"on", "off"}), read_own_trials);
    for (const char* field : state_fields) // what is said of a casting goes not with the handbook's metal
        if (std::string(field) != "as") q.fields[q.at(field)].excludes = "as=handbook";
}

QuestionField condition_field() {
    QuestionField f = input::words("condition", "reference, or a temper such as T6, or", "", "reference");
    f.choices = condition_names;
    return f;
}

} // namespace

const QuestionOf<Conditions>& conditions_question() {
    static const QuestionOf<Conditions> question = [] {
        QuestionOf<Conditions> q("conditions", "under which conditions properties are asked");
        q.place(everywhere);
        q.add_read(input::words("at", "temperature", temperature_examples, "293.15K"), read_temperature);
        q.add_read(condition_field(), read_condition);
        q.add(input::choice("price-form", "form of the price (retail: bar in a shop)", price_form_names),
              &Conditions::price_form);
        q.add_read(input::words("purity-rrr", "residual resistivity ratio of a pure metal", "100", "as cited"),
                   read_rrr);
        add_state(q);
        return q;
    }();
    return question;
}

const QuestionOf<RangedConditions>& ranged_question() {
    static const QuestionOf<RangedConditions> question = [] {
        QuestionOf<RangedConditions> q("conditions", "under which conditions properties are asked");
        q.place(everywhere);
        q.add_read(input::words("at", "temperature, or a range 77K:300K over which the worst counts",
                                temperature_examples, "293.15K"),
                   read_range);
        for (const char* field : {"condition", "price-form", "purity-rrr"})
            q.add_one(conditions_question(), field, &RangedConditions::from);
        for (const char* field : state_fields) q.add_one(conditions_question(), field, &RangedConditions::from);
        return q;
    }();
    return question;
}

Stated under(const Stated& stated, const Stated& conditions, const Catalogue& catalogue) {
    Stated out = stated;
    out.take(conditions);
    const std::size_t at = out.question().at("at");
    if (at == out.question().fields.size()) return out;
    const std::string& text = out.text("at");
    if (out.question().fields[at].fault(text, catalogue)) out.set("at", text.substr(0, text.find(':')));
    return out;
}

} // namespace pourbook
