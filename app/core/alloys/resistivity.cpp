#include "core/alloys/resistivity.hpp"

#include "core/alloys/error_table.hpp"
#include "core/alloys/solute_table.hpp"
#include "core/alloys/two_phase.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double most_compound_wt = 50, most_left_out_wt = 3, most_without_table = 0.45;

std::string microohm_cm(double si) {
    return significant(si * 1e8, 3) + " uohm.cm";
}

/// One estimate in the making.
class Sum {
public:
    Sum(const AlloySetting& setting, SolidState state) : setting_(setting) { out_.state = std::move(state); }

    Result<ResistivityEstimate> run() {
        const Result<double> host = pure_value(setting_.catalogue, out_.state.host, "resistivity", e());
        if (!host) return host.problem();
        out_.host_si = *host;
        if (out_.state.solutes.empty()) return pure_metal();
        e().trail.push_back("pure " + out_.state.host + ": " + microohm_cm(*host));
        moles();
        out_.matrix_si = *host;
        for (const SoluteState& s : out_.state.solutes)
            if (const auto fault = dissolve(s)) return *fault;
        if (const auto fault = enough()) return *fault;
        double rho = out_.matrix_si;
        for (const SoluteState& s : out_.state.solutes) rho += precipitate(s);
        if (const auto fault = mix(rho)) return *fault;
        finish();
        return std::move(out_);
    }

private:
    Estimate& e() { return out_.estimate; }

    Result<ResistivityEstimate> pure_metal() {
        const Metal* metal = setting_.catalogue.element(out_.state.host);
        const Result<Evaluated> cited = evaluate(setting_.catalogue, *metal, "resistivity", {});
        out_.matrix_si = out_.host_si;
        e().value_si = out_.host_si;
        e().standard_uncertainty_si = cited->standard_uncertainty_si;
        e().low90_si = out_.host_si - 1.645 * cited->standard_uncertainty_si;
        e().high90_si = out_.host_si + 1.645 * cited->standard_uncertainty_si;
        e().rule = "cited value of the pure metal";
        e().range = "the pure metal, annealed";
        return std::move(out_);
    }

    double mass(const std::string& element) const { return setting_.data().mass(element)->g_per_mol; }

    void moles() {
        moles_ = out_.state.host_wt / mass(out_.state.host);
        for (const SoluteState& s : out_.state.solutes) moles_ += s.dissolved_wt / mass(s.element);
        for (const SoluteState& s : out_.state.solutes) solutes_wt_ += s.dissolved_wt + s.out_wt;
    }

    double atoms(const SoluteState& s) const { return s.dissolved_wt / mass(s.element) / moles_; }

    std::optional<Problem> dissolve(const SoluteState& s) {
        const double x = atoms(s);
        if (x <= 0) {
            ruled_wt_ += s.out_wt;
            return std::nullopt;
        }
        const std::string& host = out_.state.host;
        double added = 0;
        if (const auto from_table = table_increment(setting_, host, s.element, x, out_.host_si)) {
            added = from_table->increment_si;
            cite(e(), *from_table->citation);
            table_ = table_ || added > out_.host_si / 2;
        } else if (const SoluteEffect* k = setting_.data().effect(host, s.element, true)) {
            const double percent = k->per_atom ? 100 * x : dissolved_wt_in_matrix(s);
            added = k->ohm_m_per_percent * percent * (1 - x);
            cite(e(), k->citation);
            without_table_ += x;
        } else {
            left_out_wt_ += s.dissolved_wt;
            ruled_wt_ += s.out_wt;
            e().trail.push_back(s.element + " dissolved in " + host + ": no coefficient is stored; left out");
            return std::nullopt;
        }
        ruled_wt_ += s.dissolved_wt + s.out_wt;
        out_.matrix_si += added;
        e().trail.push_back(s.element + " " + trimmed(100 * x, 3) + " at% dissolved: " + microohm_cm(added));
        return std::nullopt;
    }

    double dissolved_wt_in_matrix(const SoluteState& s) const {
        double matrix = out_.state.host_wt;
        for (const SoluteState& t : out_.state.solutes) matrix += t.dissolved_wt;
        return 100 * s.dissolved_wt / matrix;
    }

    std::optional<Problem> enough() const {
        if (without_table_ > most_without_table)
            return no_rule("more than 45 at% dissolved in " + out_.state.host + " without a published table");
        if (left_out_wt_ > most_left_out_wt || (solutes_wt_ > 0.01 && ruled_wt_ < solutes_wt_ / 2))
            return no_rule("no coefficients are stored for most of what is dissolved in " + out_.state.host);
        for (const SoluteState& s : out_.state.solutes)
            if (s.out_wt > 0 && s.second_phase != "(" + s.element + ")" && s.second_wt > most_compound_wt)
                return no_rule("more than half of the metal is the compound " + s.second_phase);
        return std::nullopt;
    }

    double precipitate(const SoluteState& s) {
        if (s.out_wt <= 0) return 0;
        const SoluteEffect* k = setting_.data().effect(out_.state.host, s.element, false);
        if (!k) return 0;
        cite(e(), k->citation);
        const double added = k->ohm_m_per_percent * s.out_wt;
        e().trail.push_back(s.element + " " + trimmed(s.out_wt, 3) + " % out of solution: " + microohm_cm(added));
        return added;
    }

    /// A second metal beside the matrix; what has an increment of its own is in the matrix already.
    std::optional<Problem> mix(double matrix_si) {
        std::vector<PhasePart> parts;
        double rest_wt = 100, second_volume = 0;
        for (const SoluteState& s : out_.state.solutes) {
            if (s.out_wt <= 0 || setting_.data().effect(out_.state.host, s.element, false)) continue;
            if (s.second_phase != "(" + s.element + ")") {
                e().trail.push_back(s.second_phase + " is taken as resistive as the matrix");
                continue;
            }
            const Result<double> rho = second_metal(s),
                                 density = pure_value(setting_.catalogue, s.element, "density", e());
            if (!rho) return rho.problem();
            if (!density) return density.problem();
            parts.push_back({s.second_wt / *density, 1 / *rho});
            second_volume += s.second_wt / *density;
            rest_wt -= s.second_wt;
        }
        const Result<double> density = pure_value(setting_.catalogue, out_.state.host, "density", e());
        if (!density) return density.problem();
        const double matrix_volume = rest_wt / *density;
        parts.push_back({matrix_volume, 1 / matrix_si});
        for (PhasePart& p : parts) p.volume_share /= matrix_volume + second_volume;
        out_.second_share = second_volume / (matrix_volume + second_volume);
        e().value_si = 1 / maxwell_conductivity(parts);
        if (parts.size() > 1) {
            out_.parallel_si = 1 / parallel_conductivity(parts);
            out_.series_si = 1 / series_conductivity(parts);
            e().trail.push_back("second metal " + trimmed(100 * out_.second_share, 3) + " % by volume: between " +
                                microohm_cm(out_.parallel_si) + " (parallel) and " + microohm_cm(out_.series_si) +
                                " (series)");
        }
        return std::nullopt;
    }

    /// Resistivity of the other metal with the host dissolved in it.
    Result<double> second_metal(const SoluteState& s) {
        const Result<double> own = pure_value(setting_.catalogue, s.element, "resistivity", e());
        if (!own) return own;
        const SoluteEffect* k = setting_.data().effect(s.element, out_.state.host, true);
        if (!k || !k->per_atom) return own;
        const double host = (100 - s.second_wt_solute) / mass(out_.state.host);
        const double x = host / (host + s.second_wt_solute / mass(s.element));
        cite(e(), k->citation);
        return *own + k->ohm_m_per_percent * 100 * x * (1 - x);
    }

    void finish() {
        for (const Citation& c : out_.state.sources) cite(e(), c);
        const bool rich = out_.matrix_si > 2 * out_.host_si;
        ErrorClass error = ErrorClass::resistivity_dilute;
        if (out_.second_share > second_phase_matters) {
            error = ErrorClass::resistivity_two_phase;
            e().rule = "two metals: dissolved content by coefficients, mixture by Maxwell";
            e().range = "between the parallel and the series arrangement";
        } else if (table_ || rich) {
            error = table_ ? ErrorClass::resistivity_table : ErrorClass::resistivity_nordheim;
            e().rule = table_ ? "published table of the solid solution" : "coefficients with Nordheim's x(1 - x)";
            e().range = "disordered solid solutions, up to 45 at% without a table";
        } else {
            e().rule = "Matthiessen: pure metal plus published increments of what is dissolved";
            e().range = "dilute solid solutions, less than a doubling of the resistivity";
        }
        set_error(e(), error);
    }

    const AlloySetting& setting_;
    ResistivityEstimate out_;
    double moles_ = 0, without_table_ = 0, left_out_wt_ = 0, ruled_wt_ = 0, solutes_wt_ = 0;
    bool table_ = false;
};

} // namespace

Result<ResistivityEstimate> estimate_resistivity(const AlloySetting& setting) {
    Result<SolidState> state = solid_state(setting);
    if (!state) return state.problem();
    return Sum(setting, std::move(*state)).run();
}

Result<Estimate> increment_per_wt(const Catalogue& catalogue, const std::string& host, const std::string& solute) {
    const SoluteEffect* k = catalogue.alloys.effect(host, solute, true);
    const AtomicMass *h = catalogue.alloys.mass(host), *s = catalogue.alloys.mass(solute);
    if (!k || !h || !s) return no_rule("no coefficient is stored for " + solute + " in " + host);
    Estimate e;
    e.value_si = k->ohm_m_per_percent * (k->per_atom ? h->g_per_mol / s->g_per_mol : 1);
    e.rule = "published increment of a dissolved impurity";
    e.range = "small contents, dissolved";
    cite(e, k->citation);
    set_error(e, ErrorClass::resistivity_dilute);
    return e;
}

} // namespace pourbook
