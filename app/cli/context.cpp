#include "cli/context.hpp"

#include "cli/terminal_text.hpp"
#include "core/workshop/check_entry.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/say/in_units_of.hpp"

#include <algorithm>
#include <cstdlib>
#include <iterator>

namespace pourbook {

CLI::App* Context::command(CLI::App* parent, const std::string& name, const std::string& help) {
    CLI::App* c = parent->add_subcommand(name, help);
    c->add_flag("--json", json, "answer as JSON, SI units");
    c->add_option("--units", units, "si (default) or workshop: degF, inches to 1/64, oz and lb, lbf, %IACS");
    c->add_option("--currency", currency, "money in this currency, by your own rate for it (default: your profile's)")
        ->check([](const std::string& word) {
            return is_currency(word) ? "" : "'" + word + "': three capital letters are expected, such as EUR";
        });
    return c;
}

std::vector<std::string> Context::metals_named() const {
    std::vector<std::string> metals;
    for (const Stated* s : stated)
        for (const QuestionField& field : s->question().fields)
            if (field.type == AskType::metal)
                metals.insert(metals.end(), s->texts(field.name).begin(), s->texts(field.name).end());
    return metals;
}

std::vector<std::string> Context::mixes_named() const {
    std::vector<std::string> mixes;
    for (const std::string& word : metals_named())
        if (names_mix(word)) mixes.push_back(word);
    return mixes;
}

int Context::failed(const Problem& problem) const {
    const bool of_the_answer = problem.kind == Problem::Kind::refused || problem.kind == Problem::Kind::no_value;
    const UnitSystem reader = units == "workshop" ? UnitSystem::workshop : UnitSystem::shown;
    remark(of_the_answer ? in_units_of(reader, problem.text) : problem.text);
    return exit_code(problem);
}

void Context::remark(const std::string& text) const {
    err << folded("pourbook: " + for_terminal(text) + "\n", terminal_columns()); // it may quote a damaged file
}

int Context::told(const std::string& text) const {
    const auto environment = [](const char* name) {
        const char* value = std::getenv(name);
        return std::string(value ? value : "");
    };
    const bool plain = !setup.terminal || !environment("NO_COLOR").empty() || environment("TERM") == "dumb";
    const std::string fitting = folded(text, terminal_columns());
    return printed(plain ? fitting : dressed(fitting));
}

int Context::printed(const std::string& text) const {
    out << text;
    return 0;
}

} // namespace pourbook
