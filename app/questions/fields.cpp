#include "questions/fields.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <charconv>
#include <stdexcept>

namespace pourbook {
namespace {

const std::string nothing;
const Texts none;

std::string listed(const std::vector<std::string>& words) {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
    return out;
}

Result<double> difference_K(const std::string& text) {
    std::string_view rest = text;
    const Result<double> number = take_written_number(rest);
    const std::string unit_word = bare_numbers_are_si() && is_bare(text) ? "K" : unit_behind(text);
    if (number && unit_word.empty()) return unreadable(text + " what? " + text + "K or " + text + "F");
    const Result<Unit> unit = parse_unit(unit_word);
    if (!number || !unit || !(unit->dimension == base_dimension(Dimension::kelvin)))
        return unreadable("a difference of temperature is expected");
    return *number * unit->scale;
}

/// What a message says is expected.
std::string kind_of(const QuestionField& field) {
    static const std::map<std::string, std::string> kinds = {
        {"m", "a length"}, {"kg", "a mass"},   {"K", "a temperature"}, {"W", "a power"},        {"m3", "a volume"},
        {"%", "a share"},  {"m/s", "a speed"}, {"s", "a time"},        {"ohm", "a resistance"}, {"", "a number"}};
    const auto it = kinds.find(field.unit);
    return it == kinds.end() ? "a quantity in " + field.unit : it->second;
}

std::string in_unit(const QuestionField& field, double si) {
    const Result<Unit> unit = parse_unit(field.unit);
    return trimmed(unit ? unit->from_si(si) : si, 6) + (field.unit.empty() ? "" : " " + field.unit);
}

Fault outside(const QuestionField& field, const std::string& text, double value) {
    if (value < field.low) return about_field(field, text, "at least " + in_unit(field, field.low) + " is expected");
    if (value > field.high) return about_field(field, text, "at most " + in_unit(field, field.high) + " is expected");
    return {};
}

template <class Whole> Fault put_whole(const QuestionField& field, const std::string& text, Whole& to) {
    Whole value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size())
        return about_field(field, text, "a whole number is expected");
    if (const Fault fault = outside(field, text, static_cast<double>(value))) return fault;
    to = value;
    return {};
}

} // namespace

std::size_t QuestionTable::at(std::string_view field) const {
    const auto it = std::find_if(fields.begin(), fields.end(), [&](const QuestionField& f) { return f.name == field; });
    return static_cast<std::size_t>(it - fields.begin());
}

namespace input {

QuestionField words(std::string name, std::string meaning, std::string example, std::string absent, std::string label) {
    return {std::move(name),   AskType::words,  std::move(meaning), std::move(example), "",
            std::move(absent), std::move(label)};
}
QuestionField metal(std::string name, std::string meaning) {
    return {std::move(name), AskType::metal, std::move(meaning)};
}
QuestionField quantity(std::string name, std::string unit, std::string meaning, std::string example, std::string absent,
                       std::string label) {
    return {std::move(name), AskType::quantity, std::move(meaning), std::move(example),
            std::move(unit), std::move(absent), std::move(label)};
}
QuestionField difference(std::string name, std::string meaning, std::string example, std::string absent) {
    return {std::move(name), AskType::difference, std::move(meaning), std::move(example), "K", std::move(absent)};
}
QuestionField whole_number(std::string name, std::string meaning, std::string absent, double low, double high) {
    QuestionField f{std::move(name), AskType::whole_number, std::move(meaning), "", "", std::move(absent)};
    f.low = low;
    f.high = high;
    return f;
}
QuestionField flag(std::string name, std::string meaning, std::string label) {
    return {std::move(name), AskType::flag, std::move(meaning), "", "", "", std::move(label)};
}
QuestionField choice(std::string name, std::string meaning, std::vector<std::string> choices, std::string label) {
    QuestionField f{std::move(name), AskType::choice, std::move(meaning), "", "", "", std::move(label)};
    f.choices = std::move(choices);
    return f;
}
QuestionField needed(QuestionField field) {
    field.required = true;
    return field;
}
QuestionField by_place(QuestionField field) {
    field.by_place = true;
    return field;
}
QuestionField many(QuestionField field) {
    field.many = true;
    return field;
}
QuestionField commas(QuestionField field) {
    field.many = field.commas = true;
    return field;
}

} // namespace input

std::string label_of(const QuestionField& field) {
    std::string words = field.label.empty() ? field.name : field.label;
    if (field.label.empty()) std::replace(words.begin(), words.end(), '-', ' ');
    return words;
}

std::string help_of(const QuestionField& field) {
    std::string help = field.meaning;
    if (!field.choices.empty()) help += (help.empty() ? "" : ": ") + listed(field.choices);
    if (!field.example.empty()) help += ", such as " + field.example;
    const std::string absent =
        field.absent.empty() && field.type == AskType::choice ? field.choices.front() : field.absent;
    return help + (absent.empty() ? "" : " (default: " + absent + ")");
}

Problem about_field(const QuestionField& field, const std::string& text, const std::string& why) {
    return unreadable((field.by_place ? "" : "--") + field.name + " '" + text + "': " + why);
}

const Texts& Stated::texts(std::string_view field) const {
    if (!question_->has(field))
        throw std::logic_error("the question '" + question_->name + "' has no field '" + std::string(field) + "'");
    const auto it = texts_.find(field);
    return it == texts_.end() ? none : it->second;
}

const std::string& Stated::text(std::string_view field) const {
    const Texts& all = texts(field);
    return all.empty() ? nothing : all.back();
}

Stated& Stated::set(std::string_view field, std::string text) {
    return set_all(field, text.empty() ? Texts() : Texts{std::move(text)});
}

Stated& Stated::set_all(std::string_view field, Texts texts) {
    (void)this->texts(field); // must be one of the question's
    if (texts.empty())
        texts_.erase(std::string(field));
    else
        texts_[std::string(field)] = std::move(texts);
    return *this;
}

Stated& Stated::take(const Stated& other) {
    for (const QuestionField& field : other.question().fields)
        if (question_->has(field.name)) set_all(field.name, other.texts(field.name));
    return *this;
}

Fault excluded(const QuestionField& field, const Stated& stated) {
    if (field.excludes.empty()) return {};
    const std::size_t equals = field.excludes.find('=');
    const std::string name = field.excludes.substr(0, equals);
    if (!stated.question().has(name) || !stated.states(name)) return {};
    if (equals == std::string::npos)
        return about_field(field, stated.text(field.name), "not beside --" + name + ": one of the two");
    const std::string value = field.excludes.substr(equals + 1);
    if (stated.text(name) != value) return {};
    return about_field(field, stated.text(field.name), "not beside --" + name + " " + value + ": one of the two");
}

Result<double> number_of(const QuestionField& field, const std::string& text) {
    const Result<Unit> unit = parse_unit(field.unit);
    const Result<double> value = field.type == AskType::difference
                                     ? difference_K(text)
                                     : parse_si(text, unit ? unit->dimension : Dimension{}, kind_of(field));
    if (!value)
        return about_field(field, text,
                           value.problem().text +
                               (field.example.empty() || is_bare(text) ? "" : ": write " + field.example));
    if (const Fault fault = outside(field, text, *value)) return *fault;
    return value;
}

Fault put(const QuestionField& field, const Texts& texts, std::string& to) {
    const std::string& text = texts.back();
    if (field.type == AskType::choice &&
        std::find(field.choices.begin(), field.choices.end(), text) == field.choices.end())
        return about_field(field, text, "one of " + listed(field.choices) + " is expected");
    to = text;
    return {};
}

Fault put(const QuestionField& field, const Texts& texts, double& to) {
    const Result<double> value = number_of(field, texts.back());
    if (!value) return value.problem();
    to = *value;
    return {};
}

Fault put(const QuestionField& field, const Texts& texts, std::optional<double>& to) {
    double value = 0;
    if (const Fault fault = put(field, texts, value)) return fault;
    to = value;
    return {};
}

Fault put(const QuestionField& field, const Texts& texts, unsigned long& to) {
    return put_whole(field, texts.back(), to);
}

Fault put(const QuestionField& field, const Texts& texts, unsigned long long& to) {
    return put_whole(field, texts.back(), to);
}

Fault put(const QuestionField& field, const Texts& texts, int& to) {
    return put_whole(field, texts.back(), to);
}

Fault put(const QuestionField&, const Texts&, bool& to) {
    to = true;
    return {};
}

Fault put(const QuestionField&, const Texts& texts, Texts& to) {
    to = texts;
    return {};
}

} // namespace pourbook
