#include "cli/context.hpp"

#include "answers/workshop/import_report.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/workshop/import.hpp"

#include <algorithm>

namespace pourbook {
namespace {

struct ImportWords {
    std::string kind, file, stl_unit = "mm";
    bool dry_run = false;
    ColumnWords columns;
};

constexpr int code_cancelled = 130; // as a shell reports an interrupted program

int check_mesh(const Context& context, const ImportWords& words) {
    const Result<Unit> unit = parse_unit(words.stl_unit);
    if (!unit)
        return context.failed({Problem::Kind::unreadable, "--stl-unit '" + words.stl_unit + "': mm, cm, m or in", 0});
    const Result<casting::Mesh> mesh = context.read_mesh(words.file);
    if (!mesh) return context.failed(mesh.problem());
    const Result<casting::Solid> solid = casting::measured(*mesh, unit->scale);
    if (!solid) return context.failed(solid.problem());
    return context.printed(context.json ? json_of_mesh(*solid, words.file) : text_of_mesh(*solid, words.file));
}

ImportWatch watch_of(const Context& context, const std::string& file) {
    ImportWatch watch;
    watch.rejected = [&context, file](const Rejection& r) {
        context.err << file << ":" << r.line << ": " << r.column << ": " << r.reason << "\n";
    };
    watch.progress = [&context](std::size_t rows, double share) {
        context.err << "pourbook: " << rows << " rows, " << trimmed(100 * std::min(share, 1.0), 2) << " %\n";
    };
    watch.cancelled = context.setup.cancelled;
    return watch;
}

int finished(const Context& context, const ImportWords& words, const Result<ImportResult>& result) {
    if (!result) return context.failed(result.problem());
    if (result->cancelled) {
        context.err << "pourbook: cancelled after " << result->rows << " rows: nothing was changed\n";
        return code_cancelled;
    }
    if (result->rejected > 0) {
        context.err << "pourbook: " << result->rejected << " of " << result->rows << " rows of '" << words.file
                    << "' are rejected: nothing was changed; mend them and import again\n";
        return 2;
    }
    return context.printed(context.json ? json_of_import(*result) : text_of_import(*result));
}

int import_file(const Context& context, const ImportWords& words, const Catalogue& catalogue) {
    if (words.kind == "mesh") return check_mesh(context, words);
    const std::string name = words.kind == "drop"        ? "trial"
                             : words.kind == "own-metal" ? "metal"
                             : words.kind == "own-value" ? "value"
                                                         : words.kind;
    const Result<const Kind*> kind = kind_named(name);
    if (!kind) return context.failed(kind.problem());
    ColumnWords columns = words.columns;
    if (words.kind == "drop") columns.fixed = {{"type", "drop"}};
    auto rows = context.setup.open_rows(words.file, **kind, columns);
    if (!rows) return context.failed(rows.problem());
    const auto run = [&](Workshop& workshop) {
        return finished(context, words,
                        import_rows(catalogue, workshop, **kind, **rows, words.dry_run,
                                    "import " + words.kind + " " + words.file, watch_of(context, words.file)));
    };
    if (!words.dry_run || context.workshop->exists()) return run(*context.workshop);
    const auto spare = context.setup.open_workshop(":memory:"); // a dry run makes no file
    return spare ? run(**spare) : context.failed(spare.problem());
}

} // namespace

void declare_import(Context& context) {
    auto words = std::make_shared<ImportWords>();
    CLI::App* c = context.command("import", "take a list (CSV or JSON) into your own file, all of it or nothing");
    c->add_option(
         "kind", words->kind,
         "price, stock, rate, drop, trial, goal, crucible, mould, own-metal, own-value, question, pin; or mesh: "
         "check an STL file")
        ->required();
    c->add_option("file", words->file, "CSV (any separator, header in the first row), JSON, or STL")->required();
    c->add_flag("--dry-run", words->dry_run, "say what would change, change nothing");
    c->add_option("--map", words->columns.map,
                  "COLUMN=FIELD for a column that is not known by its name; COLUMN=- leaves it out");
    c->add_option("--unit", words->columns.units, "FIELD=UNIT where the file names none, such as price=EUR/kg");
    c->add_option("--stl-unit", words->stl_unit, "unit of an STL file: mm (default), cm, m, in");
    c->callback([&context, words] {
        context.answer = [&context, words](const Catalogue& catalogue) {
            return import_file(context, *words, catalogue);
        };
    });
}

} // namespace pourbook
