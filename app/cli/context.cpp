#include "cli/context.hpp"

#include "core/workshop/check_entry.hpp"
#include "questions/mix/mix_metal.hpp"

#include <algorithm>
#include <iterator>

namespace pourbook {

CLI::App* Context::command(CLI::App* parent, const std::string& name, const std::string& help) {
    CLI::App* c = parent->add_subcommand(name, help);
    c->add_flag("--json", json, "answer as JSON, SI units");
    c->add_option("--units", units, "si (default) or workshop: degF, lb, %IACS");
    c->add_option("--currency", currency, "money in this currency, by your own rate for it (default: your profile's)")
        ->check([](const std::string& word) {
            return is_currency(word) ? "" : "'" + word + "': three capital letters are expected, such as EUR";
        });
    return c;
}

void Context::with_conditions(CLI::App* command) {
    command->add_option("--at", words.at, "temperature: 77K, 20degC, 1500degF (default 293.15K)");
    command->add_option(
        "--condition", words.condition,
        "reference, as-cast, annealed, cold-worked, solution-treated, aged, as-supplied, or a temper (T6)");
    command->add_option("--price-form", words.price_form, "exchange (default), retail (bar in a shop) or scrap");
    command->add_option("--purity-rrr", words.rrr, "residual resistivity ratio of a pure metal");
}

void Context::with_range(CLI::App* command) {
    with_conditions(command);
    command->get_option("--at")->description(
        "temperature: 77K, 20degC (default 293.15K), or a range 77K:300K over which the worst counts");
}

void Context::with_mixes_too(CLI::App* command) {
    command->add_option("--also", also, "a mix beside the metals of the reference, such as \"mix:Ag 92.5 Cu 7.5\"")
        ->check([](const std::string& word) {
            return names_mix(word) ? "" : "'" + word + "': a mix is expected, such as \"mix:Ag 92.5 Cu 7.5\"";
        });
    metal_lists.push_back(&also);
}

std::vector<std::string> Context::mixes_named() const {
    std::vector<std::string> mixes;
    for (const std::string* word : metal_words)
        if (names_mix(*word)) mixes.push_back(*word);
    for (const Stated* s : stated)
        for (const QuestionField& field : s->question().fields)
            if (field.type == AskType::metal)
                std::copy_if(s->texts(field.name).begin(), s->texts(field.name).end(), std::back_inserter(mixes),
                             names_mix);
    for (const auto* list : metal_lists) std::copy_if(list->begin(), list->end(), std::back_inserter(mixes), names_mix);
    return mixes;
}

int Context::failed(const Problem& problem) const {
    err << "pourbook: " << problem.text << "\n";
    return exit_code(problem);
}

int Context::printed(const std::string& text) const {
    out << text;
    return 0;
}

} // namespace pourbook
