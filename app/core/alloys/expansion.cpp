#include "core/alloys/expansion.hpp"

#include "core/alloys/dissolved.hpp"
#include "core/alloys/error_table.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

/// Coefficients weighted by volume.
class Mean {
public:
    explicit Mean(const AlloySetting& setting) : setting_(setting) {}

    /// So much of an element, expanding as another does. Errors: no figure for more than traces.
    std::optional<Problem> add(const std::string& element, double wt, const std::string& as) {
        const Result<double> density = pure_value(setting_.catalogue, element, "density", e_);
        const Result<double> own = pure_value(setting_.catalogue, as, "linear_expansion_at", e_);
        if (!density || !own) {
            if (wt >= traces_wt)
                return Problem{Problem::Kind::no_value, "no rule: no expansion of pure " + element + " is cited", 0};
            e_.trail.push_back(element + ": no expansion of the pure element is cited; left out");
            return std::nullopt;
        }
        volume_ += wt / *density;
        sum_ += wt / *density * *own;
        e_.trail.push_back(element + " " + trimmed(wt, 3) + " % as " + as + ": " + significant(*own * 1e6, 3) +
                           "e-6/K");
        return std::nullopt;
    }

    Estimate finished() {
        e_.value_si = sum_ / volume_;
        e_.rule = "the host's coefficient for what is dissolved, the elements' own by volume for the rest";
        e_.range = "near 20 degC, iron not the host";
        set_error(e_, ErrorClass::expansion);
        return std::move(e_);
    }

private:
    const AlloySetting& setting_;
    Estimate e_;
    double volume_ = 0, sum_ = 0;
};

} // namespace

Result<Estimate> estimate_expansion(const AlloySetting& setting) {
    const std::string& host = setting.composition.host();
    if (host == "Fe")
        return Problem{Problem::Kind::no_value,
                       "no rule: the expansion of iron's alloys goes by magnetism and structure, not by content", 0};
    Mean mean(setting);
    const Result<SolidState> state = solid_state(setting);
    if (!state) { // nothing is known of what dissolves: every element by itself
        for (const Share& s : setting.composition.shares())
            if (const auto fault = mean.add(s.element, s.wt_percent, s.element)) return *fault;
        return mean.finished();
    }
    if (const auto fault = mean.add(host, state->host_wt, host)) return *fault;
    for (const SoluteState& s : state->solutes) {
        if (s.dissolved_wt > 0)
            if (const auto fault = mean.add(s.element, s.dissolved_wt, host)) return *fault;
        if (s.out_wt > 0)
            if (const auto fault = mean.add(s.element, s.out_wt, s.element)) return *fault;
    }
    return mean.finished();
}

} // namespace pourbook
