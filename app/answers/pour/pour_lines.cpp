#include "answers/pour/pour_lines.hpp"

#include "core/quantity/format.hpp"
#include "questions/say/amounts.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double published_from_m = 0.0254; // SFSA, Feeding and Risering Guidelines (2001), section 5

std::string window_line(const PourResult& r, const SheetUnits& u) {
    const casting::PourHeat& h = r.heat;
    std::string out = "window: at least " + u.temperature(h.least_K) + " (" + h.least_why + ")";
    if (!std::isnan(h.most_K)) out += ", at most " + u.temperature(h.most_K) + " (" + h.most_why + ")";
    return out;
}

std::string printed_line(const casting::PourHeat& h, const SheetUnits& u) {
    std::string out;
    for (const casting::PrintedRange& p : h.printed) {
        const std::string section = p.section == "thin" ? " light" : p.section == "heavy" ? " heavy" : "";
        out += (out.empty() ? "printed: " : "; ") + u.temperature(p.low_K) +
               (p.high_K > p.low_K ? " to " + u.temperature(p.high_K) : "") + section + " [" + p.source.key + "]";
    }
    return out;
}

std::string mould_line(const PourResult& r, const SheetUnits& u) {
    if (std::isnan(r.mould_K)) return "mould: " + r.mould.how + "; state --mould-temperature";
    const std::string at = "mould at " + u.temperature(r.mould_K);
    if (r.request.mould_K) return at + ", as stated";
    if (r.mould.range.empty()) return at + ", not preheated";
    const casting::Range& range = r.mould.range;
    const std::string ends =
        range.high_si > range.low_si ? u.temperature(range.low_si) + " to " + u.temperature(range.high_si) + ": " : "";
    return at + " (" + ends + r.mould.how + ") " + shown_keys(range.sources);
}

std::string carry_line(const casting::Carry& c, const SheetUnits& u) {
    std::string out = "out of the kiln, empty, the shell has on average ";
    for (std::size_t i = 0; i < c.seconds.size(); ++i)
        out += (i ? ", " : "") + u.temperature(c.mould_K[i]) + " after " + trimmed(c.seconds[i], 3) + " s";
    return out + ": time the carry";
}

} // namespace

Lines temperature_lines(const PourResult& r, const SheetUnits& u) {
    Lines out;
    out.push_back("metal at " + u.temperature(r.heat.pour.value_si) + " (superheat " +
                  u.difference(r.heat.superheat_K) + "): " + r.heat.pour.how + shown_mark(r.heat.pour));
    out.push_back(window_line(r, u));
    if (r.heat.printed.size() > 1) out.push_back(printed_line(r.heat, u));
    out.push_back(mould_line(r, u));
    if (r.carry) out.push_back(carry_line(*r.carry, u));
    return out;
}

std::string freezing_figure(const PourResult& r) {
    return r.freezing ? "about " + shown_seconds(r.freezing->time_s.value_si) : "";
}

Lines freezing_lines(const PourResult& r, const SheetUnits& u) {
    if (!r.freezing) return {r.freezing.problem().text};
    const casting::FreezingPlan& f = *r.freezing;
    Lines out;
    out.push_back(r.freezes_last + " is solid after " + shown_seconds(f.time_s.value_si) + " (nine in ten: " +
                  shown_seconds(f.low_s) + " to " + shown_seconds(f.high_s) + ", most in doubt: " + f.decides +
                  "); its superheat is gone after " + shown_seconds(f.superheat_gone_s));
    std::string beside = "one-dimensional conduction into " + f.mould_kind + " (" + u.temperature(r.mould_K) +
                         "), metal and mould touching, heat of fusion spread over the freezing range, the outside " +
                         "radiating into still air";
    const bool differs = !std::isnan(f.of_slab_s) && std::abs(std::log(f.of_slab_s / f.time_s.value_si)) > 0.15;
    if (differs) beside += "; a slab of the same modulus: " + shown_seconds(f.of_slab_s);
    if (!std::isnan(f.chvorinov_s))
        beside += "; Chvorinov's rule, a mould without end: " + shown_seconds(f.chvorinov_s);
    out.push_back(beside);
    if (!std::isnan(f.black_s))
        out.push_back("below " + u.temperature(f.black_K) + " throughout after " + shown_seconds(f.black_s) +
                      (r.request.process == "permanent" ? ": out of a metal mould by then, before it grips"
                                                        : ": not before then out of the mould"));
    return out;
}

std::string feeder_figure(const PourResult& r, const SheetUnits& u) {
    const casting::FeedingPlan& f = r.feeding;
    if (r.request.no_feeder || f.too_thin) return "none";
    if (!f.feeder) return "";
    const casting::Cylinder& c = f.feeder->chosen();
    return (f.feeders > 1 ? std::to_string(f.feeders) + " of " : "") + u.length(c.diameter_m) + " wide, " +
           u.length(c.height_m) + " high";
}

Lines feeder_lines(const PourResult& r, const SheetUnits& u) {
    const casting::FeedingPlan& f = r.feeding;
    Lines out;
    out.push_back((f.too_thin ? "freezes last: " : "freezes last, and sinks if not fed: ") + r.freezes_last +
                  " (modulus " + u.length(r.heaviest.modulus_m()) + ")");
    if (!std::isnan(f.share.value_si)) out.push_back("shrinks " + shown_percent(f.share.value_si) + ": " + f.share.how);
    if (!std::isnan(f.distance_m))
        out.push_back(
            "a feeder reaches " + u.length(f.distance_m) +
            " from its edge to a free end, of which the end's "
            "own chill gives " +
            u.length(f.end_effect_m) + " (steel plates in sand; a guide" +
            (f.thickness_m < published_from_m ? "; thin walls gated through it were fed up to twice as far)" : ")"));
    if (f.too_thin && !r.request.no_feeder)
        out.push_back("no feeder: a wall of " + u.length(f.thickness_m) + " freezes its own neck. Gates every " +
                      u.length(f.gate_spacing_m) + " or closer (at least " + std::to_string(r.fill.gating.gates) +
                      "), each as thick as the wall");
    if (f.feeder && !r.request.no_feeder) {
        const casting::Feeder& best = *f.feeder;
        std::string line = "cylinder " + feeder_figure(r, u) + " (" + u.mass(r.feeder_kg) + "), neck " +
                           u.length(best.neck_m) + ", by " + (best.modulus_governs ? "modulus" : "feed demand") +
                           "; by modulus " + u.length(best.by_modulus.diameter_m) + ", by feed demand " +
                           u.length(best.by_demand.diameter_m);
        if (!std::isnan(f.feeder_freezing_s)) line += "; solid after " + shown_seconds(f.feeder_freezing_s);
        out.push_back(line);
        if (f.sleeved)
            out.push_back("in an insulating sleeve with its top covered: " + u.length(f.sleeved->chosen().diameter_m) +
                          " wide, " + u.length(f.sleeved->chosen().height_m) + " high");
    }
    out.insert(out.end(), f.notes.begin(), f.notes.end());
    return out;
}

namespace {

/// How many, and how wide each is where it is as thick as the wall.
std::string gates_text(const PourResult& r, const SheetUnits& u) {
    const casting::GatingPlan& g = r.fill.gating;
    if (g.gates <= 1) return "";
    return " (" + std::to_string(g.gates) + " gates, each " + u.length(r.fill.wall_m) + " by " +
           u.length(g.gates_m2 / static_cast<double>(g.gates) / r.fill.wall_m) + ")";
}

} // namespace

std::string filling_figure(const PourResult& r) {
    const double s = r.fill.gating.fill_s;
    return std::isnan(s) ? "" : "in " + shown_seconds(s);
}

Lines filling_lines(const PourResult& r, const SheetUnits& u) {
    const casting::GatingPlan& g = r.fill.gating;
    if (std::isnan(g.fill_s) || std::isnan(g.choke_m2)) return {"filling: a figure is missing from the reference"};
    Lines out;
    std::string time = "fill in " + shown_seconds(g.fill_s) + " (common for this weight " + shown_seconds(g.rule_s);
    if (!std::isnan(g.most_s)) time += "; a third of the thinnest wall's freezing time " + shown_seconds(g.most_s);
    out.push_back(time + ")" + (g.stated ? ", by the sprue stated" : ""));
    out.push_back("sprue " + u.length(g.head_m) + " high" +
                  (r.request.sprue_height_m
                       ? ", as stated"
                       : " (the part " + u.length(r.heaviest.box_m[2]) + " high as drawn, the cup above it)") +
                  ": " + u.length(g.foot_m) + " at the foot, " + u.length(g.top_m) +
                  " below the cup; the metal falls to " + significant(g.foot_speed_m_s, 2) +
                  " m/s and must be slowed: gates of " + significant(g.gates_m2 * 1e6, 2) + " mm2 in all" +
                  gates_text(r, u) + " for 0.5 m/s, from below");
    std::string head = "head above the highest place at least " + u.length(g.least_head_m);
    if (!std::isnan(g.capillary_m)) head += " (surface tension takes " + u.length(g.capillary_m) + " of it)";
    out.push_back(head + "; vents of " + significant(g.vents_m2 * 1e6, 2) + " mm2 at the highest places");
    return out;
}

std::string pattern_figure(const PourResult& r) {
    bool all_own = !r.patterns.empty();
    for (const casting::PiecePattern& piece : r.patterns)
        for (const casting::DimensionPlan& d : piece.dimensions) all_own = all_own && d.own > 0;
    return all_own ? "by your own castings" : "scale " + shown_scale(r.scale);
}

std::string held_line(const std::string& process) {
    if (process == "sand")
        return "green sand that yields: near the free figure; bonded sand or a hard core: nearer the lowest allowance";
    if (process == "permanent")
        return "a metal mould holds what it surrounds until it is opened: nearer the lowest allowance there; the mould "
               "is this much larger, measured hot";
    if (process == "plaster") return "investment is weak and yields: the sizes of a bore with a core hold back most";
    return "thin shell that yields: take the free figure; rigid mould or core: nearer the lowest allowance";
}

std::string own_lengths_line(const PourResult& r) {
    std::string sizes;
    for (const casting::PiecePattern& piece : r.patterns)
        for (const casting::DimensionPlan& d : piece.dimensions)
            if (d.own > 0)
                sizes += (sizes.empty() ? "" : ", ") + d.name + " " + shown_percent(d.pattern_m / d.cast_m - 1) +
                         " (from " + std::to_string(d.own) + ")";
    if (sizes.empty()) return {};
    return "your own castings in this mould contracted " + sizes +
           ": the PATTERN goes by them; --own-trials off goes by the metal alone";
}

Lines own_charge_lines(const PourResult& r, const SheetUnits& u) {
    Lines out;
    if (const auto& y = r.own_yield)
        out.push_back("your own yield, from " + std::to_string(y->castings) +
                      (y->castings > 1 ? " castings " : " casting ") + shown_percent(y->mean) +
                      (y->taken ? ": taken, for this plan alone would melt " + u.mass(y->planned_kg)
                                : ": this plan melts no less") +
                      "; --own-trials off leaves it out");
    if (const auto& s = r.shelf) {
        std::string lots;
        for (const std::string& lot : s->lots) lots += (lots.empty() ? " (" : ", ") + lot;
        out.push_back(s->lots.empty()
                          ? "on your shelf: no lot of " + r.metal->slug + ", " + u.mass(s->need_kg) + " to get"
                          : "on your shelf: " + u.mass(s->kg) + lots + "), " +
                                (s->short_kg() > 0 ? "short by " + u.mass(s->short_kg())
                                                   : "enough, " + u.mass(s->kg - s->need_kg) + " stay") +
                                "; --own-stock off leaves it out");
    }
    return out;
}

Lines consumable_lines(const PourResult& r, const SheetUnits& u, const std::string& low, const std::string& high) {
    const casting::Consumables& c = r.consumables;
    std::string out;
    const auto say = [&out](const std::string& text) { out += (out.empty() ? "" : ", ") + text; };
    if (!c.filament_kg.empty())
        say("filament " + mass_range_text(c.filament_kg.low_si, c.filament_kg.high_si, u.units));
    if (!c.shell_kg.empty()) say("shell about " + mass_text(c.shell_kg.low_si, u.units, 2) + " dry");
    if (!c.kiln_J.empty())
        say("kiln " + significant(c.kiln_J.low_si / 3.6e6, 2) + " to " + significant(c.kiln_J.high_si / 3.6e6, 2) +
            " kWh a burn-out");
    if (out.empty()) return {};
    return {"beside metal: " + out + ", gas as above; together " + low + " to " + high + " (common practice)"};
}

Lines loss_lines(const PourResult& r, const SheetUnits& u) {
    Lines out;
    for (const Practice* p : r.additions) {
        const double charge_kg = r.charge.charge_kg;
        out.push_back(p->material + ": " +
                      mass_range_text(p->figure.low_si * charge_kg, p->figure.high_si * charge_kg, u.units) + ", " +
                      p->text + " [" + p->citation.source + "]");
    }
    for (const casting::ElementLoss& e : r.element_losses)
        out.push_back("of " + e.element + " " + shown_between(e.share_low, e.share_high) +
                      " leaves in a melt: make up " + mass_range_text(e.low_kg, e.high_kg, u.units) + "; " + e.text);
    return out;
}

} // namespace pourbook
