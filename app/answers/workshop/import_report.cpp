#include "answers/workshop/import_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {

std::string json_of_import(const ImportResult& r) {
    return json_text(Json{{"rows", r.rows},
                          {"added", r.added},
                          {"changed", r.changed},
                          {"unchanged", r.unchanged},
                          {"dry_run", r.dry_run},
                          {"written", r.written},
                          {"first", r.first},
                          {"ignored_columns", r.ignored_columns}});
}

std::string text_of_import(const ImportResult& r) {
    std::string out = std::to_string(r.rows) + " rows: " + std::to_string(r.added) +
                      (r.dry_run ? " would be added, " : " added, ") + std::to_string(r.changed) + " changed, " +
                      std::to_string(r.unchanged) + " there already\n";
    for (const std::string& line : r.first) out += "  " + line + "\n";
    if (r.first.size() < r.added + r.changed)
        out += "  and " + std::to_string(r.added + r.changed - r.first.size()) + " more\n";
    for (const std::string& column : r.ignored_columns)
        out += "Column '" + column + "' is not known and was left out; --map \"" + column + "=FIELD\" takes it in.\n";
    if (r.dry_run)
        out += "Dry run: nothing was changed.\n";
    else
        out += r.added + r.changed > 0 ? "Written; `pourbook undo` takes it back.\n" : "Nothing was changed.\n";
    return out;
}

std::string json_of_mesh(const casting::Solid& s, const std::string& file) {
    return json_text(Json{{"file", file},
                          {"watertight", true},
                          {"volume_m3", json_number(s.volume_m3)},
                          {"surface_m2", json_number(s.surface_m2)},
                          {"box_m", s.box_m},
                          {"wall_estimate_m", json_number(s.wall_m)}});
}

std::string text_of_mesh(const casting::Solid& s, const std::string& file) {
    const auto mm = [](double m) { return trimmed(m * 1e3, 5); };
    return file + ": closed and sound; volume " + trimmed(s.volume_m3 * 1e6, 6) + " cm3, surface " +
           trimmed(s.surface_m2 * 1e4, 6) + " cm2, box " + mm(s.box_m[0]) + " x " + mm(s.box_m[1]) + " x " +
           mm(s.box_m[2]) + " mm, wall about " + mm(s.wall_m) + " mm. Nothing is kept: pour takes it as stl:" + file +
           ".\n";
}

} // namespace pourbook
