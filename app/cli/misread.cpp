#include "cli/misread.hpp"

#include "core/nearest_words.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

const CLI::App& deepest(const CLI::App& app) {
    const auto parsed = app.get_subcommands();
    return parsed.empty() ? app : deepest(*parsed.front());
}

std::string in_one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

std::vector<std::string> option_names(const CLI::App& app) {
    std::vector<std::string> out;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames()) out.push_back("--" + name);
    if (const CLI::App* parent = app.get_parent()) {
        const auto more = option_names(*parent);
        out.insert(out.end(), more.begin(), more.end());
    }
    return out;
}

/// The words left over, in the order in which they were written.
std::vector<std::string> left_over(const CLI::App& root, const std::vector<std::string>& words) {
    std::vector<std::string> extras = root.remaining(true);
    const auto place = [&](const std::string& word) { return std::find(words.begin(), words.end(), word); };
    std::stable_sort(extras.begin(), extras.end(),
                     [&](const std::string& a, const std::string& b) { return place(a) < place(b); });
    return extras;
}

std::string of_extra(const CLI::App& command, const std::string& extra) {
    if (extra.starts_with("-")) {
        const std::string name = extra.substr(0, extra.find('='));
        if (command.get_name() == "drop" && name == "--time")
            return "'--time' is no option here: drop says how long a fall takes; `pourbook design --time ...` finds "
                   "the "
                   "tube for a time, `pourbook infer --time ...` what a measured one says";
        return "'" + name + "' is no option here" + did_you_mean(name, option_names(command));
    }
    const std::vector<std::string> kinds = command_names(command);
    if (!kinds.empty()) {
        const std::string near = did_you_mean(extra, kinds);
        return "'" + extra + "' is none of its kinds" + (near.empty() ? ": one of " + joined(kinds) : near);
    }
    return "'" + extra + "' was not expected: put a name of several words in quotes";
}

std::string path_of(const CLI::App& command) {
    const CLI::App* parent = command.get_parent();
    return (parent ? path_of(*parent) + " " : "") + command.get_name();
}

/// The place behind the program's own options, such as --workshop FILE.
std::size_t first_word(const CLI::App& root, const std::vector<std::string>& words) {
    std::size_t at = 0;
    while (at < words.size() && words[at].starts_with("-")) {
        const CLI::Option* option = root.get_option_no_throw(words[at]);
        at += option && option->get_items_expected_max() > 0 ? 2 : 1;
    }
    return at;
}

} // namespace

std::string command_read(const CLI::App& root) {
    return path_of(deepest(root));
}

std::string misread(const CLI::App& root, const CLI::ParseError& error, const std::vector<std::string>& words) {
    const std::vector<std::string> extras = left_over(root, words);
    std::string text = in_one_line(error.what());
    if (dynamic_cast<const CLI::ExtrasError*>(&error) && !extras.empty())
        text = of_extra(deepest(root), extras.front());
    if (text.ends_with("?")) return text + " See `" + command_read(root) + " --help`";
    return text + ": see `" + command_read(root) + " --help`";
}

std::vector<std::string> command_names(const CLI::App& root) {
    std::vector<std::string> out;
    for (const CLI::App* command : root.get_subcommands([](const CLI::App*) { return true; }))
        out.push_back(command->get_name());
    return out;
}

std::vector<std::string> with_command(const CLI::App& root, std::vector<std::string> words, bool display) {
    if (words.empty() && !display) return {"rank", "--top", "10"};
    const std::size_t at = first_word(root, words);
    if (at >= words.size()) return words;
    const std::vector<std::string> commands = command_names(root);
    if (std::find(commands.begin(), commands.end(), words[at]) != commands.end()) return words;
    const bool several = at + 1 < words.size() && !words[at + 1].starts_with("-");
    words.insert(words.begin() + static_cast<std::ptrdiff_t>(at), several ? "ask" : "sheet");
    return words;
}

} // namespace pourbook
