#include "questions/workshop/with_workshop.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/say/in_dollars.hpp"
#include "questions/say/shown_money.hpp"
#include "questions/workshop/own_metal.hpp"
#include "questions/workshop/own_trials.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <optional>
#include <unordered_map>

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

/// Own metals in an order in which each comes after the one it is like, however they were entered.
class OwnMetals {
public:
    OwnMetals(const Catalogue& c, const std::vector<OwnMetal>& metals, std::vector<std::string>& remarks)
        : catalogue_(c), metals_(metals), remarks_(remarks), made_(metals.size()), asked_(metals.size()) {
        for (std::size_t i = 0; i < metals.size(); ++i) place_.emplace(metals[i].name, i);
    }

    std::vector<Metal> all() {
        for (std::size_t i = 0; i < metals_.size(); ++i) make_chain(i);
        std::vector<Metal> out;
        for (std::optional<Metal>& metal : made_)
            if (metal) out.push_back(std::move(*metal));
        return out;
    }

private:
    /// The metals that `first` rests on, then itself.
    void make_chain(std::size_t first) {
        std::vector<std::size_t> chain;
        for (std::size_t i = first; !asked_[i];) {
            asked_[i] = true;
            chain.push_back(i);
            const auto next = place_.find(as_slug(metals_[i].like));
            if (catalogue_.metal(metals_[i].like) || next == place_.end()) break;
            i = next->second;
        }
        for (auto i = chain.rbegin(); i != chain.rend(); ++i) make(*i);
    }

    void make(std::size_t i) {
        const OwnMetal& own = metals_[i];
        const Metal* like = catalogue_.metal(own.like);
        const auto other = place_.find(as_slug(own.like));
        if (!like && other != place_.end() && made_[other->second]) like = &*made_[other->second];
        Result<Metal> metal = own_metal(catalogue_, own, like);
        if (metal)
            made_[i] = std::move(*metal);
        else
            remarks_.push_back("left out: own metal " + own.name + ": " + metal.problem().text);
    }

    const Catalogue& catalogue_;
    const std::vector<OwnMetal>& metals_;
    std::vector<std::string>& remarks_;
    std::vector<std::optional<Metal>> made_;
    std::vector<bool> asked_;
    std::unordered_map<std::string, std::size_t> place_;
};

void add_metals(Catalogue& c, const WorkshopData& data, std::vector<std::string>& remarks) {
    std::vector<Metal> own = OwnMetals(c, data.metals, remarks).all();
    if (own.empty()) return;
    const auto by_slug = [](const Metal& a, const Metal& b) { return a.slug < b.slug; };
    std::sort(own.begin(), own.end(), by_slug);
    std::vector<Metal> all;
    all.reserve(c.metals.size() + own.size());
    std::merge(std::make_move_iterator(c.metals.begin()), std::make_move_iterator(c.metals.end()),
               std::make_move_iterator(own.begin()), std::make_move_iterator(own.end()), std::back_inserter(all),
               by_slug);
    c.metals = std::move(all);
    c.index_names();
}

void add_values(Catalogue& c, const WorkshopData& data, std::vector<std::string>& remarks) {
    for (const OwnValue& own : data.values) {
        const Metal* metal = c.metal(own.metal);
        const bool is_own = metal && metal->own && metal->slug == own.metal;
        Result<Record> record = own_record(c, own);
        if (record && is_own)
            add_own_value(c.metals[static_cast<std::size_t>(metal - c.metals.data())], std::move(*record));
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
        g.only_home_casting = true;
        std::erase_if(c.goals, [&](const Goal& other) { return other.id == g.id; });
        c.goals.push_back(std::move(g));
    }
}

void add_castings(Catalogue& c, const WorkshopData& data) {
    std::vector<Practice> porosities = porosities_of_trials(c, data.trials);
    c.own_castings = castings_of_trials(c, data.trials);
    std::move(porosities.begin(), porosities.end(), std::back_inserter(c.practices));
}

/// "your own pin, price"
std::string names_of(const std::vector<std::string>& kinds) {
    std::string out;
    for (const std::string& kind : kinds) out += (out.empty() ? "your own " : ", ") + kind;
    return kinds.size() > 5 ? "anything of your own" : out;
}

} // namespace

WorkshopData read_workshop(Workshop& workshop, OwnMetalsToo own_metals) {
    WorkshopData d;
    std::vector<Profile> profiles;
    const auto told = [&d](const char* kind, const Result<bool>& done) {
        if (done) return;
        if (!d.fault) d.fault = done.problem();
        d.left_out.emplace_back(kind);
    };
    const auto take = [&](const char* kind, auto from, auto& into) {
        told(kind, read_all(workshop, kind, from, into));
    };
    const auto pin = [](const Entry& entry) { return text_of(known_kind("pin"), entry, "metal"); };
    if (const Result<std::vector<Entry>> prices = workshop.newest_prices())
        for (const Entry& entry : *prices) d.prices.push_back(own_price_from(entry));
    else
        told("price", prices.problem());
    take("profile", profile_from, profiles);
    take("crucible", crucible_from, d.crucibles);
    take("mould", mould_from, d.moulds);
    take("stock", stock_lot_from, d.stock);
    take("rate", rate_from, d.rates);
    take("goal", goal_from, d.goals);
    take("trial", trial_from, d.trials);
    take("pin", pin, d.pins);
    if (own_metals == OwnMetalsToo::yes) {
        take("metal", own_metal_from, d.metals);
        take("value", own_value_from, d.values);
    }
    d.profile_entered = !profiles.empty();
    if (d.profile_entered) d.profile = profiles.front();
    return d;
}

WithWorkshop with_workshop(Catalogue reference, const WorkshopData& data, OwnCastingsToo own_castings) {
    WithWorkshop out{std::move(reference), {}};
    Catalogue& c = out.catalogue;
    if (!data.prices.empty() || !data.metals.empty() || !data.values.empty() || !data.stock.empty() ||
        !data.trials.empty())
        add_references(c);
    c.index_names();
    add_metals(c, data, out.remarks);
    add_values(c, data, out.remarks);
    add_prices(c, data, out.remarks);
    add_goals(c, data);
    if (data.fault) out.remarks.push_back(data.fault->text + "; this answer does without " + names_of(data.left_out));
    if (const std::string why = show_money_of(c, data); !why.empty()) out.remarks.push_back(why);
    c.index();
    if (own_castings == OwnCastingsToo::yes) add_castings(c, data);
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
