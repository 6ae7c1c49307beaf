#include "cli/manual.hpp"

#include <functional>
#include <vector>

namespace pourbook {
namespace {

using Commands = std::vector<const CLI::App*>;

Commands commands_of(const CLI::App& app) {
    return app.get_subcommands([](const CLI::App*) { return true; });
}

bool is_flag(const CLI::Option& option) {
    return option.get_items_expected_max() == 0;
}

std::vector<const CLI::Option*> options_of(const CLI::App& app) {
    return app.get_options([](const CLI::Option* o) { return !o->get_lnames().empty() && !o->get_group().empty(); });
}

/// Text of the manual: backslashes, and dots and quotes at the start of a line, mean something to the macros.
std::string roff(const std::string& text) {
    std::string out;
    bool starts = true;
    for (const char c : text) {
        if (starts && (c == '.' || c == '\'')) out += "\\&";
        out += c == '\\' ? "\\e" : c == '-' ? "\\-" : std::string(1, c);
        starts = c == '\n';
    }
    return out;
}

std::string head_of(const CLI::Option& option) {
    std::string out = "\\fB\\-\\-" + roff(option.get_lnames().front()) + "\\fR";
    return is_flag(option) ? out : out + " \\fI" + roff(option.get_type_name().substr(0, 24)) + "\\fR";
}

void write_command(std::string& out, const CLI::App& app, const std::string& path) {
    std::string positionals;
    for (const CLI::Option* o : app.get_options([](const CLI::Option* one) { return one->get_lnames().empty(); }))
        positionals += " \\fI" + roff(o->get_name(true)) + "\\fR";
    out += ".SS \"" + roff(path) + "\"\n\\fB" + roff(path) + "\\fR" + positionals + "\n.PP\n" +
           roff(app.get_description()) + "\n";
    for (const CLI::Option* o : options_of(app))
        if (o->get_lnames().front() != "help") out += ".TP\n" + head_of(*o) + "\n" + roff(o->get_description()) + "\n";
    if (const std::string example = app.get_footer(); example.starts_with("Example:\n"))
        out += ".PP\nExample:\n.PP\n.RS\n.nf\n" + roff(example.substr(example.find("pourbook"))) + "\n.fi\n.RE\n";
    for (const CLI::App* command : commands_of(app)) write_command(out, *command, path + " " + command->get_name());
}

struct Level {
    std::string path; // "chart rank"; empty: the program
    std::vector<std::string> words;
};

void add_levels(const CLI::App& app, const std::string& path, std::vector<Level>& levels) {
    Level level{path, {}};
    for (const CLI::App* command : commands_of(app)) level.words.push_back(command->get_name());
    for (const CLI::Option* o : options_of(app)) level.words.push_back("--" + o->get_lnames().front());
    levels.push_back(level);
    for (const CLI::App* command : commands_of(app))
        add_levels(*command, path + (path.empty() ? "" : " ") + command->get_name(), levels);
}

std::vector<Level> levels_of(const CLI::App& root) {
    std::vector<Level> levels;
    add_levels(root, "", levels);
    return levels;
}

std::string words_of(const Level& level) {
    std::string out;
    for (const std::string& word : level.words) out += (out.empty() ? "" : " ") + word;
    return out;
}

/// A case of a shell for every command, by the words of `commands` typed so far.
std::string cases(const CLI::App& root, const std::string& assign) {
    std::string out;
    for (const Level& level : levels_of(root))
        out += "    '" + level.path + "') " + assign + "'" + words_of(level) + "' ;;\n";
    return out;
}

std::string bash_completion(const CLI::App& root) {
    return "# Completion of pourbook for bash; made by `pourbook help --completion bash`.\n"
           "_pourbook() {\n"
           "  local path= word words=\n"
           "  for word in \"${COMP_WORDS[@]:1:COMP_CWORD-1}\"; do\n"
           "    case $word in -*) break ;; esac\n"
           "    if [ -z \"$path\" ]; then path=$word\n"
           "    elif [ \"$path\" = \"${path%% *}\" ]; then path=\"$path $word\"; fi\n"
           "  done\n"
           "  _pourbook_words \"$path\"\n"
           "  [ -n \"$words\" ] || _pourbook_words \"${path%% *}\"\n"
           "  COMPREPLY=($(compgen -W \"$words\" -- \"${COMP_WORDS[COMP_CWORD]}\"))\n"
           "}\n"
           "_pourbook_words() {\n"
           "  case $1 in\n" +
           cases(root, "words=") +
           "  esac\n"
           "}\n"
           "complete -o default -F _pourbook pourbook\n";
}

std::string zsh_completion(const CLI::App& root) {
    return "#compdef pourbook\n"
           "# Completion of pourbook for zsh; made by `pourbook help --completion zsh`.\n"
           "_pourbook_words() {\n"
           "  case $1 in\n" +
           cases(root, "found=") +
           "  esac\n"
           "}\n"
           "_pourbook() {\n"
           "  local typed= found= word\n"
           "  for word in ${words[2,CURRENT-1]}; do\n"
           "    [[ $word == -* ]] && break\n"
           "    if [[ -z $typed ]]; then typed=$word; elif [[ $typed != *' '* ]]; then typed=\"$typed $word\"; fi\n"
           "  done\n"
           "  _pourbook_words \"$typed\"\n"
           "  [[ -n $found ]] || _pourbook_words \"${typed%% *}\"\n"
           "  compadd -- ${=found}\n"
           "  _files\n"
           "}\n"
           "if [[ $funcstack[1] == _pourbook ]]; then _pourbook; else compdef _pourbook pourbook; fi\n";
}

std::string quoted_fish(const std::string& text) {
    std::string out;
    for (const char c : text) out += c == '\'' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    return "'" + out + "'";
}

void add_fish(std::string& out, const CLI::App& app, const std::string& condition) {
    for (const CLI::Option* o : options_of(app))
        out += "complete -c pourbook" + condition + " -l " + o->get_lnames().front() + (is_flag(*o) ? "" : " -r") +
               " -d " + quoted_fish(o->get_description()) + "\n";
    for (const CLI::App* command : commands_of(app)) {
        const std::string& name = command->get_name();
        const std::string here = condition.empty() ? " -n __fish_use_subcommand" : condition;
        out += "complete -c pourbook" + here + " -a " + name + " -d " + quoted_fish(command->get_description()) + "\n";
        if (condition.empty()) add_fish(out, *command, " -n '__fish_seen_subcommand_from " + name + "'");
    }
}

std::string fish_completion(const CLI::App& root) {
    std::string out = "# Completion of pourbook for fish; made by `pourbook help --completion fish`.\n";
    add_fish(out, root, "");
    return out;
}

} // namespace

std::string manual_page(const CLI::App& root, const std::string& version, const std::string& date) {
    std::string out =
        ".TH POURBOOK 1 \"" + date + "\" \"pourbook " + version +
        "\" \"User Commands\"\n.SH NAME\npourbook \\- choose a casting metal from cited figures\n"
        ".SH SYNOPSIS\n\\fBpourbook\\fR [\\fICOMMAND\\fR] [\\fIOPTIONS\\fR]\n.br\n\\fBpourbook\\fR \\fIMETAL\\fR\n"
        ".br\n\\fBpourbook ask\\fR \\fIWORDS\\fR\n.SH DESCRIPTION\n" +
        roff("Without a command the window opens. A quantity says its unit: 25mm, 1 1/2in, 20C, 8.50 EUR/kg; one mm, "
             "cm or in at the end of a chain serves all of it, as in 22:28:400mm.") +
        "\n.SH OPTIONS\n";
    for (const CLI::Option* o : options_of(root))
        out += ".TP\n" + head_of(*o) + "\n" + roff(o->get_description()) + "\n";
    out += ".SH COMMANDS\n";
    for (const CLI::App* command : commands_of(root)) write_command(out, *command, "pourbook " + command->get_name());
    out += ".SH EXIT STATUS\n";
    for (const char* line : {"0\nanswered", "2\nthe words can't be read",
                             "3\nunknown metal or property, no value, or outside what is cited",
                             "4\na damaged or newer file, or one that can't be written", "5\nrefused with the reason"})
        out += std::string(".TP\n") + line + "\n";
    return out + ".SH ENVIRONMENT\n.TP\nCOLUMNS\nwidth to which text is folded\n";
}

std::string completion(const CLI::App& root, const std::string& shell) {
    return shell == "bash"   ? bash_completion(root)
           : shell == "zsh"  ? zsh_completion(root)
           : shell == "fish" ? fish_completion(root)
                             : "";
}

} // namespace pourbook
