// A question of the person's as one table of fields. The command's options and help, the window's form, the state file,
// equality and the reading of the words all follow from the table, so a new field is one line of it and its use.
//
//   QuestionField    one field as people see it: name, type or unit, meaning, example, choices, bounds, place in the
//   form QuestionTable    its fields in order Stated           what a person stated of them, as written; what is not
//   there was not stated QuestionOf<R>    a question with the way of each field into the request R that is computed
//   with
#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

class Catalogue;
using Texts = std::vector<std::string>;

enum class AskType {
    words,
    metal,      // of the reference or an own one, or a mix
    quantity,   // a number with a unit of the field's dimension; a bare one is read in that unit
    difference, // of temperatures: 80K, 80degC and 144degF are alike
    whole_number,
    flag,  // stated or not
    choice // one of the field's choices
};

struct QuestionField {
    std::string name; // as option (--mould-temperature), in the state file, in messages and in the window's probe
    AskType type = AskType::words;
    std::string meaning; // in the help and under the pointer
    std::string example = {};
    std::string unit = {};   // of a quantity
    std::string absent = {}; // what holds where nothing is stated: "printed practice"
    std::string label = {};  // in the window; empty: the name
    std::string place = {};  // the part of the form it stands in
    std::vector<std::string> choices =
        {}; // of a choice; the first holds where none is stated, unless `absent` says other
    double low = -std::numeric_limits<double>::infinity(); // bounds, SI
    double high = std::numeric_limits<double>::infinity();
    bool required = false;
    bool many = false;         // may be stated several times
    bool commas = false;       // several in one option, separated by commas
    bool by_place = false;     // on the command line an argument, no option
    int exactly = 0;           // this many texts at once
    std::string excludes = {}; // the field that can't be stated beside this one
    /// Why a text can't be read; filled in by the question.
    std::function<std::optional<Problem>(const std::string&, const Catalogue&)> fault = {};
};

struct QuestionTable {
    std::string name; // the command, and what its fields are found under in the window
    std::string meaning;
    std::vector<QuestionField> fields = {};

    /// fields.size() where there is none.
    std::size_t at(std::string_view field) const;
    bool has(std::string_view field) const { return at(field) < fields.size(); }
};

/// Fields in the short form that tables are written in.
namespace input {
QuestionField words(std::string name, std::string meaning, std::string example = "", std::string absent = "",
                    std::string label = "");
QuestionField metal(std::string name, std::string meaning);
QuestionField quantity(std::string name, std::string unit, std::string meaning, std::string example,
                       std::string absent = "", std::string label = "");
QuestionField difference(std::string name, std::string meaning, std::string example, std::string absent);
QuestionField whole_number(std::string name, std::string meaning, std::string absent, double low, double high);
QuestionField flag(std::string name, std::string meaning, std::string label = "");
QuestionField choice(std::string name, std::string meaning, std::vector<std::string> choices, std::string label = "");
QuestionField needed(QuestionField field);
QuestionField by_place(QuestionField field);
QuestionField many(QuestionField field);   // stated by repeating it
QuestionField commas(QuestionField field); // or several at once, separated by commas
} // namespace input

/// Label in the window, help of an option: "above the liquidus, such as 80K (default: printed practice)".
std::string label_of(const QuestionField& field);
std::string help_of(const QuestionField& field);
/// "--stock '9 apples': ", and why.
Problem about_field(const QuestionField& field, const std::string& text, const std::string& why);

class Stated {
public:
    /// The question outlives it (all are constants).
    explicit Stated(const QuestionTable& question) : question_(&question) {}

    const QuestionTable& question() const { return *question_; }
    /// The field must be one of the question's. Empty where it was not stated; the last where several were.
    const std::string& text(std::string_view field) const;
    const Texts& texts(std::string_view field) const;
    bool states(std::string_view field) const { return !texts(field).empty(); }
    /// An empty text takes the statement away; a flag is set by any text.
    Stated& set(std::string_view field, std::string text);
    Stated& set_all(std::string_view field, Texts texts);
    Stated& set_flag(std::string_view field, bool on) { return set(field, on ? "yes" : ""); }
    /// What the other states of the fields that this question has too; what it doesn't state is taken away.
    Stated& take(const Stated& other);

    bool operator==(const Stated& other) const { return question_ == other.question_ && texts_ == other.texts_; }

private:
    const QuestionTable* question_;
    std::map<std::string, Texts, std::less<>> texts_;
};

/// Why this field can't be stated beside another one.
std::optional<Problem> excluded(const QuestionField& field, const Stated& stated);

/// One field's texts into a value of the request. Errors: unreadable, naming the option and what is expected.
using Fault = std::optional<Problem>;
Result<double> number_of(const QuestionField& field, const std::string& text);
Fault put(const QuestionField& field, const Texts& texts, std::string& to);
Fault put(const QuestionField& field, const Texts& texts, double& to);
Fault put(const QuestionField& field, const Texts& texts, std::optional<double>& to);
Fault put(const QuestionField& field, const Texts& texts, unsigned long& to);
Fault put(const QuestionField& field, const Texts& texts, unsigned long long& to);
Fault put(const QuestionField& field, const Texts& texts, int& to);
Fault put(const QuestionField& field, const Texts& texts, bool& to);
Fault put(const QuestionField& field, const Texts& texts, Texts& to);

template <class R> class QuestionOf : public QuestionTable {
public:
    using Way = std::function<Fault(R&, const QuestionField&, const Texts&, const Catalogue&)>;

    QuestionOf(std::string command, std::string what) : QuestionTable{std::move(command), std::move(what)} {}

    /// The fields that follow stand in this part of the form.
    QuestionOf& place(std::string part) {
        place_ = std::move(part);
        return *this;
    }
    /// A field whose value is a member of the request, or what a function of the request refers to.
    template <class At> QuestionOf& add(QuestionField field, At at) {
        return add_way(std::move(field), [at](R& r, const QuestionField& f, const Texts& texts, const Catalogue&) {
            return put(f, texts, std::invoke(at, r));
        });
    }
    /// A field read by reader(request, text, catalogue) -> Fault, once for each text.
    template <class Reader> QuestionOf& add_read(QuestionField field, Reader reader) {
        return add_way(std::move(field),
                       [reader](R& r, const QuestionField& f, const Texts& texts, const Catalogue& catalogue) {
                           for (const std::string& text : texts)
                               if (const Fault why = reader(r, text, catalogue))
                                   return Fault(about_field(f, text, why->text));
                           return Fault();
                       });
    }
    /// All fields of a question about a part of this request.
    template <class P, class At> QuestionOf& add_all(const QuestionOf<P>& part, At at) {
        for (std::size_t i = 0; i < part.fields.size(); ++i) add_part(part, i, at);
        return *this;
    }
    /// One of them.
    template <class P, class At> QuestionOf& add_one(const QuestionOf<P>& part, std::string_view field, At at) {
        return add_part(part, part.at(field), at);
    }
    /// The last field added, to change what differs in this question.
    QuestionField& last() { return fields.back(); }

    /// What a request holds before its fields are read.
    void begin(std::function<void(R&)> first_step) { begin_ = std::move(first_step); }
    /// What is still to be done with a request all of whose fields were read.
    void finish(std::function<void(R&)> last_step) { finish_ = std::move(last_step); }

    /// Errors: the first field that can't be read; two that exclude each other.
    Result<R> read(const Stated& stated, const Catalogue& catalogue) const {
        R request{};
        if (begin_) begin_(request);
        for (std::size_t i = 0; i < fields.size(); ++i) {
            const Texts& texts = stated.texts(fields[i].name);
            if (texts.empty()) continue;
            if (const Fault fault = excluded(fields[i], stated)) return *fault;
            if (const Fault fault = ways_[i](request, fields[i], texts, catalogue)) return *fault;
        }
        if (finish_) finish_(request);
        return request;
    }
    /// A field with its way into the request.
    QuestionOf& add_way(QuestionField field, Way way) {
        if (field.place.empty()) field.place = place_;
        field.fault = [way, field](const std::string& text, const Catalogue& catalogue) {
            R unused{};
            return text.empty() ? Fault() : way(unused, field, {text}, catalogue);
        };
        fields.push_back(std::move(field));
        ways_.push_back(std::move(way));
        return *this;
    }
    const Way& way(std::size_t i) const { return ways_[i]; }

private:
    template <class P, class At> QuestionOf& add_part(const QuestionOf<P>& part, std::size_t i, At at) {
        return add_way(part.fields[i], [at, way = part.way(i)](R& r, const QuestionField& f, const Texts& texts,
                                                               const Catalogue& catalogue) {
            return way(std::invoke(at, r), f, texts, catalogue);
        });
    }

    std::string place_;
    std::vector<Way> ways_;
    std::function<void(R&)> begin_, finish_;
};

} // namespace pourbook
