#include "answers/workshop/trial_report.hpp"

#include "answers/parts/table.hpp"
#include "answers/workshop/entry_json.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

Json json_of_inferred(const InferResult& r) {
    Json metals = Json::array();
    for (const ConsistentMetal& m : r.consistent) {
        metals.push_back({{"metal", m.metal->slug}, {"p", json_number(m.p)}});
        if (m.porosity) metals.back()["porosity"] = json_number(*m.porosity);
    }
    return {{"conductivity_S_m", json_number(r.conductivity.value_S_m)},
            {"standard_uncertainty_S_m", json_number(r.conductivity.standard_uncertainty_S_m)},
            {"iacs_percent", json_number(r.iacs_percent)},
            {"iacs_low90_percent", json_number(r.iacs_low90)},
            {"iacs_high90_percent", json_number(r.iacs_high90)},
            {"consistent_metals", metals}};
}

Json json_of_weighed(const Weighed& w) {
    Json out = {{"mass_kg", json_number(w.mass_kg)},
                {"volume_m3", json_number(w.volume_m3)},
                {"density_kg_m3", json_number(w.density_kg_m3)},
                {"density_standard_uncertainty", json_number(w.density_uncertainty)},
                {"density_by", w.in_water ? "weighing in water" : "size"}};
    if (w.in_water && std::isfinite(w.by_size_kg_m3)) out["density_by_size_kg_m3"] = json_number(w.by_size_kg_m3);
    if (w.yield) out["yield"] = json_number(*w.yield);
    if (w.expected_density) out["expected_density_kg_m3"] = json_number(w.expected_density->value_si);
    if (w.porosity) out["porosity"] = json_number(*w.porosity);
    if (w.porosity) out["porosity_standard_uncertainty"] = json_number(w.porosity_uncertainty);
    if (w.predicted_contraction) out["predicted_contraction_percent"] = json_number(100 * *w.predicted_contraction);
    for (const AchievedContraction& c : w.contraction)
        out["achieved_contraction_percent"][c.size] = json_number(100 * c.achieved);
    return out;
}

Json json_of_result(const Result<TrialResult>& result) {
    if (!result) return {{"problem", result.problem().text}};
    Json out = Json::object();
    if (result->inferred) out.update(json_of_inferred(*result->inferred));
    if (std::isfinite(result->measured_time_s)) out["measured_time_s"] = json_number(result->measured_time_s);
    if (result->predicted) {
        out["predicted_time_s"] = json_number(result->predicted->fall.time_s);
        out["predicted_time_low90_s"] = json_number(result->predicted->fall_time_low90_s);
        out["predicted_time_high90_s"] = json_number(result->predicted->fall_time_high90_s);
    }
    if (result->weighed) out.update(json_of_weighed(*result->weighed));
    out["remarks"] = result->remarks;
    return out;
}

constexpr std::size_t most_named = 4; // in a line

/// "copper (porosity 1.2 %), silver".
std::string metals_text(const std::vector<ConsistentMetal>& list) {
    std::string out;
    for (std::size_t i = 0; i < list.size() && i < most_named; ++i) {
        out += (i ? ", " : "") + list[i].metal->slug;
        if (list[i].porosity) out += " (porosity " + trimmed(100 * *list[i].porosity, 2) + " %)";
    }
    return out;
}

/// "or copper with one dissolved impurity: P 0.011 %, Fe 0.018 %": the smallest contents.
std::string impurities_text(const std::string& base, const std::vector<ImpurityEffect>& list) {
    std::string out;
    for (std::size_t i = 0; i < list.size() && i < most_named; ++i)
        out += (i ? ", " : "") + list[i].element + " " + significant(list[i].content_wt, 2) + " %";
    return "or " + (base == "Cu" ? "copper" : base) + " with one dissolved impurity: " + out;
}

std::string inferred_text(const InferResult& r) {
    std::string out =
        rounded_to(r.conductivity.value_S_m / 1e6, normal_90 * r.conductivity.standard_uncertainty_S_m / 1e6) + " +- " +
        significant(normal_90 * r.conductivity.standard_uncertainty_S_m / 1e6, 2) + " MS/m, " +
        trimmed(r.iacs_percent, 3) + " %IACS (" + trimmed(r.iacs_low90, 3) + " to " + trimmed(r.iacs_high90, 3) + ")";
    if (!r.consistent.empty()) return out + "; like " + metals_text(r.consistent);
    return out + "; no metal here has it" + (r.nearest.empty() ? "" : ", nearest " + metals_text(r.nearest));
}

std::string predicted_text(const TrialResult& r) {
    std::string out = "measured " + trimmed(r.measured_time_s, 4) + " s";
    if (!r.predicted) return out;
    const DropResult& p = *r.predicted;
    const bool inside = r.measured_time_s >= p.fall_time_low90_s && r.measured_time_s <= p.fall_time_high90_s;
    return out + ", predicted for " + r.trial.metal + " " + trimmed(p.fall.time_s, 4) + " s (" +
           trimmed(p.fall_time_low90_s, 3) + " to " + trimmed(p.fall_time_high90_s, 3) + ")" +
           (inside ? "" : ": outside the 90 % interval");
}

std::string weighed_text(const Weighed& w) {
    const auto density = [](double kg_m3, double uncertainty) {
        return rounded_to(kg_m3 / 1000, normal_90 * uncertainty / 1000) + " g/cm3";
    };
    std::string out = "density " + density(w.density_kg_m3, w.density_uncertainty) +
                      (w.in_water ? " by weighing in water" : " by its size");
    if (w.in_water && std::isfinite(w.by_size_kg_m3))
        out += " (by its size " + density(w.by_size_kg_m3, w.by_size_uncertainty) + ")";
    if (w.porosity)
        out += ", sound metal " + density(w.expected_density->value_si, w.expected_density->standard_uncertainty_si) +
               ": porosity " + rounded_to(100 * *w.porosity, 100 * normal_90 * w.porosity_uncertainty) + " +- " +
               significant(100 * normal_90 * w.porosity_uncertainty, 2) + " %";
    for (std::size_t i = 0; i < w.contraction.size(); ++i)
        out += (i ? ", " : "; contraction ") + w.contraction[i].size + " " +
               trimmed(100 * w.contraction[i].achieved, 3) + " %";
    if (w.predicted_contraction && !w.contraction.empty())
        out += " (free: " + trimmed(100 * *w.predicted_contraction, 3) + " %)";
    if (w.yield) out += "; yield " + trimmed(100 * *w.yield, 3) + " %";
    return out;
}

} // namespace

std::string json_of_trials(const std::vector<ShownTrial>& trials) {
    Json out = Json::array();
    for (const ShownTrial& t : trials) {
        out.push_back(json_of_entry(known_kind("trial"), t.entry));
        out.back()["shows"] = json_of_result(t.result);
    }
    return json_text(out);
}

std::vector<std::string> lines_of(const ShownTrial& trial) {
    const Result<TrialResult>& result = trial.result;
    if (!result) return {result.problem().text};
    std::vector<std::string> lines;
    if (result->inferred) {
        lines.push_back(inferred_text(*result->inferred));
        const std::vector<ImpurityEffect>& impurities = result->inferred->impurities;
        if (!impurities.empty()) lines.push_back(impurities_text(result->inferred->impurity_base, impurities));
    }
    if (std::isfinite(result->measured_time_s)) lines.push_back(predicted_text(*result));
    if (result->weighed) lines.push_back(weighed_text(*result->weighed));
    lines.insert(lines.end(), result->remarks.begin(), result->remarks.end());
    return lines;
}

std::string text_of_trials(const std::vector<ShownTrial>& trials) {
    if (trials.empty()) return "No trial yet: `pourbook trial add drop --magnet ... --tube ... --times 4.2s,4.3s`.\n";
    const Kind& kind = known_kind("trial");
    std::string out;
    for (const ShownTrial& t : trials) {
        std::string line = text_of(kind, t.entry, "name");
        for (const char* field : {"type",  "date",  "metal",   "condition",  "magnet", "grade",       "br",
                                  "tube",  "times", "frames",  "resistance", "span",   "mass",        "mass_in_water",
                                  "water", "part",  "pattern", "process",    "charge", "temperature", "note"})
            if (const std::string& text = text_of(kind, t.entry, field); !text.empty()) line += "  " + text;
        out += wrapped(line, 118, "    ");
        for (const std::string& shown : lines_of(t)) out += wrapped("    " + shown, 118, "      ");
    }
    return out;
}

} // namespace pourbook
