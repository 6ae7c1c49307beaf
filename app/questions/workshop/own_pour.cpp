#include "questions/workshop/own_pour.hpp"

#include "questions/metals/find_metal.hpp"
#include "questions/say/in_dollars.hpp"
#include "questions/workshop/own_metal.hpp"
#include "questions/workshop/trial.hpp"

#include <cmath>

namespace pourbook {
namespace {

bool is_of(const Catalogue& catalogue, const Metal& metal, const std::string& name) {
    const Result<const Metal*> found = find_metal(catalogue, name);
    return found && (*found)->slug == metal.slug;
}

double contraction_scatter(const Catalogue& catalogue, const Metal& metal) {
    const auto entries = casting::practices(catalogue, metal, "contraction_scatter", "");
    return entries.empty() ? 0 : casting::range_of(entries).middle();
}

void add_casting(OwnPour& out, const Weighed& w, double scatter) {
    for (const AchievedContraction& c : w.contraction)
        out.lengths.push_back({c.size, c.bore, {c.achieved, std::hypot(c.uncertainty, scatter)}});
    if (!w.contraction.empty()) ++out.castings;
    if (w.yield && *w.yield > 0 && *w.yield <= 1) out.yields.push_back(*w.yield);
}

OwnPour::Lot lot_of(const StockLot& lot, const std::vector<ExchangeRate>& rates) {
    OwnPour::Lot out{lot.lot, lot.mass_kg, no_number, ""};
    const Result<Converted> usd = lot.price ? in_dollars(*lot.price, rates) : Problem{};
    if (!usd) return out;
    out.usd_per_kg = usd->usd_per_kg;
    out.bought = lot.price->date;
    return out;
}

} // namespace

OwnPour own_pour(const Catalogue& catalogue, const Metal& metal, const std::string& process, const WorkshopData& own) {
    OwnPour out;
    const double scatter = contraction_scatter(catalogue, metal);
    for (const Trial& t : own.trials) {
        const bool here = t.process.empty() || t.process == process;
        if (t.type != TrialType::casting || !here || t.metal.empty() || !is_of(catalogue, metal, t.metal)) continue;
        std::vector<std::string> remarks;
        if (const Result<Weighed> w = weighed_from(catalogue, t, remarks)) add_casting(out, *w, scatter);
    }
    out.keeps_stock = !own.stock.empty();
    out.lots_source = own_stock_key;
    for (const StockLot& lot : own.stock)
        if (is_of(catalogue, metal, lot.metal)) out.lots.push_back(lot_of(lot, own.rates));
    return out;
}

PourRequest with_own_pour(const Catalogue& catalogue, PourRequest request, const WorkshopData& own) {
    if (const auto metal = find_metal(catalogue, request.metal))
        request.own = own_pour(catalogue, **metal, request.process, own);
    return request;
}

} // namespace pourbook
