#include "core/casting/pour_heat.hpp"

#include "core/casting/zinc_vapour.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::casting {
namespace {

constexpr double bare_superheat_K = 30;   // common practice, no source
constexpr double flows_while_solid = 0.2; // share of the heat of fusion: Flemings, Solidification Processing, memory
constexpr double greatest_superheat_K = 600;
constexpr double spare_K = 100;      // above the least, where a range is not printed for the section; common practice
constexpr double margin_K = 20;      // above the least, for ladle and thermometer; common practice
constexpr double restless_atm = 0.3; // zinc leaves a melt visibly from about here (our choice)

std::string whole_celsius(double kelvin) {
    return trimmed(std::round(kelvin - 273.15), 4) + " degC";
}

/// "light castings" and "heavy castings" in a record's note.
std::string section_in(const std::string& note) {
    if (note.find("light casting") != std::string::npos) return "thin";
    return note.find("heavy casting") != std::string::npos ? "heavy" : "";
}

std::vector<PrintedRange> printed_for_metal(const Material& m) {
    std::vector<PrintedRange> out;
    for (const Record& record : m.metal.records) {
        if (record.property != "pouring_temperature" || !record.usable()) continue;
        for (const Point& p : record.points) {
            if (p.is_bound()) continue;
            PrintedRange r;
            r.low_K = std::isnan(p.low_si) ? p.value_si : p.low_si;
            r.high_K = std::isnan(p.high_si) ? p.value_si : p.high_si;
            r.section = section_in(record.note);
            r.source = {record.citation.source,
                        record.citation.locator,
                        record.citation.through,
                        record.id,
                        "",
                        p.printed + " " + record.unit,
                        p.value_si,
                        record.citation.how_known,
                        true};
            out.push_back(std::move(r));
        }
    }
    return out;
}

std::vector<PrintedRange> printed_in_practice(const Material& m, const std::string& process) {
    std::vector<PrintedRange> out;
    for (const Practice* p : practices(m.catalogue, m.metal, "pouring_temperature", process)) {
        const Point& f = p->figure;
        out.push_back({std::isnan(f.low_si) ? f.value_si : f.low_si, std::isnan(f.high_si) ? f.value_si : f.high_si,
                       p->grade, source_of(*p)});
    }
    return out;
}

class Window {
public:
    Window(const Material& m, const PourHeatInputs& in) : m_(m), in_(in) {}

    Result<PourHeat> run() {
        const auto melts = liquidus(m_);
        if (!melts) return melts.problem();
        if (in_.superheat_K && !(*in_.superheat_K >= 0 && *in_.superheat_K <= greatest_superheat_K))
            return Problem{Problem::Kind::unreadable, "the superheat must be from 0 K to 600 K", 0};
        melts_ = *melts;
        h_.section = section_class(m_, in_.thinnest_m, &share_);
        h_.printed = printed_for_metal(m_);
        if (h_.printed.empty()) h_.printed = printed_in_practice(m_, in_.process);
        take();
        least();
        never_bare();
        most();
        recommend();
        check();
        return h_;
    }

private:
    double liquid_K() const { return melts_.value_si; }

    void take() {
        const auto rank = [&](const PrintedRange& r) {
            const bool fits =
                r.high_K > liquid_K() + 5 && (r.section.empty() || h_.section == r.section || h_.section == "medium");
            if (!fits) return 0;
            return 1 + (r.section == h_.section ? 4 : 0) + (r.source.how_known == HowKnown::read ? 2 : 0) +
                   (r.high_K > r.low_K ? 1 : 0);
        };
        int best = 0;
        for (const PrintedRange& r : h_.printed)
            if (rank(r) > best) {
                best = rank(r);
                h_.taken = r;
            }
    }

    double figure(const std::string& quantity) {
        const Range r = range_of(practices(m_.catalogue, m_.metal, quantity, in_.process));
        for (const SourceValue& s : r.sources) h_.pour.sources.push_back(s);
        return r.middle();
    }

    /// Superheat that the way in and the mould take before the mould is full.
    void least() {
        const double way_K = figure("pouring_loss");
        const double on_the_way = std::isnan(way_K) ? 0 : way_K;
        h_.least_K = liquid_K() + on_the_way;
        h_.least_why = "cup and sprue take " + trimmed(on_the_way, 2) + " K";
        const double k = figure("mould_conductivity"), rho = figure("mould_density"), c = figure("mould_specific_heat");
        const double correction = figure("freezing_correction");
        const auto density = liquid_density(m_, liquid_K());
        const auto heat = liquid_specific_heat(m_, liquid_K());
        if (std::isnan(k * rho * c) || std::isnan(in_.mould_K) || std::isnan(in_.fill_s) || !density || !heat) return;
        const double effusivity = std::sqrt(k / (std::isnan(correction) ? 1 : correction) * rho * c);
        const double step_K = std::max(0.0, liquid_K() - in_.mould_K);
        double lost_J_m2 = 2 * effusivity * step_K * std::sqrt(in_.fill_s / std::numbers::pi);
        const double contact = figure("mould_contact");
        if (!std::isnan(contact)) lost_J_m2 = std::min(lost_J_m2, contact * step_K * in_.fill_s);
        const double half_m = std::min(in_.thinnest_m / 2, in_.part.modulus_m());
        const double drop_K = lost_J_m2 / (density->value_si * heat->value_si * half_m);
        const auto fusion = latent_heat(m_);
        const double by_freezing_K =
            fusion ? std::min(drop_K, flows_while_solid * fusion->value_si / heat->value_si) : 0;
        taken_by_mould_K_ = drop_K - by_freezing_K;
        by_freezing_K_ = by_freezing_K;
        h_.least_K += std::min(drop_K - by_freezing_K, greatest_superheat_K);
        h_.least_why +=
            ", the mould " + trimmed(drop_K, 2) + " K in about " + significant(in_.fill_s, 1) + " s of filling";
        if (by_freezing_K > 0)
            h_.least_why +=
                ", of which " + trimmed(by_freezing_K, 2) + " K come from freezing a fifth, which still flows";
    }

    /// Less than this skins over in the ladle, whatever the mould takes.
    void never_bare() {
        if (h_.least_K >= liquid_K() + bare_superheat_K) return;
        h_.least_K = liquid_K() + bare_superheat_K;
        h_.least_why += "; never less than " + trimmed(bare_superheat_K, 2) + " K";
    }

    void lower_most(double kelvin, const std::string& why) {
        if (!std::isnan(h_.most_K) && h_.most_K <= kelvin) return;
        h_.most_K = kelvin;
        h_.most_why = why;
    }

    bool zinc_in_copper() const {
        const Metal* principal = principal_element(m_);
        return principal && principal->slug == "copper" && m_.metal.content_percent("Zn") > 2;
    }

    void most() {
        if (h_.taken) lower_most(h_.taken->high_K, "end of the printed range");
        const double limit = figure("greatest_superheat");
        if (!h_.taken && !std::isnan(limit))
            lower_most(liquid_K() + limit, "more than " + trimmed(limit, 3) + " K of superheat gasses the metal");
        if (in_.furnace_maximum_K && *in_.furnace_maximum_K >= h_.least_K)
            lower_most(*in_.furnace_maximum_K, "your furnace");
        if (!zinc_in_copper()) return;
        const double x = zinc_mole_fraction(m_.metal.content_percent("Zn") / 100);
        const double boils_K = zinc_pressure_reached_K(x, restless_atm * atmosphere_Pa);
        lower_most(std::max(boils_K, liquid_K() + 20),
                   "zinc reaches " + trimmed(restless_atm, 2) + " atm over the melt at " + whole_celsius(boils_K));
    }

    void recommend() {
        Traced& p = h_.pour;
        p.how_known = HowKnown::read;
        add_sources(p, melts_);
        if (in_.superheat_K) {
            p.value_si = liquid_K() + *in_.superheat_K;
            p.standard_uncertainty_si = melts_.standard_uncertainty_si;
            p.how = "liquidus plus the superheat asked for";
        } else if (h_.taken) {
            from_printed(*h_.taken);
        } else {
            by_superheat();
        }
        h_.superheat_K = p.value_si - liquid_K();
    }

    void from_printed(const PrintedRange& r) {
        Traced& p = h_.pour;
        const double along = r.section.empty() ? 0.9 - 0.8 * share_ : 0.5;
        p.value_si = r.low_K + along * (r.high_K - r.low_K);
        p.standard_uncertainty_si = (r.high_K - r.low_K) / 2 / std::sqrt(3.0);
        p.how = "printed " + whole_celsius(r.low_K) + (r.high_K > r.low_K ? " to " + whole_celsius(r.high_K) : "") +
                (r.section.empty()     ? ", " + h_.section + " section"
                 : r.section == "thin" ? " for light castings"
                                       : " for heavy castings");
        p.how_known = r.source.how_known;
        p.sources.push_back(r.source);
        const double enough_K = std::max(r.low_K, h_.least_K + spare_K);
        if (r.section.empty() && p.value_si > enough_K) {
            p.value_si = enough_K;
            p.how += "; no hotter than " + trimmed(spare_K, 3) + " K above the least";
        }
        move_inside();
    }

    void by_superheat() {
        const Range over = range_of(practices(m_.catalogue, m_.metal, "superheat", ""));
        Traced& p = h_.pour;
        const double span = over.empty() ? 0 : over.high_si - over.low_si;
        p.value_si = liquid_K() + (over.empty() ? 0 : over.high_si - share_ * span);
        p.standard_uncertainty_si = std::hypot(melts_.standard_uncertainty_si, span / 2 / std::sqrt(3.0));
        p.how = "no pouring temperature printed for the metal or its family: liquidus plus common superheat, " +
                h_.section + " section";
        p.estimated = true;
        for (const SourceValue& s : over.sources) p.sources.push_back(s);
        p.how_known = HowKnown::common_practice;
        move_inside();
    }

    void move_inside() {
        Traced& p = h_.pour;
        if (!std::isnan(h_.most_K) && h_.most_K < h_.least_K) {
            p.value_si = h_.most_K;
            p.how += "; as hot as may be: " + h_.most_why;
            return;
        }
        const double margin = std::isnan(h_.most_K) ? margin_K : std::min(margin_K, (h_.most_K - h_.least_K) / 2);
        if (p.value_si < h_.least_K + margin) {
            p.value_si = h_.least_K + margin;
            p.how += "; raised to " + trimmed(margin, 2) + " K above the least that fills";
        }
        if (!std::isnan(h_.most_K) && p.value_si > h_.most_K) {
            p.value_si = h_.most_K;
            p.how += "; held down: " + h_.most_why;
        }
    }

    void check() {
        if (!std::isnan(h_.most_K) && h_.most_K < h_.least_K)
            h_.cautions.push_back("Pouring window empty: filling needs about " + whole_celsius(h_.least_K) + " (" +
                                  h_.least_why + "), the most is " + whole_celsius(h_.most_K) + " (" + h_.most_why +
                                  "): " + mould_that_helps() + "faster filling or a thicker wall.");
        if (!zinc_in_copper()) return;
        const double x = zinc_mole_fraction(m_.metal.content_percent("Zn") / 100);
        h_.zinc_atm = zinc_pressure_Pa(x, h_.pour.value_si) / atmosphere_Pa;
        const std::string at = "Zinc stands at " + significant(h_.zinc_atm, 2) + " atm over this melt at " +
                               whole_celsius(h_.pour.value_si);
        if (h_.zinc_atm >= 1)
            h_.cautions.push_back(at + ": it boils. Pour cooler.");
        else if (h_.zinc_atm > restless_atm * 1.01)
            h_.cautions.push_back(at + ": it fumes hard and leaves as you wait; no hotter, and upwind.");
    }

    /// What the mould takes goes by how much colder than the metal it is.
    std::string mould_that_helps() const {
        if (in_.process == "sand") return {}; // nobody heats it
        const double too_much_K = h_.least_K - h_.most_K;
        if (!(taken_by_mould_K_ > too_much_K)) return "a hotter mould, ";
        const double mould_K =
            liquid_K() - (liquid_K() - in_.mould_K) * (1 - too_much_K / (taken_by_mould_K_ + by_freezing_K_));
        const auto freezes = solidus(m_);
        if (!freezes || mould_K > freezes->value_si - 50) return "a hotter mould, ";
        return "a mould at " + whole_celsius(mould_K) + " or more, ";
    }

    const Material& m_;
    const PourHeatInputs& in_;
    PourHeat h_;
    double taken_by_mould_K_ = 0, by_freezing_K_ = 0;
    Traced melts_;
    double share_ = 0.5;
};

bool by_jewellers_rule(const Metal& metal) {
    return metal.family == "silver" || metal.family == "gold" || metal.family == "platinum group";
}

} // namespace

std::string section_class(const Material& m, double wall_m, double* share_out) {
    const auto classes = practices(m.catalogue, m.metal, "section_class", "");
    const Range thin = range_of(of_grade(classes, "thin")), heavy = range_of(of_grade(classes, "heavy"));
    double share = 0.5;
    if (!thin.empty() && !heavy.empty())
        share = std::clamp((wall_m - thin.middle()) / (heavy.middle() - thin.middle()), 0.0, 1.0);
    if (share_out) *share_out = share;
    return share <= 0 ? "thin" : share >= 1 ? "heavy" : "medium";
}

Result<PourHeat> pour_heat(const Material& material, const PourHeatInputs& inputs) {
    return Window(material, inputs).run();
}

MouldHeatPlan mould_heat(const Material& m, const std::string& process, const std::string& section, double solidus_K) {
    MouldHeatPlan h;
    std::vector<const Practice*> same;
    for (const Practice* p : practices(m.catalogue, m.metal, "mould_preheat", process))
        if (p->process == process &&
            (p->grade.empty() || p->grade == section || (p->grade == "light" && section == "thin")))
            same.push_back(p);
    h.range = range_of(same);
    h.how = "printed for " + m.metal.family + " in this mould";
    const Range below = range_of(practices(m.catalogue, m.metal, "mould_preheat_below_solidus", process));
    if (h.range.empty() && process == "plaster" && by_jewellers_rule(m.metal) && !below.empty()) {
        h.range = below;
        h.range.low_si = h.range.high_si = std::max(solidus_K - below.middle(), room_temperature_K);
        h.how = "flask " + trimmed(below.middle(), 3) + " K below the solidus, a rule of jewellers";
        h.by_rule = true;
    }
    const Range share = range_of(practices(m.catalogue, m.metal, "mould_preheat_share", process));
    if (h.range.empty() && !share.empty()) {
        const double above_K = solidus_K - 273.15;
        h.range = share;
        h.range.low_si = 273.15 + share.low_si * above_K;
        h.range.high_si = 273.15 + share.high_si * above_K;
        h.how = "none printed for this metal: " + trimmed(share.low_si, 2) + " to " + trimmed(share.high_si, 2) +
                " of its solidus in Celsius, a habit of the trade";
        h.by_rule = true;
    }
    if (h.range.empty()) h.how = "no figure was found for this metal and mould";
    for (const Practice* p : practices(m.catalogue, m.metal, "mould_limit", process))
        if (p->process == process && process == "plaster" && !h.range.empty() && h.range.high_si > p->figure.value_si) {
            h.range.high_si = p->figure.value_si;
            h.range.low_si = std::min(h.range.low_si, p->figure.value_si);
            h.how += "; held to what " + p->material + " stands";
        }
    for (const Practice* p : practices(m.catalogue, m.metal, "mould_metal_limit", process))
        if (p->process == process) {
            h.metal_limit_K = p->figure.value_si;
            h.limit_why = p->material + ": " + p->text;
        }
    return h;
}

} // namespace pourbook::casting
