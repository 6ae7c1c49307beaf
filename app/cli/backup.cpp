#include "cli/context.hpp"

#include "answers/workshop/entries_report.hpp"

#include <filesystem>

namespace pourbook {
namespace {

/// Beside the file with today's date, and -2, -3 ... for more in a day.
std::string usual_backup(const Context& context) {
    const std::string first = context.workshop->path() + ".backup-" + context.date;
    std::string name = first;
    std::error_code error;
    for (int i = 2; std::filesystem::exists(name, error); ++i) name = first + "-" + std::to_string(i);
    return name;
}

int back_up(const Context& context, const std::string& file) {
    const std::string target = file.empty() ? usual_backup(context) : file;
    const Result<bool> done = context.workshop->back_up(target);
    return done ? context.printed("Backed up to " + target + "\n") : context.failed(done.problem());
}

int restored(const Context& context, const Result<std::string>& kept, const std::string& path) {
    if (!kept) return context.failed(kept.problem());
    return context.printed("Restored " + path + (kept->empty() ? "" : "; what was there is now " + *kept) + "\n");
}

int salvaged(const Context& context, const Result<Salvage>& gathered, const std::string& target) {
    if (!gathered) return context.failed(gathered.problem());
    std::string text = std::to_string(gathered->kept) + " entries gathered into " + target + "\n";
    for (const std::string& lost : gathered->lost) text += "  lost: " + lost + "\n";
    return context.printed(text + "`pourbook backup --restore " + target + "` puts it in the place of your file.\n");
}

} // namespace

void declare_backup(Context& context) {
    struct Words {
        std::string file, restore, salvage;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("backup", "copy your own file, or put a copy back in its place");
    c->add_option("file", words->file, "where to (default: beside it, with today's date); never overwritten");
    c->add_option("--restore", words->restore, "take this backup; what was there is kept beside it");
    c->add_option("--salvage", words->salvage,
                  "gather every sound entry of a damaged file of yours into this new file, and name what is lost");
    c->footer(
        "A copy is made by itself before the first change of each day: FILE.daily-2026-11-25 beside your file; the "
        "last seven are kept.");
    c->callback([&context, words] {
        if (!words->salvage.empty())
            context.answer_unopened = [&context, words](const std::string& path) {
                return salvaged(context, context.setup.salvage_workshop(path, words->salvage), words->salvage);
            };
        else if (words->restore.empty())
            context.answer = [&context, words](const Catalogue&) { return back_up(context, words->file); };
        else
            context.answer_unopened = [&context, words](const std::string& path) {
                return restored(context, context.setup.restore_workshop(path, words->restore), path);
            };
    });
}

void declare_undo(Context& context) {
    using Turn = Result<Change> (Workshop::*)();
    const auto declare = [&context](const char* name, const char* help, const char* said, Turn turn) {
        context.command(name, help)->callback([&context, said, turn] {
            context.answer = [&context, said, turn](const Catalogue&) {
                const Result<Change> change = (context.workshop->*turn)();
                if (!change) return context.failed(change.problem());
                if (context.json) return context.printed(json_of_changes({*change}));
                return context.printed(std::string(said) + ": " + change->words + "\n");
            };
        });
    };
    declare("undo", "take back the last change of your own file", "Undone", &Workshop::undo);
    declare("redo", "make the last undone change again", "Done again", &Workshop::redo);
    context.command("changes", "what was changed in your own file, newest first")->callback([&context] {
        context.answer = [&context](const Catalogue&) {
            const auto changes = context.workshop->changes();
            if (!changes) return context.failed(changes.problem());
            return context.printed(context.json ? json_of_changes(*changes) : text_of_changes(*changes));
        };
    });
}

} // namespace pourbook
