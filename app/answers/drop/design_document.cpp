#include "answers/drop/drop_documents.hpp"

#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/drop_figures.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/say/hazard_mark.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// Rows of tubes: lengths in the drawing's unit, masses, money, the fall with its interval.
class TubeRows {
public:
    explicit TubeRows(const DocumentSetting& setting)
        : setting_(setting), money_(shown_currency(setting.catalogue, setting.units)),
          length_(setting.units == UnitSystem::base ? NamedUnit{"m", 1} : length_unit(setting.units)),
          mass_(setting.units == UnitSystem::base ? NamedUnit{"kg", 1} : mass_unit(setting.units)) {}

    DataTable table(const std::string& title, const std::string& id, const std::vector<DesignedTube>& tubes) const {
        DataTable out{title, {}, {}, in::all, id};
        add_metal_columns(out);
        for (const auto& [name, words] : {std::pair{"bore", "bore"}, {"wall", "wall"}, {"length", "length"}})
            out.columns.push_back({key(name, length_), words, length_.name, true});
        out.columns.push_back({key("tube_mass", mass_), "tube", mass_.name, true});
        out.columns.push_back({key("charge", mass_), "charge", mass_.name, true});
        out.columns.push_back(money_column("cost_", "metal", money_));
        out.columns.push_back({"fall_time_s", "falls", "s", true});
        out.columns.push_back({"interval", "90 %", "", true, false, in::text});
        for (const auto& [name, words] :
             {std::pair{"fall_time_low90_s", "falls, 90 % low"}, {"fall_time_high90_s", "falls, 90 % high"}})
            out.columns.push_back({name, words, "s", true, false, in::program | in::file | in::window});
        out.columns.push_back({"mark", "mark"});
        for (const auto& [name, words] : {std::pair{"drop", "set-up"}, {"pour", "pour"}, {"no_pour", "why no charge"}})
            out.columns.push_back({name, words, "", false, false, in::program | in::file});
        for (const DesignedTube& d : tubes) out.rows.push_back(row(d));
        return out;
    }

private:
    std::string key(const std::string& name, const NamedUnit& unit) const {
        return setting_.units == UnitSystem::base ? name + "_" + unit.name : name;
    }

    static DataCell figure(double x, int figures) {
        return DataCell::figure(x, std::isfinite(x) ? significant(x, figures) : "");
    }

    std::vector<DataCell> row(const DesignedTube& d) const {
        std::vector<DataCell> out;
        add_metal_cells(out, *d.metal);
        const auto length = [&](double m) {
            return DataCell::figure(m / length_.si, trimmed(std::round(m * 1e7) / 1e7 / length_.si, 5));
        };
        const DropResult& r = d.drop;
        const double low = r.fall_time_low90_s, high = r.fall_time_high90_s;
        out.insert(out.end(),
                   {length(d.bore_m), length(d.wall_m), length(d.length_m), figure(r.tube_mass_kg / mass_.si, 3),
                    figure(d.charge_kg / mass_.si, 3), figure(money_.shown(r.cost_usd), 3),
                    DataCell::figure(r.fall.time_s, rounded_to(r.fall.time_s, (high - low) / 4, 3)),
                    DataCell::words(significant(low, 3) + "–" + significant(high, 3)), figure(low, 3), figure(high, 3),
                    DataCell::words(hazard_mark(setting_.catalogue, *d.metal)), DataCell::words(d.drop_command),
                    DataCell::words(d.pour_command), DataCell::words(d.no_pour)});
        return out;
    }

    const DocumentSetting& setting_;
    ShownCurrency money_;
    NamedUnit length_, mass_;
};

std::string wish_of(const DesignResult& r, const DocumentSetting& setting) {
    const DesignRequest& q = r.request;
    std::string out;
    const auto add = [&](const std::string& words) { out += (out.empty() ? "" : ", ") + words; };
    if (q.time_s) add("a fall of " + trimmed(*q.time_s, 5) + " s");
    if (q.mass_kg) add("from " + mass_text(*q.mass_kg, setting.units) + " of metal");
    if (q.budget_usd) add("for " + shown_money(setting.catalogue, *q.budget_usd, 3, setting.units));
    add("bore " + length_text(r.bore_m, setting.units));
    add("up to " + length_text(q.longest_m, setting.units) + " long");
    if (q.crucible_m3) add("a crucible of " + volume_text(*q.crucible_m3, setting.units, 5));
    if (q.lift_kg) add("a melt of up to " + mass_text(*q.lift_kg, setting.units));
    return out;
}

void add_wish(Document& out, const DesignResult& r) {
    const auto told = [&](const char* name, std::optional<double> value) {
        out.figures.emplace_back(name, value ? number_or_null(*value) : Value(), in::program);
    };
    told("wish.time_s", r.request.time_s);
    told("wish.mass_kg", r.request.mass_kg);
    told("wish.budget_usd", r.request.budget_usd);
    told("limits.longest_m", r.request.longest_m);
    told("limits.least_wall_m", r.least_wall_m);
    told("limits.clear_m", r.request.clear_m);
    told("limits.crucible_m3", r.request.crucible_m3);
    told("limits.lift_kg", r.request.lift_kg);
    told("bore_m", r.bore_m);
    out.figures.emplace_back("assumptions", r.assumptions, in::program);
    out.figures.emplace_back("cautions", r.cautions, in::program);
}

/// On a terminal: the commands of the best, and how to have the others'.
void say_commands(Document& out, const DesignResult& r) {
    const DesignedTube& first = r.tubes.front();
    if (Sentence* s = out.say("To try it: " + first.drop_command, in::text, "  ")) s->apart = true;
    out.say("To cast it: " + first.pour_command, in::text, "  ");
    if (r.tubes.size() > 1)
        out.say("The others: --tube BORE:OUTSIDE:LENGTH as in the table; --json and files carry every command.",
                in::text, "  ");
}

void say_left_out(Document& out, const DesignResult& r, UnitSystem units) {
    constexpr std::size_t shown = 6;
    DataTable table{
        "Not within the limits",
        {{"metal", "metal", "", false, false, in::program | in::file}, {"name", "name"}, {"reason", "reason"}},
        {},
        in::program | in::file,
        "impossible"};
    for (const DesignOut& o : r.impossible)
        table.rows.push_back(
            {DataCell::words(o.metal), DataCell::words(o.name), DataCell::words(for_reader(units, o.reason))});
    out.parts.push_back(std::move(table));
    const std::size_t told = r.request.metals.empty() ? 0 : std::min(shown, r.impossible.size());
    for (std::size_t i = 0; i < told; ++i)
        out.say("Not " + r.impossible[i].name + ": " + for_reader(units, r.impossible[i].reason) + ".", in::text, "  ");
    if (const std::size_t rest = r.impossible.size() - told)
        out.say(std::to_string(rest) + " metals have no such tube within the limits; --json says why of each.",
                in::text);
}

} // namespace

Document document_of(const DesignResult& r, const DocumentSetting& setting) {
    Document out = start_document("A tube for " + magnet_text(r.setup, setting.units), r.request.conditions, setting);
    out.say(out.title + ": " + wish_of(r, setting) + ".", in::text);
    add_wish(out, r);
    const TubeRows rows(setting);
    out.parts.push_back(rows.table("Tubes", "designs", r.tubes));
    if (r.more)
        out.say(std::to_string(r.more) + " more metals can do it: --top " + std::to_string(r.tubes.size() + r.more) +
                    " shows all.",
                in::text);
    out.parts.push_back(rows.table("What more money gains", "front", r.front));
    say_commands(out, r);
    say_left_out(out, r, setting.units);
    for (const std::string& assumption : r.assumptions)
        out.say("Assumed: " + for_reader(setting.units, assumption) + ".", in::text | in::file, "  ");
    for (const std::string& caution : r.cautions)
        out.say("Caution: " + for_reader(setting.units, caution), in::text | in::file, "  ");
    for (const auto* list : {&r.tubes, &r.front})
        for (const DesignedTube& d : *list)
            for (const std::string& source : drop_sources(d.drop)) add_source(out, setting.catalogue, source);
    out.say("Data version " + out.data_version, in::text);
    return out;
}

} // namespace pourbook
