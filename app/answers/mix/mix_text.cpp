#include "answers/mix/mix_report.hpp"

#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

class MixPage {
public:
    MixPage(const MixResult& r, const Catalogue& c, UnitSystem u) : r_(r), catalogue_(c), units_(u) {}

    std::string run() {
        head();
        properties();
        phases();
        worth();
        addition();
        impurities("With a dissolved impurity", r_.impurities);
        impurities("Any one of these dissolved would explain the measured conductivity", r_.equivalents);
        steps();
        sources();
        return out_.str();
    }

private:
    void line(const std::string& text) { out_ << wrapped(text, page_width, "      "); }

    std::string kg(double mass) const { return trimmed(mass, 6) + " kg"; }

    void head() {
        out_ << "ESTIMATE from composition, " << name_of(r_.treatment) << "\n";
        if (r_.blend) {
            for (const Stock& s : r_.stocks) out_ << "  " << kg(s.mass_kg) << " " << s.name << "\n";
            out_ << "  in all " << kg(r_.blend->mass_kg());
            if (r_.mass_kg < r_.blend->mass_kg()) out_ << ", " << kg(r_.mass_kg) << " after melt loss";
            out_ << "\n";
        }
        Table t{{{"element"}, {"wt%", true}, {"at%", true}}, {}};
        if (r_.blend) t.columns.push_back({"mass, kg", true});
        for (const Share& s : r_.composition.shares()) {
            t.rows.push_back({s.element, trimmed(s.wt_percent, 4), trimmed(s.at_percent, 4)});
            if (!r_.blend) continue;
            for (const ElementMass& e : r_.blend->elements)
                if (e.element == s.element) t.rows.back().push_back(trimmed(e.kg(), 6));
        }
        out_ << as_text(t);
        if (!r_.precious.empty())
            out_ << r_.precious << " fineness " << trimmed(r_.composition.fineness(r_.precious), 4) << " per mille\n";
        if (r_.composition.wt("Au") > 0) out_ << trimmed(r_.composition.karat(), 4) << " karat\n";
        out_ << "\n";
    }

    void row(Table& t, const char* id, const Result<Estimate>& e) const {
        const Property& p = *catalogue_.property(id);
        if (!e) {
            t.rows.push_back({p.label, "no value", "", "", "", e.problem().text});
            return;
        }
        const auto shown = [&](double si) { return significant(shown_number(p, si, units_), 3); };
        const double low = shown_number(p, e->low90_si, units_), high = shown_number(p, e->high90_si, units_);
        t.rows.push_back({p.label, significant(shown_number(p, e->value_si, units_), 4),
                          shown(low <= high ? e->low90_si : e->high90_si),
                          shown(low <= high ? e->high90_si : e->low90_si), shown_unit(p, units_), e->rule});
    }

    template <class Part> Result<Estimate> part(const Result<MeltingEstimate>& m, Part which) const {
        if (!m) return m.problem();
        return (*m).*which;
    }

    void properties() {
        Table t{{{"property"}, {"value", true}, {"90 % low", true}, {"90 % high", true}, {"unit"}, {"rule"}}, {}};
        const Result<Estimate> rho =
            r_.resistivity ? Result<Estimate>(r_.resistivity->estimate) : Result<Estimate>(r_.resistivity.problem());
        row(t, "resistivity", rho);
        row(t, "temperature_coefficient", r_.temperature_coefficient);
        row(t, "thermal_conductivity", r_.thermal_conductivity);
        row(t, "density", r_.density);
        row(t, "linear_expansion_at", r_.linear_expansion);
        row(t, "solidus", part(r_.melting, &MeltingEstimate::solidus));
        row(t, "liquidus", part(r_.melting, &MeltingEstimate::liquidus));
        out_ << as_text(t);
        if (r_.resistivity && r_.resistivity->second_share > second_phase_matters) {
            const Property& p = *catalogue_.property("resistivity");
            out_ << "  two phases: between " << significant(shown_number(p, r_.resistivity->parallel_si, units_), 3)
                 << " (parallel) and " << significant(shown_number(p, r_.resistivity->series_si, units_), 3)
                 << " (series) " << shown_unit(p, units_) << "\n";
        }
        if (const std::string words = freezing_sentence(r_, catalogue_, units_); !words.empty()) line("  " + words);
    }

    std::string temperature(double kelvin) const {
        const Property& p = *catalogue_.property("liquidus");
        return significant(shown_number(p, kelvin, units_), 4) + " " + shown_unit(p, units_);
    }

    void phases() {
        if (!r_.phases) return;
        out_ << "\nPhases at " << temperature(r_.phases_at_K) << "\n";
        if (!*r_.phases) {
            line("  no value: " + r_.phases->problem().text);
            return;
        }
        const std::string& b = r_.melting->diagram->b;
        for (const PhaseShare& p : **r_.phases)
            out_ << "  " << significant(100 * p.share, 3) << " % " << p.phase << " with " << significant(p.wt, 3)
                 << " wt% " << b << "\n";
    }

    void worth() {
        out_ << "\n";
        if (!r_.metal_value) {
            line("Metal value: no value: " + r_.metal_value.problem().text);
            return;
        }
        const auto money = [&](double usd) { return shown_money(catalogue_, usd, 4, units_); };
        line("Metal value " + money(r_.metal_value->value_si) + "/kg, prices as old as " + r_.value_as_of +
             (r_.blend ? ": " + money(r_.metal_value->value_si * r_.mass_kg) + " for the melt" : "") +
             " (without premium, making or refining)");
        if (const std::string rate = rate_sentence(catalogue_); !rate.empty() && units_ != UnitSystem::base) line(rate);
    }

    void addition() {
        if (const std::string words = addition_sentence(r_); !words.empty()) line("\n" + words);
    }

    void impurities(const std::string& title, const std::vector<ImpurityEffect>& list) {
        if (list.empty()) return;
        const Property& p = *catalogue_.property("resistivity");
        out_ << "\n" << title << "\n";
        Table t{{{"element"},
                 {"wt%", true},
                 {"from", true},
                 {"to", true},
                 {"resistivity, " + shown_unit(p, units_), true},
                 {"% IACS", true},
                 {""}},
                {}};
        for (const ImpurityEffect& i : list) {
            const auto number = [](double x) { return std::isnan(x) ? std::string() : significant(x, 2); };
            const bool too_much = i.content_wt > i.most_wt;
            t.rows.push_back({i.element, number(i.content_wt), number(i.low90_wt), number(i.high90_wt),
                              significant(shown_number(p, i.resistivity_si, units_), 4),
                              significant(100 * 1.7241e-8 / i.resistivity_si, 3),
                              too_much ? "more than can dissolve (" + number(i.most_wt) + " %)" : ""});
        }
        out_ << as_text(t);
    }

    void trail(const char* what, const Estimate& e) {
        out_ << what << ": " << e.rule << "\n";
        for (const std::string& step : e.trail) line("  " + step);
        if (!e.range.empty()) line("  holds for: " + e.range);
        if (!e.error.empty()) line("  error: " + e.error);
        for (const Citation& c : e.sources)
            line("  [" + c.source + ", " + c.locator + ", " + name_of(c.how_known) + "]");
    }

    void steps() {
        out_ << "\nHow each was estimated\n";
        if (r_.resistivity) {
            for (const std::string& step : r_.resistivity->state.trail) line("  " + step);
            trail("Resistivity", r_.resistivity->estimate);
        }
        if (r_.density) trail("Density", *r_.density);
        if (r_.melting) trail("Melting range", r_.melting->liquidus);
    }

    void sources() {
        out_ << "\nSources\n";
        for (const std::string& key : r_.sources)
            if (const Reference* s = catalogue_.reference(key)) line("  [" + s->key + "] " + s->full());
        out_ << "\nAn estimate, not a measurement. Data version " << catalogue_.data_version << "\n";
    }

    const MixResult& r_;
    const Catalogue& catalogue_;
    UnitSystem units_;
    std::ostringstream out_;
};

} // namespace

std::string text_of(const MixResult& r, const Catalogue& catalogue, UnitSystem units) {
    return MixPage(r, catalogue, units).run();
}

} // namespace pourbook
