#include "questions/mix/mix_scrap.hpp"

#include "core/alloys/density.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t draws = 60;
constexpr std::array halton_bases = {2, 3, 5, 7, 11, 13, 17, 19, 23, 29};

/// Halton's sequence: the digits of i in a base, mirrored at the point.
double halton(std::size_t i, std::size_t base) {
    double out = 0, digit = 1;
    for (; i > 0; i /= base) {
        digit /= static_cast<double>(base);
        out += digit * static_cast<double>(i % base);
    }
    return out;
}

/// "brass" of "scrap:brass", "scrap brass" or "brass scrap"; empty for other words.
std::string kind_in(const std::string& words) {
    constexpr std::string_view word = "scrap";
    if (words.starts_with(word) && words.size() > word.size()) return words.substr(word.size() + 1);
    if (words.size() > word.size() + 1 && words.ends_with(word)) return words.substr(0, words.size() - word.size() - 1);
    return words == word ? "?" : "";
}

double at_share(std::vector<double> sorted, double share) {
    std::sort(sorted.begin(), sorted.end());
    return sorted[static_cast<std::size_t>(std::lround(share * static_cast<double>(sorted.size() - 1)))];
}

struct Drawn {
    std::vector<Composition> compositions;
    std::vector<double> density, resistivity, solidus, liquidus;
};

void widen(Estimate& e, const std::vector<double>& drawn) {
    if (drawn.size() < draws / 2) return;
    e.low90_si =
        e.value_si - std::hypot(e.value_si - e.low90_si, e.value_si - std::min(at_share(drawn, 0.05), e.value_si));
    e.high90_si =
        e.value_si + std::hypot(e.high90_si - e.value_si, std::max(at_share(drawn, 0.95), e.value_si) - e.value_si);
    e.standard_uncertainty_si = (e.high90_si - e.low90_si) / 2 / 1.645;
    e.error += "; widened by what the scrap may hold";
}

std::vector<Stock> drawn_stocks(const Catalogue& catalogue, const std::vector<Stock>& stocks, std::size_t draw) {
    std::vector<Stock> out = stocks;
    std::size_t dimension = 0;
    for (Stock& s : out) {
        const auto scrap = scrap_named(catalogue, s.name);
        if (!scrap || !*scrap) continue;
        std::vector<double> places;
        for (std::size_t i = 0; i < (**scrap).parts.size(); ++i, ++dimension)
            places.push_back(halton(draw + 1, static_cast<std::size_t>(halton_bases[dimension % halton_bases.size()])));
        if (const auto c = scrap_composition(catalogue.alloys, **scrap, places)) s.composition = *c;
    }
    return out;
}

Drawn drawn_mixes(const Catalogue& catalogue, const MixResult& r) {
    Drawn out;
    for (std::size_t i = 0; i < draws; ++i) {
        const Result<Blend> b = blend(catalogue.alloys, drawn_stocks(catalogue, r.stocks, i));
        if (!b) continue;
        out.compositions.push_back(b->composition);
        const AlloySetting setting{catalogue, b->composition, r.treatment};
        if (const auto d = estimate_density(setting)) out.density.push_back(d->value_si);
        if (const auto rho = estimate_resistivity(setting)) out.resistivity.push_back(rho->estimate.value_si);
        if (const auto m = estimate_melting(setting)) {
            out.solidus.push_back(m->solidus.value_si);
            out.liquidus.push_back(m->liquidus.value_si);
        }
    }
    return out;
}

} // namespace

std::optional<Result<Scrap>> scrap_named(const Catalogue& catalogue, const std::string& words) {
    const std::string kind = kind_in(words);
    if (kind.empty()) return std::nullopt;
    Scrap out;
    std::string kinds;
    for (const Practice& p : catalogue.practices) {
        if (p.quantity != "scrap_content") continue;
        if (kinds.find("scrap:" + p.grade) == std::string::npos)
            kinds += (kinds.empty() ? "scrap:" : ", scrap:") + p.grade;
        if (p.grade != kind) continue;
        out.base = p.material;
        out.source = p.citation.source;
        out.parts.push_back({p.element, 100 * p.figure.low_si, 100 * p.figure.high_si});
    }
    if (out.parts.empty())
        return Result<Scrap>(Problem{Problem::Kind::unknown,
                                     "what scrap is in '" + words + "'? Known: " + kinds +
                                         "; or write its composition in brackets, such as (Cu 62 Zn 36 Pb 2)",
                                     0});
    return Result<Scrap>(std::move(out));
}

Result<Composition> scrap_composition(const AlloyData& data, const Scrap& scrap, const std::vector<double>& places) {
    std::vector<Share> shares;
    double rest = 100;
    for (std::size_t i = 0; i < scrap.parts.size(); ++i) {
        const ScrapPart& p = scrap.parts[i];
        const double wt = p.low_wt + (i < places.size() ? places[i] : 0.5) * (p.high_wt - p.low_wt);
        if (wt > 0) shares.push_back({p.element, wt, 0});
        rest -= wt;
    }
    shares.push_back({scrap.base, rest, 0});
    return composition_of(data, std::move(shares));
}

void widen_by_scrap(const Catalogue& catalogue, MixResult& r) {
    const bool holds_scrap = std::any_of(r.stocks.begin(), r.stocks.end(),
                                         [&](const Stock& s) { return scrap_named(catalogue, s.name).has_value(); });
    if (!holds_scrap) return;
    const Drawn drawn = drawn_mixes(catalogue, r);
    if (r.density) widen(*r.density, drawn.density);
    if (r.resistivity) widen(r.resistivity->estimate, drawn.resistivity);
    if (r.melting) {
        widen(r.melting->solidus, drawn.solidus);
        widen(r.melting->liquidus, drawn.liquidus);
    }
    for (const Share& s : r.composition.shares()) {
        std::vector<double> contents;
        for (const Composition& c : drawn.compositions) contents.push_back(c.wt(s.element));
        if (!contents.empty())
            r.scrap_contents.push_back({s.element, at_share(contents, 0.05), at_share(contents, 0.95)});
    }
}

} // namespace pourbook
