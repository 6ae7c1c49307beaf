// What the commands share: where to write, the options every command has, and how a result or a problem leaves the
// program. A command is declared by one function in a file of its own; its callback stores the work in `answer`.
#pragma once

#include "cli/run.hpp"
#include "cli/words.hpp"
#include "questions/fields.hpp"
#include "questions/metals/with_workshop.hpp"

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
    std::string currency; // empty: the profile's
    ConditionWords words;
    std::function<Result<casting::Mesh>(const std::string&)> read_mesh; // of an STL file
    std::function<int(const Catalogue&)> answer;                        // empty: the window
    std::vector<std::string> also;                                      // mixes named by --also
    std::vector<const std::string*> metal_words;                        // arguments that name a metal
    std::vector<const std::vector<std::string>*> metal_lists;           // the same, several
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
    /// Adds --at, --condition, --purity-rrr.
    void with_conditions(CLI::App* command);
    /// The same, where --at may also be a range of temperatures: answer by under_range().
    void with_range(CLI::App* command);
    /// What the arguments name as "mix:..." among them.
    std::vector<std::string> mixes_named() const;
    /// Adds --also: mixes to weigh beside the metals of the reference.
    void with_mixes_too(CLI::App* command);
    /// One line on standard error; the exit code of the contract.
    int failed(const Problem& problem) const;
    int printed(const std::string& text) const;

    /// Writes a result with json(result) or text(result, units).
    template <class R, class Json, class Text> int answered(const Result<R>& result, Json as_json, Text as_text) const {
        if (!result) return failed(result.problem());
        if (json) return printed(as_json(*result));
        const Result<UnitSystem> system = units_from(units);
        return system ? printed(as_text(*result, *system)) : failed(system.problem());
    }

    /// Reads the conditions first, then answers with answer_with(catalogue, conditions).
    template <class F> std::function<int(const Catalogue&)> under_conditions(F answer_with) {
        return [this, answer_with](const Catalogue& catalogue) {
            const Result<Conditions> conditions = conditions_from(words);
            if (!conditions) return failed(conditions.problem());
            return answer_with(catalogue, *conditions);
        };
    }

    /// The same with the upper end of a range of temperatures, NaN where --at is a single one:
    /// answer_with(catalogue, conditions, to_K).
    template <class F> std::function<int(const Catalogue&)> under_range(F answer_with) {
        return [this, answer_with](const Catalogue& catalogue) {
            const Result<double> to_K = take_upper_end(words.at);
            if (!to_K) return failed(to_K.problem());
            const auto answer_at = [&](const Catalogue& c, const Conditions& conditions) {
                return answer_with(c, conditions, *to_K);
            };
            return under_conditions(answer_at)(catalogue);
        };
    }
};

void declare_metals(Context& context);
void declare_value(Context& context);
void declare_sheet(Context& context);
void declare_rank(Context& context);
void declare_tradeoff(Context& context);
void declare_chart(Context& context);
void declare_compare(Context& context);
void declare_versus(Context& context);
void declare_drop(Context& context);
void declare_drag(Context& context);
void declare_infer(Context& context);
void declare_sweep(Context& context);
void declare_plate(Context& context);
void declare_measure(Context& context);
void declare_mix(Context& context);
void declare_pour(Context& context);
void declare_defect(Context& context);
void declare_sources(Context& context);
void declare_check(Context& context);
void declare_entries(Context& context); // stock, price, trial, goal, profile ...
void declare_backup(Context& context);
void declare_import(Context& context);
void declare_log(Context& context);
void declare_undo(Context& context);
void declare_help(Context& context);

} // namespace pourbook
