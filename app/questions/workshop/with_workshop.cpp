#include "questions/workshop/with_workshop.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/say/in_dollars.hpp"
#include "questions/say/shown_money.hpp"
#include "questions/workshop/own_metal.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace pourbook {
namespace {

template <class T, class From>
Result<bool> read_all(Workshop& workshop, const char* kind, From from, std::vector<T>& into) {
    const Result<std::vector<Entry>> entries = workshop.entries(known_kind(kind));
    if (!entries) return entries.problem();
    for (const Entry& entry : *entries) into.push_back(from(entry));
    return true;
}

Reference own_reference(const char* key, const std::string& title) {
    Reference r;
    r.key = key;
    r.kind = "own";
    r.reliability = "own";
    r.title = title;
    r.where = "this workshop's own file";
    r.reuse = "the user's own";
    return r;
}

void add_references(Catalogue& c) {
    c.references.push_back(own_reference(own_prices_key, "Own price list"));
    c.references.push_back(own_reference(own_stock_key, "Own stock, prices paid"));
    c.references.push_back(own_reference(own_values_key, "Own measured or quoted values"));
    std::sort(c.references.begin(), c.references.end(),
              [](const Reference& a, const Reference& b) { return a.key < b.key; });
}

std::string joined(std::initializer_list<std::string> parts) {
    std::string out;
    for (const std::string& part : parts)
        if (!part.empty()) out += (out.empty() ? "" : ", ") + part;
    return out;
}

Price price_from(const OwnPrice& own, const Converted& converted, const char* key, const std::string& form) {
    std::string_view unit = own.written;
    double number = 0;
    take_number(unit, number);
    Price p;
    p.metal = own.metal;
    p.usd_per_kg = converted.usd_per_kg;
    p.printed = own.written.substr(0, own.written.size() - unit.size());
    p.unit = std::string(unit.substr(std::min(unit.find_first_not_of(' '), unit.size())));
    if (p.printed.empty()) p.printed = own.written; // "$5/kg"
    p.as_of = own.date.empty() ? "undated" : own.date;
    p.fresh_until = own.good_until;
    p.form = form;
    p.citation = {key, joined({own.seller, own.form, own.date, converted.how}), HowKnown::own, ""};
    if (p.citation.locator.empty()) p.citation.locator = "entered by the user";
    return p;
}

PriceSet own_set(const char* id, const std::string& name) {
    PriceSet set;
    set.id = id;
    set.name = name;
    set.form = "as entered by the user";
    return set;
}

void add_prices(Catalogue& c, const WorkshopData& data, std::vector<std::string>& remarks) {
    PriceSet set = own_set(own_prices_key, "Own price list");
    for (const OwnPrice& own : data.prices) {
        const Result<Converted> converted = in_dollars(own, data.rates);
        if (!converted) {
            remarks.push_back("left out: own price of " + own.metal + ": " + converted.problem().text);
            continue;
        }
        set.prices.push_back(price_from(own, *converted, own_prices_key, "own price list"));
        set.as_of = std::max(set.as_of, own.date);
    }
    if (!set.prices.empty()) c.price_sets.insert(c.price_sets.begin(), std::move(set));
}

void add_metals(Catalogue& c, const WorkshopData& data, std::vector<std::string>& remarks) {
    for (const OwnMetal& own : data.metals) {
        Result<Metal> metal = own_metal(c, own);
        if (!metal) {
            remarks.push_back("left out: own metal " + own.name + ": " + metal.problem().text);
            continue;
        }
        c.metals.push_back(std::move(*metal));
        std::sort(c.metals.begin(), c.metals.end(), [](const Metal& a, const Metal& b) { return a.slug < b.slug; });
        c.index(); // a later one may be like this one
    }
}

void add_values(Catalogue& c, const WorkshopData& data, std::vector<std::string>& remarks) {
    for (const OwnValue& own : data.values) {
        const bool is_own =
            std::any_of(data.metals.begin(), data.metals.end(), [&](const OwnMetal& m) { return m.name == own.metal; });
        const auto metal = std::find_if(c.metals.begin(), c.metals.end(),
                                        [&](const Metal& m) { return is_own && m.slug == own.metal; });
        Result<Record> record = own_record(c, own);
        if (record && metal != c.metals.end())
            add_own_value(*metal, std::move(*record));
        else
            remarks.push_back("left out: own value of " + own.metal + ": " +
                              (record ? "it is no metal of your own" : record.problem().text));
    }
}

void add_goals(Catalogue& c, const WorkshopData& data) {
    for (const SavedGoal& own : data.goals) {
        Goal g;
        g.id = g.label = own.name;
        g.sentence = own.sentence.empty() ? "A goal of your own." : own.sentence;
        g.formula = own.formula;
        g.best_high = own.best_high;
        g.where = own.where;
        std::erase_if(c.goals, [&](const Goal& other) { return other.id == g.id; });
        c.goals.push_back(std::move(g));
    }
}

} // namespace

Result<WorkshopData> read_workshop(Workshop& workshop) {
    WorkshopData d;
    std::vector<Profile> profiles;
    const Result<std::vector<Entry>> prices = workshop.newest_prices();
    if (!prices) return prices.problem();
    for (const Entry& entry : *prices) d.prices.push_back(own_price_from(entry));
    const auto pin = [](const Entry& entry) { return text_of(known_kind("pin"), entry, "metal"); };
    for (const Result<bool>& done :
         {read_all(workshop, "profile", profile_from, profiles),
          read_all(workshop, "crucible", crucible_from, d.crucibles), read_all(workshop, "mould", mould_from, d.moulds),
          read_all(workshop, "stock", stock_lot_from, d.stock), read_all(workshop, "rate", rate_from, d.rates),
          read_all(workshop, "goal", goal_from, d.goals), read_all(workshop, "metal", own_metal_from, d.metals),
          read_all(workshop, "value", own_value_from, d.values), read_all(workshop, "pin", pin, d.pins)})
        if (!done) return done.problem();
    d.profile_entered = !profiles.empty();
    if (d.profile_entered) d.profile = profiles.front();
    return d;
}

WithWorkshop with_workshop(Catalogue reference, const WorkshopData& data) {
    WithWorkshop out{std::move(reference), {}};
    Catalogue& c = out.catalogue;
    if (!data.prices.empty() || !data.metals.empty() || !data.values.empty() || !data.stock.empty()) add_references(c);
    c.index();
    add_metals(c, data, out.remarks);
    add_values(c, data, out.remarks);
    add_prices(c, data, out.remarks);
    add_goals(c, data);
    if (const std::string why = show_money_of(c, data); !why.empty()) out.remarks.push_back(why);
    c.index();
    return out;
}

std::vector<std::string> metals_on_the_shelf(const WorkshopData& data) {
    std::vector<std::string> out;
    for (const StockLot& lot : data.stock)
        if (std::find(out.begin(), out.end(), lot.metal) == out.end()) out.push_back(lot.metal);
    return out;
}

Catalogue with_lot_prices(Catalogue catalogue, const WorkshopData& data) {
    struct Paid {
        double usd = 0, kg = 0;
        std::string lots, how;
        OwnPrice last;
    };
    std::map<std::string, Paid> paid;
    for (const StockLot& lot : data.stock) {
        const Result<Converted> usd = lot.price ? in_dollars(*lot.price, data.rates) : Problem{};
        if (!usd || !(lot.mass_kg > 0)) continue;
        Paid& p = paid[lot.metal];
        p.usd += usd->usd_per_kg * lot.mass_kg;
        p.kg += lot.mass_kg;
        p.lots = joined({p.lots, lot.lot});
        if (p.last.metal.empty() || lot.price->date > p.last.date) p.last = *lot.price, p.how = usd->how;
    }
    PriceSet set = own_set(own_stock_key, "Own stock, prices paid");
    for (auto& [metal, p] : paid) {
        const bool several = p.lots.find(',') != std::string::npos;
        if (several) p.last.written = trimmed(p.usd / p.kg, 5) + " USD/kg";
        p.last.form = several ? "lots " + p.lots + ", mean by mass" : "lot " + p.lots;
        set.prices.push_back(price_from(p.last, {p.usd / p.kg, p.how}, own_stock_key, "own stock"));
    }
    if (!set.prices.empty()) catalogue.price_sets.insert(catalogue.price_sets.begin(), std::move(set));
    catalogue.index();
    return catalogue;
}

} // namespace pourbook
