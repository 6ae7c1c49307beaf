#include "core/workshop/data.hpp"

#include "core/workshop/check_entry.hpp"

namespace pourbook {
namespace {

/// The fields of one entry by name.
class Read {
public:
    Read(std::string_view kind, const Entry& entry) : kind_(known_kind(kind)), entry_(entry) {}

    const std::string& text(std::string_view field) const { return text_of(kind_, entry_, field); }
    std::optional<double> si(std::string_view field) const {
        const Result<double> value = quantity_si(kind_.fields[kind_.at(field)], text(field));
        return value ? std::optional(*value) : std::nullopt;
    }
    std::vector<double> list(std::string_view field) const {
        const Result<std::vector<double>> values = quantities_si(kind_.fields[kind_.at(field)], text(field));
        return values ? *values : std::vector<double>{};
    }

private:
    const Kind& kind_;
    const Entry& entry_;
};

void read_money(const std::string& written, OwnPrice& price) {
    price.written = written;
    const Result<Money> money = money_from(written);
    if (!money) return;
    price.per_kg = money->per_kg;
    price.currency = money->currency;
}

std::vector<std::string> conditions_in(const std::string& text) {
    std::vector<std::string> out;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find(';', from), text.size());
        const std::string one = text.substr(from, end - from);
        const std::size_t first = one.find_first_not_of(' ');
        if (first != std::string::npos) out.push_back(one.substr(first, one.find_last_not_of(' ') - first + 1));
        from = end + 1;
    }
    return out;
}

TrialType trial_type(const std::string& word) {
    return word == "four-wire"  ? TrialType::four_wire
           : word == "weighing" ? TrialType::weighing
           : word == "casting"  ? TrialType::casting
                                : TrialType::drop;
}

} // namespace

Profile profile_from(const Entry& entry) {
    const Read r("profile", entry);
    return {r.text("furnace"), r.text("units"),    r.text("currency"),  r.si("furnace_maximum"),
            r.si("power"),     r.si("efficiency"), r.si("lift_maximum")};
}

Crucible crucible_from(const Entry& entry) {
    const Read r("crucible", entry);
    return {r.text("name"), r.text("material"), r.si("volume")};
}

MouldKind mould_from(const Entry& entry) {
    const Read r("mould", entry);
    return {r.text("name"), r.text("process"), r.text("material"), r.si("maximum")};
}

StockLot stock_lot_from(const Entry& entry) {
    const Read r("stock", entry);
    StockLot lot{
        entry.id, r.text("lot"), r.text("metal"), r.text("condition"), r.text("seller"), r.si("mass").value_or(0), {}};
    if (r.text("price").empty()) return lot;
    lot.price = OwnPrice{lot.metal, "", r.text("bought"), lot.seller, "lot " + lot.lot, "", no_number, ""};
    read_money(r.text("price"), *lot.price);
    return lot;
}

OwnPrice own_price_from(const Entry& entry) {
    const Read r("price", entry);
    OwnPrice price{r.text("metal"), "", r.text("date"), r.text("seller"), r.text("form"), r.text("good_until"),
                   no_number,       ""};
    read_money(r.text("price"), price);
    return price;
}

ExchangeRate rate_from(const Entry& entry) {
    const Read r("rate", entry);
    return {r.text("currency"), r.text("date"), r.text("source"), r.si("usd").value_or(no_number)};
}

SavedGoal goal_from(const Entry& entry) {
    const Read r("goal", entry);
    return {r.text("name"), r.text("formula"), r.text("sentence"), r.text("best") != "low",
            conditions_in(r.text("where"))};
}

OwnMetal own_metal_from(const Entry& entry) {
    const Read r("metal", entry);
    return {r.text("name"), r.text("like"), r.text("composition"), r.text("family"), r.text("note")};
}

OwnValue own_value_from(const Entry& entry) {
    const Read r("value", entry);
    OwnValue v;
    v.metal = r.text("metal");
    v.property = r.text("property");
    v.written = r.text("value");
    v.uncertainty = r.text("uncertainty");
    v.condition = r.text("condition");
    v.phase = r.text("phase");
    v.from = r.text("from");
    v.date = r.text("date");
    v.note = r.text("note");
    v.temperature_K = r.si("temperature");
    return v;
}

Trial trial_from(const Entry& entry) {
    const Read r("trial", entry);
    Trial t;
    t.id = entry.id;
    t.type = trial_type(r.text("type"));
    t.name = r.text("name");
    t.date = r.text("date");
    t.metal = r.text("metal");
    t.condition = r.text("condition");
    t.note = r.text("note");
    t.temperature_K = r.si("temperature");
    t.magnet = r.text("magnet");
    t.grade = r.text("grade");
    t.br = r.text("br");
    t.surface_field = r.text("surface_field");
    t.recoil_permeability = r.text("recoil_permeability");
    t.magnet_mass = r.text("magnet_mass");
    t.magnet_at = r.text("magnet_at");
    t.tube = r.text("tube");
    t.times_s = r.list("times");
    t.frames = r.list("frames");
    t.frame_rate_per_s = r.si("frame_rate");
    t.time_uncertainty_s = r.si("time_uncertainty");
    t.resistance = r.text("resistance");
    t.span = r.text("span");
    t.mass = r.text("mass");
    t.mass_in_water = r.text("mass_in_water");
    t.water_K = r.si("water");
    t.part = r.text("part");
    t.pattern = r.text("pattern");
    t.process = r.text("process");
    t.charge_kg = r.si("charge");
    return t;
}

std::vector<Trial> trials_from(const std::vector<Entry>& entries) {
    std::vector<Trial> out;
    for (const Entry& entry : entries) out.push_back(trial_from(entry));
    return out;
}

ViewerQuestion question_from(const Entry& entry) {
    const Read r("question", entry);
    return {entry.id,         r.text("name"),         r.text("question"), r.text("command"),
            r.text("answer"), r.text("data_version"), r.text("date")};
}

} // namespace pourbook
