// What the commands share: where to write, the options every command has, and how a result or a problem leaves the
// program. A command is declared by one function in a file of its own; its callback stores the work in `answer`.
#pragma once

#include "cli/run.hpp"
#include "cli/terminal.hpp"
#include "cli/words.hpp"
#include "questions/fields.hpp"
#include "questions/workshop/with_workshop.hpp"

#include <CLI/CLI.hpp>

#include <functional>
#include <memory>
#include <ostream>
#include <string>

namespace pourbook {

struct Context {
    CLI::App app;
    std::ostream& out;
    std::ostream& err;
    bool json = false;
    std::string units = "si";
    std::string currency;                                               // empty: the profile's
    std::function<Result<casting::Mesh>(const std::string&)> read_mesh; // of an STL file
    std::function<int(const Catalogue&)> answer;                        // empty: the window
    std::vector<const Stated*> stated;                                  // what the options of a table were given
    std::function<int(const std::string&)> answer_unopened;             // with the workshop's path, before it is opened
    std::string date;                                                   // "2026-11-25"
    Workshop* workshop = nullptr;                                       // set before `answer` is called
    WorkshopData own;                                                   // what it holds

    const CommandLine& setup;

    Context(const CommandLine& command_line, std::ostream& out_stream, std::ostream& err_stream)
        : out(out_stream), err(err_stream), setup(command_line) {}

    /// A command with --json, --units and --currency.
    CLI::App* command(const std::string& name, const std::string& help) { return command(&app, name, help); }
    CLI::App* command(CLI::App* parent, const std::string& name, const std::string& help);
    /// Every metal that the arguments name.
    std::vector<std::string> metals_named() const;
    /// What the arguments name as "mix:..." among them.
    std::vector<std::string> mixes_named() const;
    /// One line on standard error, folded where COLUMNS is stated.
    void remark(const std::string& text) const;
    /// The problem as such a line; the exit code of the contract.
    int failed(const Problem& problem) const;
    int printed(const std::string& text) const;
    /// What a person reads: as wide as COLUMNS says; on a terminal with heads in bold, unless NO_COLOR is set.
    int told(const std::string& text) const;

    /// Writes a result with json(result) or text(result, units).
    template <class R, class Json, class Text> int answered(const Result<R>& result, Json as_json, Text as_text) const {
        if (!result) return failed(result.problem());
        if (json) return printed(as_json(*result));
        const Result<UnitSystem> system = units_from(units);
        return system ? told(as_text(*result, *system)) : failed(system.problem());
    }
};

void declare_asked(Context& context); // all that askers.hpp has
void declare_chart(Context& context);
void declare_pour(Context& context);
void declare_defect(Context& context);
void declare_sources(Context& context);
void declare_check(Context& context);
void declare_export(Context& context);
void declare_film(Context& context);
void declare_entries(Context& context); // stock, price, trial, goal, profile ...
void declare_backup(Context& context);
void declare_import(Context& context);
void declare_log(Context& context);
void declare_undo(Context& context);
void declare_help(Context& context);
void declare_ask(Context& context);

} // namespace pourbook
