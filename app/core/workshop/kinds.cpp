#include "core/workshop/kinds.hpp"

#include "core/materials/names.hpp"

#include <algorithm>
#include <stdexcept>

namespace pourbook {
namespace {

using T = FieldType;

Field text(std::string name, std::string meaning, std::vector<std::string> other_names = {}) {
    return {std::move(name), T::text, std::move(meaning), "", "", false, {}, std::move(other_names)};
}
Field quantity(std::string name, std::string meaning, std::string unit, std::string example,
               std::vector<std::string> other_names = {}) {
    return {std::move(name), T::quantity, std::move(meaning),    std::move(example), std::move(unit),
            false,           {},          std::move(other_names)};
}
/// The trade's bounds, in SI and in words; what lies outside is a slip.
Field within(double lowest_si, double highest_si, std::string range, Field field) {
    field.lowest_si = lowest_si;
    field.highest_si = highest_si;
    field.range = std::move(range);
    return field;
}
Field mass_within(Field field) {
    return within(1e-6, 1e4, "1 mg to 10 t", std::move(field));
}
/// A choice that may be left open.
std::vector<std::string> or_none(std::vector<std::string> choices) {
    choices.insert(choices.begin(), "");
    return choices;
}
Field choice(std::string name, std::string meaning, std::vector<std::string> choices) {
    return {std::move(name), T::choice, std::move(meaning), "", "", false, std::move(choices), {}};
}
Field typed(T type, std::string name, std::string meaning, std::string example,
            std::vector<std::string> other_names = {}, std::string unit = "") {
    return {std::move(name), type, std::move(meaning),    std::move(example), std::move(unit),
            false,           {},   std::move(other_names)};
}
Field needed(Field field) {
    field.required = true;
    return field;
}
Field of(std::vector<std::string> types, Field field) {
    field.types = std::move(types);
    return field;
}
Field needed_by(std::vector<std::string> types, Field field) {
    field.needed_by = std::move(types);
    return field;
}
Field since(int schema, Field field) {
    field.since = schema;
    return field;
}
Field needed_of(const std::vector<std::string>& types, Field field) {
    return of(types, needed_by(types, std::move(field)));
}
Field metal() {
    return needed(typed(T::metal, "metal", "the metal", "copper", {"material", "alloy", "element", "metal name"}));
}
Field note() {
    return text("note", "a remark of your own", {"notes", "remark", "remarks", "comment", "comments"});
}
Field date(std::string name, std::string meaning, std::vector<std::string> other_names = {}) {
    return typed(T::date, std::move(name), std::move(meaning), "2026-11-25", std::move(other_names));
}
Field condition() {
    return text("condition", "as-cast, annealed, cold-worked ... or a temper", {"state", "temper"});
}

Kind profile() {
    return {"profile",
            "what the workshop can do",
            {text("furnace", "the furnace, in words"),
             within(373.15, 3773.15, "100 degC to 3500 degC",
                    quantity("furnace_maximum", "highest temperature of the furnace", "K", "1150 degC")),
             within(10, 1e6, "10 W to 1 MW", quantity("power", "power of an electric furnace", "W", "2 kW")),
             within(0.001, 1, "0.1 % to 100 %",
                    quantity("efficiency", "share of the furnace's heat that reaches the charge", "1", "30 %")),
             within(0.1, 200, "0.1 kg to 200 kg",
                    quantity("lift_maximum", "what one person lifts, crucible and metal", "kg", "10 kg")),
             choice("units", "units the window starts in", {"", "si", "workshop"}),
             typed(T::currency, "currency", "in which prices are shown, by the newest rate kept for it", "EUR"),
             note()},
            {},
            true};
}

Kind crucible() {
    return {
        "crucible",
        "a crucible of the workshop",
        {needed(typed(T::name, "name", "its name", "a4")),
         needed(text("material", "graphite, clay-graphite, silicon carbide, alumina, fused silica ...")),
         within(1e-7, 1, "0.1 ml to 1 m3", quantity("volume", "melt it holds", "m3", "500 cm3", {"capacity", "size"})),
         note()},
        {"name"}};
}

Kind mould() {
    return {"mould",
            "a kind of mould the workshop makes",
            {needed(typed(T::name, "name", "its name", "shell")), choice("process", "process it serves", process_names),
             needed(text("material", "fused silica, gypsum investment ...")),
             within(293.15, 3773.15, "20 degC to 3500 degC",
                    quantity("maximum", "highest temperature it stands", "K", "870 degC")),
             note()},
            {"name"}};
}

Kind stock() {
    return {"stock",
            "a lot of metal on the shelf",
            {typed(T::name, "lot", "its name", "stock-1", {"name", "lot number", "batch", "id"}), metal(),
             needed(mass_within(
                 quantity("mass", "how much there is", "kg", "2 kg", {"weight", "amount", "quantity", "qty"}))),
             typed(T::money, "price", "what it cost", "8.50 EUR/kg", {"cost", "unit price"}),
             date("bought", "when", {"date", "purchased"}), text("seller", "from whom", {"supplier", "shop", "vendor"}),
             condition(), note()},
            {"lot"}};
}

Kind price() {
    return {"price",
            "a price of the user's own list",
            {metal(),
             needed(typed(T::money, "price", "the price", "8.50 EUR/kg", {"cost", "unit price", "value", "amount"})),
             needed(date("date", "the day it held", {"as of", "day", "valid from"})),
             text("seller", "who asks it", {"supplier", "shop", "vendor", "source"}),
             text("form", "bar, sheet, shot, scrap ...", {"product"}),
             typed(T::month, "good_until", "month after which it counts as stale", "2027-03", {"valid until"}), note()},
            {"metal", "date", "seller", "form"}};
}

Kind rate() {
    return {"rate",
            "a rate of exchange, for prices in another currency than USD",
            {needed(typed(T::currency, "currency", "the currency", "EUR")),
             needed(within(1e-7, 1e4, "a rate above 0 and up to 10000",
                           quantity("usd", "US dollars for one unit of it", "1", "1.08", {"rate"}))),
             needed(date("date", "the day it held", {"as of", "day"})),
             needed(text("source", "who published it", {"publisher"}))},
            {"currency", "date"}};
}

/// What a piece is weighed and measured by.
std::vector<Field> piece_fields() {
    const std::vector<std::string> piece = {"weighing", "casting"}, casting = {"casting"};
    return {
        needed_by(piece,
                  mass_within(quantity("mass", "weighed mass of the piece", "kg", "620 g", {"weight", "tube mass"}))),
        of(piece, since(3, mass_within(quantity("mass_in_water", "weighed hanging in water, clear of the vessel", "kg",
                                                "551 g", {"weight in water", "submerged weight"})))),
        of(piece,
           since(3, within(273.15, 373.15, "0 degC to 100 degC",
                           quantity("water", "temperature of that water", "K", "20 degC", {"water temperature"})))),
        of(piece, needed_by(casting, text("part", "measured size: tube:BORE:OUTSIDE:LENGTH, bar:DxL, plate:LxWxT ...",
                                          {"size"}))),
        of(casting, text("pattern", "size of the pattern, in the same words as part")),
        of(casting, since(3, choice("process", "the mould it was cast in", or_none(process_names)))),
        of(casting, since(3, mass_within(quantity("charge", "metal melted for it, what came back not taken off", "kg",
                                                  "1.4 kg", {"melted", "poured"}))))};
}

/// What a drop is timed with.
std::vector<Field> drop_fields() {
    return {needed_of({"drop"}, text("magnet", "sphere:D, cylinder:DxL or ring:ODxIDxL")),
            of({"drop"}, text("grade", "of the magnet, such as N42")),
            of({"drop"}, text("br", "remanence, such as 1.3T", {"remanence"})),
            of({"drop"}, text("surface_field", "field on the axis, such as 0.45T@1mm")),
            of({"drop"}, text("recoil_permeability", "of the magnet, such as 1.05")),
            of({"drop"}, text("magnet_mass", "such as 12g")),
            of({"drop"}, text("magnet_at", "temperature of the magnet")),
            needed_of({"drop", "four-wire"}, text("tube", "BORE:OUTSIDE:LENGTH", {"tube size", "geometry"})),
            of({"drop"}, within(1e-3, 1e5, "1 ms to 1 day",
                                typed(T::quantities, "times", "measured fall times", "4.2 s, 4.3 s",
                                      {"time", "fall time", "fall times"}, "s"))),
            of({"drop"}, within(1, 1e9, "1 frame and more",
                                typed(T::quantities, "frames", "the falls in frames of a film", "252, 250",
                                      {"frame count"}, "1"))),
            of({"drop"}, within(0.1, 1e7, "0.1 to 10 million a second",
                                quantity("frame_rate", "frames a second", "1/s", "60", {"fps"}))),
            of({"drop"}, within(0, 3600, "0 s to 1 h",
                                quantity("time_uncertainty", "standard uncertainty of one timing", "s", "0.1 s")))};
}

Kind trial() {
    const std::vector<std::string> four_wire = {"four-wire"};
    Kind kind{"trial",
              "something measured in the workshop",
              {typed(T::name, "name", "its name", "trial-1", {"trial", "id"}),
               needed(choice("type", "drop, four-wire, weighing or casting (measured after a pour)",
                             {"drop", "four-wire", "weighing", "casting"})),
               date("date", "when"),
               typed(T::metal, "metal", "what the piece is said to be", "copper", {"material", "alloy"}), condition(),
               within(0, 5000, "0 K to 5000 K",
                      quantity("temperature", "of the piece when it was measured", "K", "20 degC",
                               {"at", "tube temperature"}))},
              {"name"}};
    for (Field& field : drop_fields()) kind.fields.push_back(std::move(field));
    for (Field& field : std::vector<Field>{
             needed_of(four_wire, within(1e-12, 1e6, "a resistance above 0",
                                         quantity("resistance", "four-wire resistance", "ohm", "0.36 mohm"))),
             needed_of(four_wire, within(1e-3, 20, "1 mm to 20 m",
                                         quantity("span", "distance of the voltage taps", "m", "0.9 m")))})
        kind.fields.push_back(std::move(field));
    for (Field& field : piece_fields()) kind.fields.push_back(std::move(field));
    kind.fields.push_back(note());
    return kind;
}

Kind goal() {
    return {"goal",
            "a saved goal of ranking",
            {needed(typed(T::name, "name", "its name", "cheap-brake", {"goal", "id"})),
             needed(text("formula", "over properties: conductivity / (density * price)")),
             choice("best", "which end is best", {"high", "low"}),
             text("where", "conditions, separated by ';'", {"conditions"}), text("sentence", "what it answers"),
             note()},
            {"name"}};
}

Kind own_metal() {
    return {"metal",
            "a metal of the user's own",
            {needed(typed(T::name, "name", "its name", "my-bronze", {"metal", "slug", "id"})),
             typed(T::metal, "like", "a metal of the reference whose values it starts from", "bronze-tin-cast"),
             text("composition", "per cent by mass: \"Cu 88 Sn 12\""), text("family", "copper, aluminium ..."), note()},
            {"name"}};
}

Kind own_value() {
    return {"value",
            "a measured or quoted value of an own metal",
            {metal(), needed(typed(T::property, "property", "resistivity, density ...", "resistivity")),
             needed(text("value", "with its unit: 12.5 uohm.cm", {"figure"})),
             within(0, 1e4, "0 K to 10000 K", quantity("temperature", "at which it holds", "K", "20 degC", {"at"})),
             text("uncertainty", "standard uncertainty: 2 % or 0.2 uohm.cm"), condition(),
             choice("phase", "solid or liquid", {"", "solid", "liquid"}),
             text("from", "how it is known: measured, certificate ...", {"source", "origin"}), date("date", "when"),
             note()},
            {"metal", "property", "temperature", "condition", "phase"}};
}

Kind question() {
    return {"question",
            "a viewer's question with its answer",
            {typed(T::name, "name", "its name", "question-1", {"id"}), needed(text("question", "the viewer's words")),
             needed(text("command", "the command that answers it")), text("answer", "its answer, as JSON"),
             text("data_version", "of the reference that answered"), date("date", "of the answer"), note()},
            {"name"}};
}

Kind pin() {
    return {"pin", "a metal pinned whenever the window opens", {metal()}, {"metal"}};
}

} // namespace

const std::vector<Kind>& workshop_kinds() {
    static const std::vector<Kind> kinds = {profile(), crucible(), mould(),     stock(),     price(),    rate(),
                                            trial(),   goal(),     own_metal(), own_value(), question(), pin()};
    return kinds;
}

std::size_t Kind::at(std::string_view field) const {
    const auto it = std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.name == field; });
    return static_cast<std::size_t>(it - fields.begin());
}

Result<const Kind*> kind_named(const std::string& name) {
    std::string names;
    for (const Kind& kind : workshop_kinds()) {
        if (kind.name == name) return &kind;
        names += (names.empty() ? "" : ", ") + kind.name;
    }
    return Problem{Problem::Kind::unreadable, "unknown kind '" + name + "': one of " + names, 0};
}

const Kind& known_kind(std::string_view name) {
    for (const Kind& kind : workshop_kinds())
        if (kind.name == name) return kind;
    throw std::logic_error("no kind " + std::string(name));
}

Entry new_entry(const Kind& kind) {
    return {0, std::vector<std::string>(kind.fields.size())};
}

Entry form_entry(const Kind& kind) {
    Entry entry = new_entry(kind);
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (kind.fields[i].required && !kind.fields[i].choices.empty())
            entry.values[i] = kind.fields[i].choices.front();
    return entry;
}

bool belongs(const Kind& kind, const Entry& entry, const Field& field) {
    return field.types.empty() ||
           std::find(field.types.begin(), field.types.end(), text_of(kind, entry, "type")) != field.types.end();
}

Entry of_its_type(const Kind& kind, Entry entry) {
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (!belongs(kind, entry, kind.fields[i])) entry.values[i].clear();
    return entry;
}

std::vector<const Field*> missing_fields(const Kind& kind, const Entry& entry) {
    std::vector<const Field*> out;
    for (const Field& f : kind.fields) {
        if (f.needed_by.empty() || !text_of(kind, entry, f.name).empty()) continue;
        const std::string& type = text_of(kind, entry, "type");
        if (std::find(f.needed_by.begin(), f.needed_by.end(), type) != f.needed_by.end()) out.push_back(&f);
    }
    return out;
}

const std::string& text_of(const Kind& kind, const Entry& entry, std::string_view field) {
    return entry.values.at(kind.at(field));
}

std::string& text_of(const Kind& kind, Entry& entry, std::string_view field) {
    return entry.values.at(kind.at(field));
}

std::string title_of(const Kind& kind, const Entry& entry) {
    std::string title = kind.name;
    for (const std::string& field : kind.key)
        if (const std::string& text = text_of(kind, entry, field); !text.empty()) title += " " + text;
    return title;
}

} // namespace pourbook
