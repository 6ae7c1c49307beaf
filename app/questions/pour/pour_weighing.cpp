#include "questions/pour/pour_weighing.hpp"

#include "core/quantity/format.hpp"
#include "questions/pour/pour_gating.hpp"

#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

constexpr double clearly_less = 0.95; // of the usual yield

class PourWeighing {
public:
    PourWeighing(const casting::Material& material, const PourRequest& request, PourResult& plan)
        : material_(material), in_(request), out_(plan) {}

    std::optional<Problem> run() {
        const casting::MeltLoss loss = casting::melt_loss(material_, out_.cast_mass_kg);
        out_.melt_loss = loss.share;
        if (in_.melt_loss) {
            out_.melt_loss = {};
            out_.melt_loss.value_si = *in_.melt_loss;
            out_.melt_loss.how = "as stated";
        }
        out_.gating = casting::traced(casting::range_of(practice("gating_share")), "printed range");
        out_.usual_yield = casting::range_of(practice("yield"));
        const auto charge = charge_with(out_.feeder_kg);
        if (!charge) return charge.problem();
        out_.charge = *charge;
        if (const auto fault = weigh_gating()) return fault;
        if (const auto fault = weigh_by_own_yield()) return fault;
        out_.melt_volume_m3 = out_.charge.charge_kg / out_.melt_density.value_si;
        out_.element_losses = casting::melt_loss(material_, out_.charge.charge_kg - in_.heel_kg).elements;
        weigh_shelf();
        if (out_.charge.short_of_feed && in_.yield)
            remark("The yield stated leaves less metal than gating and feeder need.");
        low_yield();
        return std::nullopt;
    }

private:
    void remark(const std::string& text) { out_.remarks.push_back(text); }

    std::vector<const Practice*> practice(const std::string& quantity) const {
        return casting::practices(material_.catalogue, material_.metal, quantity, in_.process);
    }

    /// The printed share of gating, or the metal that sprue, runner and gates of this plan hold, whichever is more.
    std::optional<Problem> weigh_gating() {
        out_.fill.gating = gating_of(material_, out_);
        if (in_.gating_kg || in_.yield) return std::nullopt;
        const double share_kg = out_.gating.value_si * out_.cast_mass_kg;
        const double planned_kg = out_.fill.gating.metal_m3 * out_.density.value_si;
        if (!(planned_kg > share_kg)) return std::nullopt;
        gating_kg_ = planned_kg;
        out_.gating_by_plan = true;
        const auto charge = charge_with(out_.feeder_kg);
        if (!charge) return charge.problem();
        out_.charge = *charge;
        return std::nullopt;
    }

    /// Castings of one's own in this mould that took more metal than this plan: theirs, for short metal spoils a pour.
    std::optional<Problem> weigh_by_own_yield() {
        const std::vector<double>& yields = in_.own.yields;
        if (!in_.own_trials || yields.empty() || in_.yield || in_.gating_kg) return std::nullopt;
        OwnYield own;
        own.castings = yields.size();
        own.mean = std::accumulate(yields.begin(), yields.end(), 0.0) / static_cast<double>(yields.size());
        own.planned_kg = out_.charge.charge_kg;
        own.taken = own.mean < out_.charge.yield;
        out_.own_yield = own;
        if (!own.taken) return std::nullopt;
        own_yield_ = own.mean;
        const auto charge = charge_with(out_.feeder_kg);
        if (!charge) return charge.problem();
        out_.charge = *charge;
        return std::nullopt;
    }

    void weigh_shelf() {
        if (!in_.own_stock || !in_.own.keeps_stock) return;
        Shelf shelf;
        shelf.need_kg = out_.charge.charge_kg * static_cast<double>(in_.count);
        for (const OwnPour::Lot& lot : in_.own.lots) {
            shelf.kg += lot.kg;
            shelf.lots.push_back(lot.name);
        }
        out_.shelf = std::move(shelf);
    }

    Result<casting::Charge> charge_with(double feeder_kg) const {
        casting::ChargeInputs inputs;
        inputs.casting_kg = out_.cast_mass_kg;
        inputs.gating_kg =
            in_.gating_kg.value_or(std::isnan(gating_kg_) ? out_.gating.value_si * out_.cast_mass_kg : gating_kg_);
        inputs.feeder_kg = feeder_kg;
        inputs.melt_loss = out_.melt_loss.value_si;
        inputs.heel_kg = in_.heel_kg;
        inputs.yield = in_.yield ? in_.yield : own_yield_;
        return casting::charge_for(inputs);
    }

    std::string shown_yield() const {
        const std::string low = trimmed(100 * out_.usual_yield.low_si, 2),
                          high = trimmed(100 * out_.usual_yield.high_si, 2);
        return low == high ? low : low + " to " + high;
    }

    void low_yield() {
        if (out_.usual_yield.empty() || out_.charge.yield >= clearly_less * out_.usual_yield.low_si || in_.yield)
            return;
        std::string text =
            "Yield " + significant(100 * out_.charge.yield, 3) + " % is below the usual " + shown_yield() + " %";
        const auto& sleeved = out_.feeding.sleeved;
        if (sleeved && out_.feeder_kg > 0) {
            const double kg =
                static_cast<double>(out_.feeding.feeders) * sleeved->chosen().volume_m3() * out_.density.value_si;
            if (const auto charge = charge_with(kg); charge) {
                out_.sleeved_yield = charge->yield;
                text += ": a feeder in an insulating sleeve, " + trimmed(sleeved->chosen().diameter_m * 1000, 3) +
                        " mm" + " wide, would make it " + significant(100 * charge->yield, 2) + " %";
            }
        }
        remark(text + ".");
    }

    const casting::Material& material_;
    const PourRequest& in_;
    PourResult& out_;
    double gating_kg_ = no_number;
    std::optional<double> own_yield_;
};

} // namespace

std::optional<Problem> weigh_pour(const casting::Material& material, const PourRequest& request, PourResult& plan) {
    return PourWeighing(material, request, plan).run();
}

} // namespace pourbook
