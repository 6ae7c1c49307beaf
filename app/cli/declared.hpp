// The commands and options as they are declared, for what is made from them.
#pragma once

#include <CLI/CLI.hpp>

#include <string>
#include <vector>

namespace pourbook {

inline std::vector<const CLI::App*> commands_of(const CLI::App& app) {
    return app.get_subcommands([](const CLI::App*) { return true; });
}

/// Without those that are not shown in the help, and without arguments.
inline std::vector<const CLI::Option*> options_of(const CLI::App& app) {
    return app.get_options([](const CLI::Option* o) { return !o->get_lnames().empty() && !o->get_group().empty(); });
}

inline bool is_flag(const CLI::Option& option) {
    return option.get_items_expected_max() == 0;
}

} // namespace pourbook
