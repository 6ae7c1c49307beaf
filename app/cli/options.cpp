#include "cli/options.hpp"

#include "questions/metals/conditions.hpp"

#include <algorithm>
#include <cctype>

namespace pourbook {
namespace {

std::string option_of(const QuestionField& field) {
    if (!field.by_place) return "--" + field.name;
    std::string place = field.name;
    for (char& c : place) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return place;
}

std::string checked(const std::string& option, const QuestionField& field, const std::string& text) {
    if (!text.empty()) return text;
    throw CLI::ValidationError(option, "is empty" + (field.example.empty() ? "" : ": write such as " + field.example));
}

CLI::Option* option_for(CLI::App* c, const QuestionField& field, Stated& stated) {
    const std::string option = option_of(field), help = help_of(field);
    if (field.type == AskType::flag)
        return c->add_flag_callback(
            option, [&stated, &field] { stated.set_flag(field.name, true); }, help);
    if (!field.many) {
        CLI::Option* one = c->add_option_function<std::string>(
            option,
            [&stated, &field, option](const std::string& text) {
                stated.set(field.name, checked(option, field, text));
            },
            help);
        if (field.type == AskType::choice) one->check(CLI::IsMember(field.choices));
        if (field.type == AskType::whole_number) one->check(CLI::Range(field.low, field.high));
        return one;
    }
    CLI::Option* many = c->add_option_function<std::vector<std::string>>(
        option, [&stated, &field](const std::vector<std::string>& texts) { stated.set_all(field.name, texts); }, help);
    if (field.commas) return many->delimiter(',');
    return field.by_place || field.exactly ? many : many->allow_extra_args(false); // one at a time, repeated
}

} // namespace

void with_fields(Context& context, CLI::App* command, Stated& stated) {
    for (const QuestionField& field : stated.question().fields) {
        CLI::Option* option = option_for(command, field, stated)->required(field.required);
        if (field.exactly) option->expected(field.exactly);
        if (!field.place.empty()) option->group(field.place == everywhere ? "Conditions" : field.place);
    }
    for (const QuestionField& field : stated.question().fields)
        if (!field.excludes.empty() && field.excludes.find('=') == std::string::npos)
            command->get_option("--" + field.name)->excludes("--" + field.excludes);
    context.stated.push_back(&stated);
}

CLI::App* command_of(Context& context, Stated& stated) {
    CLI::App* c = context.command(stated.question().name, stated.question().meaning);
    with_fields(context, c, stated);
    return c;
}

} // namespace pourbook
