#include "cli/manual.hpp"

#include "cli/declared.hpp"

namespace pourbook {
namespace {

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
    return out +
           ".SH ENVIRONMENT\n.TP\nCOLUMNS\nwidth to which text is folded\n.SH FILES\n"
           ".TP\n.I ~/.local/share/pourbook/workshop.sqlite\nthe file of your own entries, with its copies beside it\n"
           ".TP\n.I ~/.local/state/pourbook/window.json\nwhat is chosen in the window\n";
}

} // namespace pourbook
