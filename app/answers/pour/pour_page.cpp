#include "answers/pour/pour_report.hpp"

#include "answers/writers/page.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double pound_kg = 0.45359237;
constexpr double troy_ounce_kg = 31.1034768e-3;

/// Writes the sections of the page in one system of units.
class PourSheet {
public:
    PourSheet(const PourResult& result, const Catalogue& catalogue, UnitSystem units)
        : r_(result), catalogue_(catalogue), workshop_(units == UnitSystem::workshop) {}

    Page page() {
        head();
        cautions();
        limits();
        temperatures();
        charge();
        pattern();
        feeder();
        heat_and_cost();
        checklist();
        blanks();
        notes();
        sources();
        return std::move(page_);
    }

private:
    using Part = PageSection::Part;
    PageSection& section(const std::string& title, const std::string& figure = "", Part part = Part::plan) {
        page_.sections.push_back({title, figure, {}, part, ""});
        return page_.sections.back();
    }
    static std::string grounds_of(const casting::Traced& t) {
        std::string out = t.how + "\nhow known: " + how_known_text(t.how_known) + (t.estimated ? ", estimated" : "");
        if (!t.sources.empty()) out += "\n\nSources";
        for (const SourceValue& s : t.sources)
            out += "\n" + s.key + ", " + s.locator + ": " + s.printed + " (" + how_known_text(s.how_known) + ")";
        return out;
    }
    void line(const std::string& text) { page_.sections.back().add(text); }
    std::string temperature(double kelvin) const {
        if (workshop_) return trimmed(std::round(kelvin * 1.8 - 459.67), 4) + " degF";
        return trimmed(std::round(kelvin - 273.15), 4) + " degC";
    }
    std::string mass(double kg) const {
        if (!workshop_) return kg < 1 ? significant(kg * 1000, 4) + " g" : significant(kg, 4) + " kg";
        const bool precious = r_.metal->family == "silver" || r_.metal->family == "gold";
        return precious ? significant(kg / troy_ounce_kg, 4) + " ozt" : significant(kg / pound_kg, 4) + " lb";
    }
    std::string length(double metres) const {
        return workshop_ ? significant(metres / inch_m, 3) + " in" : significant(metres * 1000, 3) + " mm";
    }
    std::string volume(double m3) const {
        return workshop_ ? significant(m3 / (inch_m * inch_m * inch_m), 4) + " in3" : significant(m3 * 1e6, 4) + " cm3";
    }
    std::string money(double usd) const { return shown_money(catalogue_, usd, 3, UnitSystem::shown); }
    static std::string percent(double share) { return significant(100 * share, 3) + " %"; }
    static std::string span(const casting::Range& range, double factor, int figures) {
        const std::string low = trimmed(range.low_si * factor, figures);
        const std::string high = trimmed(range.high_si * factor, figures);
        return low == high ? low : low + " to " + high;
    }
    static std::string mark(const casting::Traced& t) {
        std::string out;
        if (t.estimated) out += " (estimated)";
        if (t.how_known == HowKnown::memory) out += " (from memory)";
        if (t.how_known == HowKnown::common_practice) out += " (common practice)";
        return out;
    }

    void head() {
        const std::string& process = r_.request.process;
        page_.title = "Pour sheet: " + r_.metal->name + ", " + process +
                      (process == "permanent" ? " mould"
                       : process == "shell"   ? " mould (ceramic)"
                                              : "");
        for (const casting::Piece& piece : r_.request.pieces) page_.subtitle.push_back("part " + piece.words);
        page_.subtitle.push_back("drawn " + volume(r_.part_volume_m3) + ", " + mass(r_.part_mass_kg) + " at " +
                                 trimmed(r_.density.value_si, 5) + " kg/m3" + mark(r_.density) +
                                 (r_.request.count > 1
                                      ? "; " + std::to_string(r_.request.count) + " castings, " +
                                            std::to_string(r_.heats) + " heat(s); figures below are for one"
                                      : ""));
        if (const std::string words = stated(); !words.empty()) page_.subtitle.push_back("stated: " + words);
        page_.foot = "Pourbook, data " + catalogue_.data_version;
    }

    /// What was asked for beyond metal, part and process.
    std::string stated() const {
        const PourRequest& q = r_.request;
        std::string out;
        const auto say = [&out](const std::string& words) { out += (out.empty() ? "" : "; ") + words; };
        if (q.stock_m > 0) say("machining stock " + length(q.stock_m));
        if (q.clear_m) say("bore must clear " + length(*q.clear_m));
        if (q.superheat_K) say("superheat " + trimmed(*q.superheat_K, 4) + " K");
        if (q.mould_K) say("mould at " + temperature(*q.mould_K));
        if (q.shell_wall_m) say("shell wall " + length(*q.shell_wall_m));
        if (q.melt_loss) say("melt loss " + percent(*q.melt_loss));
        if (q.yield) say("yield " + percent(*q.yield));
        if (q.gating_kg) say("sprue and cup " + mass(*q.gating_kg));
        if (q.heel_kg > 0) say("heel " + mass(q.heel_kg));
        if (q.power_W) say("furnace " + trimmed(*q.power_W / 1000, 4) + " kW");
        if (q.efficiency) say("efficiency " + percent(*q.efficiency));
        if (q.no_feeder) say("no feeder");
        return out;
    }

    void cautions() {
        section("Cautions first", "", Part::cautions);
        PageSection& s = page_.sections.back();
        for (const casting::Warning& w : r_.cautions)
            s.add(w.text + " [" + w.citation.source + "]", PageBlock::Kind::caution);
    }

    /// Of the workshop, and what else this plan must heed.
    void limits() {
        const bool entered = !r_.request.workshop.empty();
        PageSection& s = section("Limits",
                                 !entered                     ? "not entered"
                                 : r_.limits.cautions.empty() ? "kept"
                                                              : "see below",
                                 Part::limits);
        for (const std::string& remark : r_.remarks) s.add(remark, PageBlock::Kind::caution);
    }

    void pattern() {
        if (!r_.contraction) {
            section("Pattern", "", Part::pattern);
            line("no scale: " + r_.contraction.problem().text);
            return;
        }
        const casting::Traced& c = r_.contraction->strain;
        section("Pattern", "scale " + significant(1 + c.value_si, 5), Part::pattern).grounds = grounds_of(c);
        line("free contraction " + percent(c.value_si) + " +- " + percent(c.standard_uncertainty_si) + mark(c) +
             " from " + temperature(r_.contraction->solidus_K) + " to 20 degC");
        line(c.how);
        if (std::isnan(r_.allowance.low))
            line("tabulated allowances: " + r_.allowance.from);
        else
            line("tabulated allowances " + percent(r_.allowance.low) + " to " + percent(r_.allowance.high) + ", " +
                 r_.allowance.from + " " + keys_of(r_.allowance.sources));
        for (const std::string& note : r_.allowance.notes) line(note);
        line("thin shell that yields: take the free figure; rigid mould or core: nearer the lowest allowance");
        for (const Practice* p : r_.draft) line("draft: " + p->text);
        dimensions();
    }

    void dimensions() {
        Table t{{{"dimension"},
                 {"finished mm", true},
                 {"as cast mm", true},
                 {"tolerance", true},
                 {"PATTERN mm", true},
                 {"PATTERN in", true},
                 {"if a core holds it"}},
                {}};
        for (const casting::PiecePattern& piece : r_.patterns)
            for (const casting::DimensionPlan& d : piece.dimensions)
                t.rows.push_back(
                    {(r_.patterns.size() > 1 ? piece.words + " " : "") + d.name, trimmed(d.finished_m * 1000, 6),
                     trimmed(d.cast_m * 1000, 6),
                     std::isnan(d.tolerance_width_m) ? "not cited" : "+-" + trimmed(d.tolerance_width_m * 500, 3),
                     significant(d.pattern_m * 1000, 5), significant(d.pattern_m / inch_m, 4),
                     d.bore ? significant(d.held_m * 1000, 5) + " mm" : ""});
        page_.sections.back().blocks.push_back({PageBlock::Kind::table, "", {}, std::move(t)});
        if (!r_.tolerance.grade.empty()) line("tolerance: ISO 8062 " + r_.tolerance.grade + ", " + r_.tolerance.note);
    }

    void charge() {
        const casting::Charge& c = r_.charge;
        section("Charge", mass(c.charge_kg)).grounds = grounds_of(r_.density);
        if (c.by_yield) {
            line("casting " + mass(r_.cast_mass_kg) + " / yield " + percent(c.yield));
            return;
        }
        line("casting " + mass(r_.cast_mass_kg) + " + gating " + mass(c.returns_kg - r_.feeder_kg) + " + feeder " +
             mass(r_.feeder_kg) + " = " + mass(c.poured_kg) + " poured; melt loss " + percent(r_.melt_loss.value_si) +
             mark(r_.melt_loss) + " adds " + mass(c.lost_kg) +
             (r_.request.heel_kg > 0 ? ", heel " + mass(r_.request.heel_kg) : ""));
        line("yield " + percent(c.yield) + " (usual for one-off work " + span(r_.usual_yield, 100, 3) + " %), " +
             mass(c.returns_kg) + " come back as scrap; melt fills " + volume(r_.melt_volume_m3) + " of the crucible");
    }

    void feeder() {
        const casting::FeedingPlan& f = r_.feeding;
        section("Feeder", f.feeder ? length(f.feeder->chosen().diameter_m) + " wide, " +
                                         length(f.feeder->chosen().height_m) + " high"
                                   : "")
            .grounds = grounds_of(f.share);
        line("freezes last, and sinks if not fed: " + r_.freezes_last + " (modulus " + length(r_.modulus_m) + ")");
        if (f.freezing_s)
            line("freezing time about " + significant(f.freezing_s->value_si, 2) + " s, good to a factor of two; " +
                 f.mould_kind);
        else
            line(f.freezing_s.problem().text);
        if (!std::isnan(f.share.value_si)) line("shrinks " + percent(f.share.value_si) + ": " + f.share.how);
        if (f.feeder) {
            const casting::Cylinder& c = f.feeder->chosen();
            line("cylinder " + length(c.diameter_m) + " wide, " + length(c.height_m) + " high (" + mass(r_.feeder_kg) +
                 "), by " + (f.feeder->modulus_governs ? "modulus" : "feed demand") + "; by modulus " +
                 length(f.feeder->by_modulus.diameter_m) + ", by feed demand " +
                 length(f.feeder->by_demand.diameter_m));
        }
        for (const std::string& note : f.notes) line(note);
    }

    void temperatures() {
        section("Temperatures", "pour at " + temperature(r_.heat.pour.value_si)).grounds = grounds_of(r_.heat.pour);
        line("metal at " + temperature(r_.heat.pour.value_si) + " (superheat " + trimmed(r_.heat.superheat_K, 3) +
             " K): " + r_.heat.pour.how + mark(r_.heat.pour));
        if (std::isnan(r_.mould_K))
            line("mould: " + r_.heat.mould_how);
        else if (r_.heat.mould.empty())
            line("mould at " + temperature(r_.mould_K) + (r_.request.mould_K ? ", as stated" : ", not preheated"));
        else
            line("mould at " + temperature(r_.mould_K) + " (printed " + temperature(r_.heat.mould.low_si) + " to " +
                 temperature(r_.heat.mould.high_si) + ": " + r_.heat.mould_how + ") " + keys_of(r_.heat.mould.sources));
        if (r_.heat.mould_cooling_K_s)
            line("out of the kiln a shell loses about " + trimmed(*r_.heat.mould_cooling_K_s * 60, 3) +
                 " K a minute: time the carry");
        if (!std::isnan(r_.fill.time_s))
            line("filling " + significant(r_.fill.time_s, 2) + " s at " + significant(r_.fill.speed_m_s, 3) +
                 " m/s at the foot of the sprue");
        else if (!std::isnan(r_.fill.speed_m_s))
            line("metal leaves the sprue at " + significant(r_.fill.speed_m_s, 3) + " m/s");
    }

    void heat_and_cost() {
        PageSection& cost = section("Heat and cost", r_.money.price ? money(r_.money.value) : "");
        if (r_.money.price) cost.grounds = grounds_of(*r_.money.price);
        if (r_.melt_heat) {
            line(significant(r_.melt_energy_J / 3.6e6, 3) + " kWh into the charge (" +
                 significant(r_.melt_heat->total_J_kg / 1000, 3) + " kJ/kg +- " +
                 significant(r_.melt_heat->standard_uncertainty_J_kg / 1000, 2) +
                 (r_.melt_heat->estimated ? ", partly estimated" : "") + "), furnace losses not counted");
            line("propane " + significant(r_.firing.propane_kg_low, 2) + " to " +
                 significant(r_.firing.propane_kg_high, 2) + " kg in a small furnace, first heat");
            if (!std::isnan(r_.firing.seconds_low))
                line("electric, " + trimmed(*r_.request.power_W / 1000, 3) +
                     " kW: " + significant(r_.firing.seconds_low / 60, 2) + " to " +
                     significant(r_.firing.seconds_high / 60, 2) + " min");
        }
        if (r_.money.price)
            line("metal " + money(r_.money.value) + " (90 %: " + money(r_.money.low) + " to " + money(r_.money.high) +
                 "), price of " + r_.money.as_of + mark(*r_.money.price) + "; scrap that comes back is worth up to " +
                 money(r_.money.returns_value) + " of it");
        else
            line("cost: " + r_.money.price.problem().text);
        if (const std::string rate = shown_rate(catalogue_); !rate.empty()) line("money at " + rate);
    }

    void back(const std::string& heading, const std::vector<const Practice*>& entries) {
        if (entries.empty()) return;
        PageSection& s = section(heading, "", Part::notes);
        for (const Practice* p : entries) s.add(p->text + " [" + p->citation.source + "]", PageBlock::Kind::bullet);
    }

    void notes() {
        back("Gas", r_.gas);
        back("Deoxidation", r_.deoxidation);
        back("Shell", r_.shell_steps);
        back("Burn-out and crucible", r_.burnout);
        back("If it went wrong: what was seen", r_.defects);
    }

    void checklist() {
        PageSection& s = section("Before lighting");
        for (const Practice* p : r_.checklist) s.add(p->text, PageBlock::Kind::tick);
    }

    void blanks() {
        PageSection& s = section("What happened", "", Part::to_fill_in);
        const auto fill_in = [&s](std::vector<std::string> names) {
            s.blocks.push_back({PageBlock::Kind::blanks, "", std::move(names), {}});
        };
        fill_in({"date", "weather", "charge weighed", "metal at the pour", "mould at the pour"});
        fill_in({"carry, s", "fill, s", "casting, g", "scrap, g", "seen"});
        std::vector<std::string> sizes;
        for (const casting::PiecePattern& piece : r_.patterns)
            for (const casting::DimensionPlan& d : piece.dimensions) sizes.push_back(d.name + ", mm");
        if (!sizes.empty()) fill_in(sizes);
        s.add("then: pourbook trial, to have density, porosity and the contraction reached against this sheet");
    }

    void sources() {
        for (const std::string& key : source_keys(r_))
            if (const Reference* reference = catalogue_.reference(key))
                page_.sources.push_back("[" + key + "] " + reference->title +
                                        (reference->year.empty() ? "" : " " + reference->year));
    }

    static std::string keys_of(const std::vector<SourceValue>& sources) {
        std::string out;
        for (const SourceValue& s : sources)
            if (out.find(s.key) == std::string::npos) out += (out.empty() ? "[" : ", ") + s.key;
        return out.empty() ? out : out + "]";
    }

    const PourResult& r_;
    const Catalogue& catalogue_;
    bool workshop_;
    Page page_;
};

} // namespace

Page pour_page(const PourResult& result, const Catalogue& catalogue, UnitSystem units) {
    return PourSheet(result, catalogue, units).page();
}

std::string text_of(const PourResult& result, const Catalogue& catalogue, UnitSystem units) {
    return page_text(pour_page(result, catalogue, units));
}

} // namespace pourbook
