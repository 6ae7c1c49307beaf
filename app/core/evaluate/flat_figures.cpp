#include "core/materials/flat_figures.hpp"

#include "core/evaluate/cited.hpp"
#include "core/evaluate/money.hpp"

#include <cmath>
#include <string>
#include <unordered_map>

namespace pourbook {
namespace {

/// The properties of a solid that a record of this kind may answer; not an expansion, which has two temperatures.
using Answered = std::unordered_map<std::string, std::vector<const Property*>>;

Answered answered_by_kind(const Catalogue& catalogue) {
    Answered out;
    for (const Property& p : catalogue.properties)
        if (!p.is_text && p.phase != Phase::liquid && !p.id.starts_with("linear_expansion"))
            for (const std::string& kind : recorded_kinds(p)) out[kind].push_back(&p);
    return out;
}

class Flattening {
public:
    explicit Flattening(const Catalogue& catalogue)
        : catalogue_(catalogue), answered_(answered_by_kind(catalogue)), price_(catalogue.property("price")) {}

    FlatFigures all() {
        for (const Metal& metal : catalogue_.metals) {
            for (const Record& record : metal.records) add_said_by(record, metal);
            add_price(metal);
            out_.end_metal();
        }
        return std::move(out_);
    }

private:
    std::uint16_t place(const Property& p) const {
        return static_cast<std::uint16_t>(&p - catalogue_.properties.data());
    }

    void add_said_by(const Record& record, const Metal& metal) {
        const auto kind = answered_.find(record.property);
        if (kind == answered_.end() || record.points.size() != 1 || record.equation) return;
        for (const Property* p : kind->second) add_lone(record, metal, *p);
    }

    void add_lone(const Record& record, const Metal& metal, const Property& p) {
        const double printed_at = record.points.front().temperature_K;
        const Question q{
            catalogue_, metal, p, phase_of_solid(p), std::isnan(printed_at) ? room_temperature_K : printed_at, usual_};
        const auto c = lone_candidate(q);
        if (!c || c->cover != Cover::direct || c->fit == ConditionFit::other) return;
        bool assumed = false;
        const double relative = own_uncertainty(*c, q, assumed) / std::abs(c->value_si);
        out_.add({c->value_si, relative, p.varies_with_temperature ? q.temperature_K : no_number, place(p), false,
                  record.citation.how_known});
    }

    void add_price(const Metal& metal) {
        if (const Price* p = price_ ? own_price(catalogue_, metal) : nullptr)
            out_.add({p->usd_per_kg, relative_uncertainty(*p), no_number, place(*price_),
                      is_stale(*p, catalogue_.today), p->citation.how_known});
    }

    const Catalogue& catalogue_;
    const Answered answered_;
    const Property* price_;
    const Conditions usual_;
    FlatFigures out_;
};

} // namespace

FlatFigures flat_figures(const Catalogue& catalogue) {
    return Flattening(catalogue).all();
}

} // namespace pourbook
