#include "cli/completion.hpp"

#include "cli/declared.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr const char* list_metals = "pourbook metals 2>/dev/null | sed 1d | cut -d ' ' -f 1";

struct CommandPlace {
    std::string path; // each word with a blank before it: " chart rank"; empty: the program
    const CLI::App* app;
};

void add_places(const CLI::App& app, const std::string& path, std::vector<CommandPlace>& places) {
    places.push_back({path, &app});
    for (const CLI::App* command : commands_of(app)) add_places(*command, path + " " + command->get_name(), places);
}

std::string name_of(const CLI::Option& option) {
    return "--" + option.get_lnames().front();
}

/// "size mass budget" of an option that takes one of these; empty: words of one's own, or a file.
std::string choices_of(const CLI::Option& option) {
    const std::string kind = option.get_type_name();
    const std::size_t open = kind.find(":{"), close = kind.find('}');
    if (open == std::string::npos || close == std::string::npos) return "";
    std::string choices = kind.substr(open + 2, close - open - 2);
    std::replace(choices.begin(), choices.end(), ',', ' ');
    return choices;
}

bool takes_metal(const CLI::App& app) {
    const auto names_metal = [](const CLI::Option* o) {
        const std::string name = o->get_name(true);
        return o->get_lnames().empty() && (name.starts_with("metal") || name.starts_with("METAL"));
    };
    return !app.get_options(names_metal).empty();
}

std::string in_quotes(const std::string& text) {
    std::string out = "'";
    for (const char c : text) out += c == '\'' ? "'\\''" : std::string(1, c);
    return out + "'";
}

/// A case that goes one word deeper where that word is a command.
std::string walk(const std::vector<CommandPlace>& places, const std::string& word) {
    std::string paths;
    for (const CommandPlace& place : places)
        if (!place.path.empty()) paths += (paths.empty() ? "" : "|") + in_quotes(place.path);
    return "    case \"$at " + word + "\" in " + paths + ") at+=\" " + word + "\" ;; esac\n";
}

std::string bash_completion(const std::vector<CommandPlace>& places) {
    std::string out = "_pourbook() {\n  local word=${COMP_WORDS[COMP_CWORD]} at= words= i\n"
                      "  for ((i = 1; i < COMP_CWORD; i++)); do\n" +
                      walk(places, "${COMP_WORDS[i]}") +
                      "  done\n  COMPREPLY=()\n  case \"$at ${COMP_WORDS[COMP_CWORD - 1]}\" in\n";
    for (const CommandPlace& place : places)
        for (const CLI::Option* o : options_of(*place.app))
            if (!is_flag(*o))
                out += "  " + in_quotes(place.path + " " + name_of(*o)) + ") COMPREPLY=($(compgen -W " +
                       in_quotes(choices_of(*o)) + " -- \"$word\")); return ;;\n";
    out += "  esac\n  case \"$at\" in\n";
    for (const CommandPlace& place : places) {
        std::string words;
        for (const CLI::App* command : commands_of(*place.app)) words += command->get_name() + " ";
        for (const CLI::Option* o : options_of(*place.app)) words += name_of(*o) + " ";
        out += "  " + in_quotes(place.path) + ") words=" + in_quotes(words) +
               (takes_metal(*place.app) ? std::string("$(") + list_metals + ")" : "") + " ;;\n";
    }
    return out + "  esac\n  COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n}\n"
                 "complete -o default -F _pourbook pourbook\n";
}

/// A word with what it means, as zsh's _describe takes it.
std::string described(const std::string& name, const std::string& meaning) {
    return " " + in_quotes(name + ":" + meaning);
}

std::string zsh_completion(const std::vector<CommandPlace>& places) {
    std::string out = "_pourbook() {\n  local at= i\n  local -a commands options metals\n"
                      "  for ((i = 2; i < CURRENT; i++)); do\n" +
                      walk(places, "${words[i]}") + "  done\n  case \"$at ${words[CURRENT-1]}\" in\n";
    for (const CommandPlace& place : places)
        for (const CLI::Option* o : options_of(*place.app))
            if (!is_flag(*o))
                out += "  " + in_quotes(place.path + " " + name_of(*o)) + ") " +
                       (choices_of(*o).empty() ? "_files" : "compadd -- " + choices_of(*o)) + "; return ;;\n";
    out += "  esac\n  case \"$at\" in\n";
    for (const CommandPlace& place : places) {
        out += "  " + in_quotes(place.path) + ")\n    commands=(";
        for (const CLI::App* command : commands_of(*place.app))
            out += described(command->get_name(), command->get_description());
        out += ")\n    options=(";
        for (const CLI::Option* o : options_of(*place.app)) out += described(name_of(*o), o->get_description());
        out += ")\n    metals=(" + (takes_metal(*place.app) ? std::string("$(") + list_metals + ")" : "") + ") ;;\n";
    }
    return out + "  esac\n  (( $#commands )) && _describe command commands\n  (( $#metals )) && compadd -a metals\n"
                 "  _describe -o option options\n}\n"
                 "if [[ $funcstack[1] == _pourbook ]]; then _pourbook \"$@\"; else compdef _pourbook pourbook; fi\n";
}

std::string fish_completion(const std::vector<CommandPlace>& places) {
    std::string out = "set -g __pourbook_places";
    for (const CommandPlace& place : places)
        if (!place.path.empty()) out += " " + in_quotes(place.path);
    out += "\nfunction __pourbook_at\n  set -l at \"\"\n  for word in (commandline -opc)[2..]\n"
           "    if contains -- \"$at $word\" $__pourbook_places\n      set at \"$at $word\"\n    end\n  end\n"
           "  test \"$at\" = \"$argv[1]\"\nend\n";
    for (const CommandPlace& place : places) {
        const std::string here = "complete -c pourbook -n " + in_quotes("__pourbook_at " + in_quotes(place.path));
        for (const CLI::App* command : commands_of(*place.app))
            out += here + " -f -a " + command->get_name() + " -d " + in_quotes(command->get_description()) + "\n";
        for (const CLI::Option* o : options_of(*place.app)) {
            const std::string choices = choices_of(*o);
            const std::string value = is_flag(*o) ? "" : choices.empty() ? " -r" : " -x -a " + in_quotes(choices);
            out += here + " -l " + o->get_lnames().front() + value + " -d " + in_quotes(o->get_description()) + "\n";
        }
        if (takes_metal(*place.app)) out += here + " -f -a " + in_quotes(std::string("(") + list_metals + ")") + "\n";
    }
    return out;
}

} // namespace

std::string completion(const CLI::App& root, const std::string& shell) {
    std::vector<CommandPlace> places;
    add_places(root, "", places);
    const std::string made = "# Completion of pourbook; made by `pourbook help --completion " + shell + "`.\n";
    return shell == "bash"   ? made + bash_completion(places)
           : shell == "zsh"  ? "#compdef pourbook\n" + made + zsh_completion(places)
           : shell == "fish" ? made + fish_completion(places)
                             : "";
}

} // namespace pourbook
