#include "cli/run.hpp"

#include "answers/parts/citation.hpp"
#include "cli/context.hpp"
#include "cli/examples.hpp"
#include "cli/misread.hpp"
#include "cli/terminal_text.hpp"
#include "core/materials/metal_family.hpp"
#include "core/nearest_words.hpp"
#include "core/quantity/unit.hpp"
#include "core/workshop/limited_workshop.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/say/shown_money.hpp"
#include "questions/views.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <new>
#include <sstream>

namespace pourbook {
namespace {

struct TopWords {
    std::string reference, workshop, size, bare_numbers;
    bool light = false;
    WindowWords window;
};

void read_size(const std::string& size, WindowWords& window) {
    if (size.empty()) return;
    char rest = 0;
    const bool read = std::sscanf(size.c_str(), "%dx%d%c", &window.width, &window.height, &rest) == 2;
    const auto fits = [](int pixels) { return pixels >= 200 && pixels <= 8192; };
    if (!read || !fits(window.width) || !fits(window.height))
        throw CLI::ValidationError("--size '" + size + "'", "WIDTHxHEIGHT is expected, such as 1440x900");
}

std::vector<std::string> names_of_views() {
    std::vector<std::string> names;
    for (const ViewName& view : view_names) names.emplace_back(view.name);
    return names;
}

std::string one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

/// The program's version stands without a reference; the data's needs one that can be read.
std::string version_words(const CommandLine& setup, const std::string& reference) {
    const std::string program = "pourbook " + program_version() + "\n";
    try {
        const Catalogue catalogue = setup.open(reference.empty() ? setup.default_reference : reference);
        return program + "data " + catalogue.data_version + "\ncite as: " + how_to_cite(catalogue.data_version);
    } catch (const std::exception& e) {
        return program + "data: " + one_line(e.what());
    }
}

void declare_top(Context& context, TopWords& words, const CommandLine& setup) {
    CLI::App& app = context.app;
    app.name("pourbook");
    app.description("Pourbook: choose a casting metal from cited figures. Without a command: the window.");
    app.add_option("--reference", words.reference, "another reference database");
    app.set_version_flag(
        "--version", [&] { return version_words(setup, words.reference); }, "version, data version, how to cite");
    app.add_option("--workshop", words.workshop, "another file of your own entries: stock, prices, trials, goals ...");
    app.add_option("--view", words.window.view, "window: start in this view")
        ->check(CLI::IsMember(names_of_views(), CLI::ignore_case));
    app.add_option(
        "--link", words.window.link,
        "window: open what a link says (\"Copy link\"), such as '#versus=copper,silver&goal=strongest-brake'");
    app.add_option("--stl", words.window.part_file, "window: start in Pour with this part, an STL file in mm");
    app.add_option("--size", words.size, "window: WIDTHxHEIGHT");
    app.add_option("--scale", words.window.scale, "window: scale of text and lines (default: the display's)");
    app.add_flag("--light", words.light, "window: light colours");
    app.add_option("--state", words.window.state_file, "window: keep what is pinned and chosen in this file");
    app.add_option("--test-socket", words.window.test_socket, "window: answer a test script on this socket")->group("");
    app.add_option("--screenshot", words.window.screenshot, "window: write this PNG and end");
    app.add_option("--bare-numbers", words.bare_numbers,
                   "for scripts: si reads a number without a unit in SI (metres, kelvin, kilograms) instead of asking")
        ->check(CLI::IsMember({"si"}));
    app.require_subcommand(0, 1);
    app.fallthrough();
    app.callback([&words] {
        read_size(words.size, words.window);
        words.window.dark = !words.light;
    });
}

void declare_commands(Context& context) {
    declare_asked(context);
    declare_chart(context);
    declare_pour(context);
    declare_defect(context);
    declare_sources(context);
    declare_check(context);
    declare_film(context);
    declare_export(context);
    declare_entries(context);
    declare_undo(context);
    declare_backup(context);
    declare_import(context);
    declare_log(context);
    declare_ask(context);
    declare_help(context);
}

/// A mix named where a metal is expected is one metal more in the catalogue that answers.
int answer(Context& context, const Catalogue& catalogue) {
    const std::vector<std::string> mixes = context.mixes_named();
    if (mixes.empty()) return context.answer(catalogue);
    const Result<Catalogue> extended = with_mixes(catalogue, mixes);
    return extended ? context.answer(*extended) : context.failed(extended.problem());
}

/// A word that stands for a kind of metal took the usual grade: which, and what else there is.
void say_families(const Context& context, const Catalogue& catalogue) {
    if (context.json) return;
    for (const std::string& word : context.metals_named()) {
        const bool plain = catalogue.metal(word) != nullptr && word != "copper";
        const std::string remark = plain ? "" : family_remark(catalogue, word);
        if (!remark.empty()) context.remark(remark);
    }
}

/// A lone word that is no command is a metal's name, or a slip.
std::optional<Problem> no_metal(const Context& context, const Catalogue& catalogue, const std::string& word) {
    if (word.empty() || find_metal(catalogue, word) || names_mix(word)) return std::nullopt;
    std::vector<std::string> known = command_names(context.app);
    std::string near = did_you_mean(word, known);
    for (const Metal& metal : catalogue.metals) known.push_back(metal.slug);
    if (near.empty()) near = did_you_mean(word, known);
    return unreadable("'" + word + "' is no command and no metal" + near + (near.empty() ? ": see" : " See") +
                      " `pourbook --help`");
}

bool has_display() {
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY"})
        if (const char* value = std::getenv(name); value && *value) return true;
    return false;
}

/// Always a file: SQLite takes some names with a colon in front as its own.
std::string own_file(const CommandLine& setup, const TopWords& top) {
    if (top.workshop.empty()) return setup.default_workshop;
    return top.workshop.front() == ':' ? "./" + top.workshop : top.workshop;
}

/// A file that is damaged or out of reach stops nothing that doesn't need it, and is not written.
std::unique_ptr<Workshop> own_workshop(const CommandLine& setup, const std::string& path) {
    Result<std::unique_ptr<Workshop>> workshop = setup.open_workshop(path);
    if (workshop) return std::move(*workshop);
    return std::make_unique<LimitedWorkshop>(path, workshop.problem());
}

/// Whether the answer may rest on metals of the person's own: not where only metals of the reference are named.
OwnMetalsToo own_metals_for(const Context& context, const Catalogue& reference) {
    static constexpr std::array asking_of_the_named = {"value", "sheet", "versus", "compare", "drop", "drag"};
    static constexpr std::array asking_of_none = {"undo", "redo", "changes", "backup", "help", "defect"};
    const auto commands = context.app.get_subcommands();
    const std::string command = commands.empty() ? "" : commands.front()->get_name();
    const auto among = [&](const auto& names) { return std::find(names.begin(), names.end(), command) != names.end(); };
    if (among(asking_of_none)) return OwnMetalsToo::no;
    const std::vector<std::string> named = context.metals_named();
    const auto known = [&](const std::string& word) { return reference.metal(word) != nullptr; };
    const bool all_known = !named.empty() && std::all_of(named.begin(), named.end(), known);
    return all_known && among(asking_of_the_named) ? OwnMetalsToo::no : OwnMetalsToo::yes;
}

/// Whether the answer is, or may be, one of a casting: a question that has the field "as" says so, others may be.
OwnCastingsToo own_castings_for(const Context& context) {
    static constexpr std::array asking_of_none = {"pour", "defect",   "mix",   "stock",   "price",
                                                  "rate", "trial",    "goal",  "pin",     "profile",
                                                  "undo", "crucible", "mould", "changes", "sources"};
    const auto commands = context.app.get_subcommands();
    const std::string command = commands.empty() ? "" : commands.front()->get_name();
    if (std::find(asking_of_none.begin(), asking_of_none.end(), command) != asking_of_none.end())
        return OwnCastingsToo::no;
    for (const Stated* stated : context.stated) {
        const QuestionTable& question = stated->question();
        if (question.name != command || !question.has("as")) continue;
        const bool by_itself = question.fields[question.at("as")].absent == "casting";
        const auto said = [&](const char* field) { return question.has(field) && stated->states(field); };
        const bool of_casting = said("as") ? stated->text("as") == "casting"
                                           : by_itself || said("feedstock") || said("porosity") || said("treatment");
        return of_casting ? OwnCastingsToo::yes : OwnCastingsToo::no;
    }
    return OwnCastingsToo::yes;
}

/// Opens reference and workshop, joins them and answers.
int answered(const CommandLine& setup, const TopWords& top, Context& context, const std::string& lone_word) {
    const std::string path = own_file(setup, top);
    if (context.answer_unopened) return context.answer_unopened(path);
    Catalogue reference = setup.open(top.reference.empty() ? setup.default_reference : top.reference);
    reference.today = setup.today.substr(0, 7);
    std::unique_ptr<Workshop> workshop = own_workshop(setup, path);
    if (const std::string remark = workshop->remark(); !remark.empty()) context.remark(remark);
    WorkshopData own = read_workshop(*workshop, own_metals_for(context, reference));
    if (own.fault) workshop = std::make_unique<LimitedWorkshop>(path, *own.fault, std::move(workshop));
    if (!context.currency.empty()) {
        const Result<Converted> rate = newest_rate(context.currency, own.rates);
        if (!rate) return context.failed({rate.problem().kind, "--currency: " + rate.problem().text, 0});
        own.profile.currency = context.currency;
    }
    if (!context.answer) return setup.window(reference, top.window, *workshop);
    const WithWorkshop with = with_workshop(std::move(reference), own, own_castings_for(context));
    if (const auto problem = no_metal(context, with.catalogue, lone_word)) return context.failed(*problem);
    context.workshop = workshop.get();
    context.own = own;
    const int code = answer(context, with.catalogue);
    if (code == 0) say_families(context, with.catalogue);
    for (const std::string& remark : with.remarks)
        if (code == 0 || (own.fault && code != 4)) context.remark(remark);
    return code;
}

int run_words(const CommandLine& setup, const std::vector<std::string>& words, std::ostream& out, std::ostream& err) {
    Context context(setup, out, err);
    context.read_mesh = setup.read_mesh;
    context.date = setup.today;
    TopWords top;
    declare_top(context, top, setup);
    declare_commands(context);
    with_examples(context.app);
    const std::vector<std::string> asked = with_command(context.app, words, has_display());
    if (words.empty() && !asked.empty())
        context.remark(
            "no display here, so no window; this is what it would open with (all commands: pourbook --help)");
    try {
        context.app.parse(
            std::vector<std::string>(asked.rbegin(), asked.rend())); // the parser takes them from the back
    } catch (const CLI::Success& done) {                             // --help, --version
        context.app.exit(done, out, err);
        return 0;
    } catch (const CLI::ParseError& e) {
        context.remark(misread(context.app, e, asked));
        return 2;
    }
    read_bare_numbers_as_si(top.bare_numbers == "si");
    try {
        const auto added = std::mismatch(words.begin(), words.end(), asked.begin(), asked.end());
        const bool sheet_added = asked.size() == words.size() + 1 && *added.second == "sheet";
        return answered(setup, top, context, sheet_added ? *added.first : "");
    } catch (const std::bad_alloc&) {
        context.remark("there is not enough memory for this");
        return 4;
    } catch (const std::exception& e) {
        context.remark(one_line(e.what()));
        return 4;
    }
}

} // namespace

int run_command_line(const CommandLine& setup, const std::vector<std::string>& words, std::ostream& out,
                     std::ostream& err) {
    std::ostringstream answer;
    const int code = run_words(setup, words, answer, err);
    errno = 0;
    if (setup.terminal)
        out << for_terminal(answer.str()) << std::flush;
    else
        out << answer.str() << std::flush;
    if (out) return code;
    err << "pourbook: the answer could not be written: " << std::strerror(errno ? errno : EIO) << "\n";
    return 4;
}

} // namespace pourbook
