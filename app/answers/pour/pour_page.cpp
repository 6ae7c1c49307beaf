#include "answers/pour/pour_lines.hpp"
#include "answers/pour/pour_report.hpp"

#include "answers/parts/citation.hpp"
#include "answers/writers/page.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "questions/pour/defects.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double crucible_filled = 0.75; // more spills on the way

/// Writes the sections of the page in one system of units.
class PourSheet {
public:
    PourSheet(const PourResult& result, const Catalogue& catalogue, UnitSystem units)
        : r_(result),
          catalogue_(catalogue), u_{units, result.metal->family == "silver" || result.metal->family == "gold"} {}

    Page page() {
        head();
        cautions();
        limits();
        temperatures();
        charge();
        pattern();
        freezing();
        feeder();
        filling();
        heat_and_cost();
        checklist();
        blanks();
        notes();
        say_in_units();
        sources();
        return std::move(page_);
    }

private:
    using Part = PageSection::Part;
    PageSection& section(const std::string& title, const std::string& figure = "", Part part = Part::plan) {
        page_.sections.push_back({title, figure, {}, part, ""});
        return page_.sections.back();
    }
    void line(const std::string& text) { page_.sections.back().add(text); }
    void lines(const Lines& all) {
        for (const std::string& text : all) line(text);
    }
    std::string temperature(double kelvin) const { return u_.temperature(kelvin); }
    std::string mass(double kg) const { return u_.mass(kg); }
    std::string length(double metres) const { return u_.length(metres); }
    std::string volume(double m3) const { return u_.volume(m3); }
    std::string money(double usd) const { return shown_money(catalogue_, usd, 3, UnitSystem::shown); }

    /// What core and practice of the trade say in SI.
    void say_in_units() {
        for (std::string& line : page_.subtitle) line = in_units_of(u_.units, line);
        for (PageSection& s : page_.sections)
            for (PageBlock& block : s.blocks) block.text = in_units_of(u_.units, block.text);
    }

    void head() {
        const std::string& process = r_.request.process;
        page_.title = "Pour sheet: " + r_.metal->name + ", " + process +
                      (process == "permanent" ? " mould"
                       : process == "shell"   ? " mould (ceramic)"
                                              : "");
        for (const casting::Piece& piece : r_.request.pieces) page_.subtitle.push_back("part " + piece.words);
        page_.subtitle.push_back("drawn " + volume(r_.part_volume_m3) + ", " + mass(r_.part_mass_kg) + " at " +
                                 density_text(r_.density.value_si, u_.units, 4) + shown_mark(r_.density) +
                                 (r_.request.count > 1
                                      ? "; " + std::to_string(r_.request.count) + " castings, " +
                                            std::to_string(r_.heats) + " heat(s); figures below are for one"
                                      : ""));
        if (const std::string words = stated(); !words.empty()) page_.subtitle.push_back("stated: " + words);
        page_.foot = how_to_cite(catalogue_.data_version);
    }

    /// What was asked for beyond metal, part and process.
    std::string stated() const {
        const PourRequest& q = r_.request;
        std::string out;
        const auto say = [&out](const std::string& words) { out += (out.empty() ? "" : "; ") + words; };
        if (q.stock_m > 0) say("machining stock " + length(q.stock_m));
        if (q.clear_m) say("bore must clear " + length(*q.clear_m));
        if (q.superheat_K) say("superheat " + u_.difference(*q.superheat_K));
        if (q.mould_K) say("mould at " + temperature(*q.mould_K));
        if (q.shell_wall_m) say("shell wall " + length(*q.shell_wall_m));
        if (q.melt_loss) say("melt loss " + shown_percent(*q.melt_loss));
        if (q.yield) say("yield " + shown_percent(*q.yield));
        if (q.gating_kg) say("sprue and cup " + mass(*q.gating_kg));
        if (q.heel_kg > 0) say("heel " + mass(q.heel_kg));
        if (q.power_W) say("furnace " + trimmed(*q.power_W / 1000, 4) + " kW");
        if (q.efficiency) say("efficiency " + shown_percent(*q.efficiency));
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
        section("Pattern", pattern_figure(r_), Part::pattern).grounds = shown_grounds(c, u_.units);
        line("free contraction " + shown_percent(c.value_si) + " " +
             shown_plus_minus(normal_90 * c.standard_uncertainty_si) + shown_mark(c) + " from " +
             temperature(r_.contraction->solidus_K) + " to 20 degC");
        line(c.how);
        if (std::isnan(r_.allowance.low))
            line("tabulated allowances: " + r_.allowance.from);
        else
            line("tabulated allowances " + shown_between(r_.allowance.low, r_.allowance.high) + ", " +
                 r_.allowance.from + " " + shown_keys(r_.allowance.sources));
        for (const std::string& note : r_.allowance.notes) line(note);
        line("right pattern between " + shown_scale(1 + r_.span.low) + " and " + shown_scale(1 + r_.span.high) +
             " times the casting; what decides: " + r_.span.decides);
        if (r_.mould_growth.any())
            line("the mould itself grows " + shown_between(r_.mould_growth.low, r_.mould_growth.high) +
                 " on heating, which is taken off in that range");
        if (const std::string own = own_lengths_line(r_); !own.empty())
            line(own);
        else if (!(r_.allowance.low > r_.span.high))
            line(held_line(r_.request.process));
        for (const Practice* p : r_.draft) line("draft: " + p->text);
        dimensions();
    }

    void dimensions() {
        const std::string unit = " " + length_unit(u_.units).name;
        const auto drawn = [&](double metres) { return u_.drawn_size(metres); };
        const auto size = [&](double metres) { return u_.pattern_size(metres); };
        DataTable t{"Pattern", {titled("dimension")}, {}};
        for (const std::string& title :
             {"finished" + unit, "as cast" + unit, std::string("tolerance"), "PATTERN" + unit,
              std::string(u_.workshop() ? "nearest 1/64" : "PATTERN in"), "right within" + unit, "if held" + unit})
            t.columns.push_back(titled(title, true));
        for (const casting::PiecePattern& piece : r_.patterns)
            for (const casting::DimensionPlan& d : piece.dimensions)
                t.add_words({(r_.patterns.size() > 1 ? piece.words + " " : "") + d.name, drawn(d.finished_m),
                             drawn(d.cast_m),
                             std::isnan(d.tolerance_width_m) ? "not cited" : "+-" + drawn(d.tolerance_width_m / 2),
                             size(d.pattern_m),
                             u_.workshop() ? sixty_fourths(d.pattern_m) : significant(d.pattern_m / inch_m, 4),
                             size(d.low_m) + " to " + size(d.high_m), drawn(d.held_m)});
        page_.sections.back().blocks.push_back({PageBlock::Kind::table, "", {}, std::move(t)});
        if (!r_.tolerance.grade.empty()) line("tolerance: ISO 8062 " + r_.tolerance.grade + ", " + r_.tolerance.note);
    }

    void charge() {
        const casting::Charge& c = r_.charge;
        section("Charge", mass(c.charge_kg)).grounds = shown_grounds(r_.density, u_.units);
        lines(own_charge_lines(r_, u_));
        const auto part = [&](double kg) { return u_.mass_of(kg, c.poured_kg); };
        if (c.by_yield)
            line("casting " + mass(r_.cast_mass_kg) + " / yield " + shown_percent(c.yield));
        else
            line("casting " + part(r_.cast_mass_kg) + " + gating " + part(c.returns_kg - r_.feeder_kg) +
                 (r_.gating_by_plan ? " (cup, sprue, runner and gates as planned)" : "") +
                 (r_.feeder_kg > 0 ? " + feeder " + part(r_.feeder_kg) : "") + " = " + part(c.poured_kg) +
                 " poured; melt loss " + shown_percent(r_.melt_loss.value_si) + shown_mark(r_.melt_loss) + " adds " +
                 mass(c.lost_kg) + (r_.request.heel_kg > 0 ? ", heel " + mass(r_.request.heel_kg) : ""));
        lines(loss_lines(r_, u_));
        const std::string crucible = "melt fills " + volume(r_.melt_volume_m3) + " of the crucible: take one of " +
                                     u_.about_volume(r_.melt_volume_m3 / crucible_filled) + " or more";
        line(c.by_yield ? crucible
                        : "yield " + shown_percent(c.yield) + " (usual for one-off work " +
                              shown_range(r_.usual_yield, 100, 3) + " %), " + mass(c.returns_kg) +
                              " come back as scrap; " + crucible);
    }

    void freezing() {
        PageSection& s = section("Freezing", freezing_figure(r_));
        if (r_.freezing) s.grounds = shown_grounds(r_.freezing->time_s, u_.units);
        lines(freezing_lines(r_, u_));
    }

    void feeder() {
        section("Feeder", feeder_figure(r_, u_)).grounds = shown_grounds(r_.feeding.share, u_.units);
        lines(feeder_lines(r_, u_));
    }

    void filling() {
        section("Filling", filling_figure(r_));
        lines(filling_lines(r_, u_));
    }

    void temperatures() {
        section("Temperatures", "pour at " + temperature(r_.heat.pour.value_si)).grounds =
            shown_grounds(r_.heat.pour, u_.units);
        lines(temperature_lines(r_, u_));
    }

    void propane() {
        const casting::Firing& f = r_.firing;
        std::string text = "propane " + significant(f.propane_kg_low, 2) + " to " + significant(f.propane_kg_high, 2) +
                           " kg in a small furnace, first heat";
        if (!std::isnan(f.burner_s_low))
            text += ", " + shown_seconds(std::min(f.burner_s_low, f.burner_s_high)) + " to " +
                    shown_seconds(std::max(f.burner_s_low, f.burner_s_high));
        if (!std::isnan(f.again_kg_low))
            text += "; a next heat, the furnace hot, " + significant(f.again_kg_low, 2) + " to " +
                    significant(f.again_kg_high, 2) + " kg";
        line(text);
    }

    void heat_and_cost() {
        PageSection& cost = section("Heat and cost", r_.money.price ? money(r_.money.value) : "");
        if (r_.money.price) cost.grounds = shown_grounds(*r_.money.price, u_.units);
        if (r_.melt_heat) {
            const NamedUnit heat = u_.workshop() ? NamedUnit{"Btu/lb", 2326} : NamedUnit{"kJ/kg", 1000};
            line(significant(r_.melt_energy_J / 3.6e6, 2) + " kWh into the charge (" +
                 significant(r_.melt_heat->total_J_kg / heat.si, 3) + " " + heat.name + " +- " +
                 significant(r_.melt_heat->standard_uncertainty_J_kg / heat.si, 2) +
                 (r_.melt_heat->estimated ? ", partly estimated" : "") + "), furnace losses not counted");
            propane();
            if (!std::isnan(r_.firing.seconds_low))
                line("electric, " + trimmed(*r_.request.power_W / 1000, 3) +
                     " kW: " + significant(r_.firing.seconds_low / 60, 2) + " to " +
                     significant(r_.firing.seconds_high / 60, 2) + " min");
        }
        lines(consumable_lines(r_, u_, money(r_.consumables.cost_low_usd), money(r_.consumables.cost_high_usd)));
        if (r_.money.price)
            line("metal " + money(r_.money.value) +
                 (r_.money.by_lots ? ", by " + r_.money.price->how + " (bought " + r_.money.as_of + ")"
                                   : " (90 %: " + money(r_.money.low) + " to " + money(r_.money.high) + "), price of " +
                                         r_.money.as_of + shown_mark(*r_.money.price)) +
                 "; scrap that comes back is worth up to " + money(r_.money.returns_value) + " of it");
        else
            line("no cost: nothing is cited for the " + r_.money.price.problem().text);
        if (const std::string rate = shown_rate(catalogue_); !rate.empty()) line("money at " + rate);
    }

    void back(const std::string& heading, const std::vector<const Practice*>& entries) {
        if (entries.empty()) return;
        PageSection& s = section(heading, "", Part::notes);
        for (const Practice* p : entries) s.add(p->text + " [" + p->citation.source + "]", PageBlock::Kind::bullet);
    }

    void notes() {
        back("After the pour", r_.after);
        back("Gas", r_.gas);
        back("Deoxidation", r_.deoxidation);
        back("Shell", r_.shell_steps);
        back("Burn-out and crucible", r_.burnout);
        wrong();
    }

    /// The commonest defects in a line each; the whole key is a question of its own.
    void wrong() {
        PageSection& s = section("If it went wrong: what was seen", "", Part::notes);
        for (const Practice* p : r_.defects) {
            const Defect d = defect_from(*p);
            s.add(d.seen + ": " + d.name + ". " + d.change + ". [" + p->citation.source + "]", PageBlock::Kind::bullet);
        }
        s.add("more, by your own words: pourbook defect WORDS --metal " + r_.metal->slug + " --part ...",
              PageBlock::Kind::bullet);
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
        const std::string weight = !u_.workshop() ? "g" : u_.precious ? "ozt" : "oz";
        fill_in({"carry, s", "fill, s", "casting, " + weight, "scrap, " + weight, "seen"});
        std::vector<std::string> sizes;
        for (const casting::PiecePattern& piece : r_.patterns)
            for (const casting::DimensionPlan& d : piece.dimensions)
                sizes.push_back(d.name + ", " + length_unit(u_.units).name);
        if (!sizes.empty()) fill_in(sizes);
        s.add("then: pourbook trial, to have density, porosity and the contraction reached against this sheet");
    }

    void sources() {
        for (const std::string& key : source_keys(r_))
            if (const Reference* reference = catalogue_.reference(key))
                page_.sources.push_back("[" + key + "] " + reference->title +
                                        (reference->year.empty() ? "" : " " + reference->year));
    }

    const PourResult& r_;
    const Catalogue& catalogue_;
    SheetUnits u_;
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
