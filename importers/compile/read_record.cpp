#include "importers/compile/read_record.hpp"

#include "core/materials/names.hpp"
#include "importers/compile/figure.hpp"
#include "importers/compile/verbatim.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::array behaviours = {"ferromagnetic", "weakly magnetic", "non-magnetic"};

class RecordReader {
public:
    RecordReader(const std::string& file, const std::string& place, const JsonNode& node, const Catalogue& dictionary)
        : f_(file, place, node), dictionary_(dictionary) {}

    Record run() {
        property();
        circumstances();
        r_.citation = read_citation(f_, dictionary_);
        units();
        content();
        verbatim();
        uncertainty();
        use();
        f_.finish();
        return std::move(r_);
    }

private:
    void property() {
        r_.id = f_.text("id");
        r_.property = f_.text("property");
        property_ = dictionary_.property(r_.property);
        if (!property_) f_.fail("property", "unknown property '" + r_.property + "'");
        if (!property_->from.empty() || r_.property == "price" || r_.property == "metal_value")
            f_.fail("property", "'" + r_.property + "' is derived at run time and can't be recorded here");
    }

    template <std::size_t N> std::string word(const std::string& key, const std::array<const char*, N>& allowed) {
        const std::string text = f_.text_or(key, "");
        if (std::find(allowed.begin(), allowed.end(), text) == allowed.end())
            f_.fail(key, "'" + text + "' is not one of the words of db/README.md");
        return text;
    }

    void circumstances() {
        const auto phase = phase_named(f_.text_or("phase", "any"));
        if (!phase) f_.fail("phase", "solid or liquid is expected");
        r_.phase = *phase;
        r_.condition = f_.text_or("condition", "");
        if (!r_.condition.empty() && !is_among(r_.condition, condition_names))
            f_.fail("condition", "'" + r_.condition + "' is not one of the words of db/README.md");
        r_.temper = f_.text_or("temper", "");
        r_.process = f_.text_or("process", "");
        r_.purity = f_.text_or("purity", "");
        if (f_.has("rrr")) r_.purity += (r_.purity.empty() ? "RRR " : ", RRR ") + f_.text("rrr");
        r_.note = f_.text_or("note", "");
        if (f_.has("rule")) r_.note += (r_.note.empty() ? "rule: " : "; rule: ") + f_.text("rule");
    }

    void units() {
        if (property_->is_text || f_.has("none")) return;
        r_.unit = f_.text("unit");
        const Result<Unit> unit = parse_unit(r_.unit);
        if (!unit)
            f_.fail("unit",
                    unit.problem().text + " in '" + r_.unit + "', column " + std::to_string(unit.problem().column));
        if (!(unit->dimension == property_->dimension))
            f_.fail("unit", "'" + r_.unit + "' is no unit of " + r_.property + " (" + property_->si_unit + ")");
        unit_ = *unit;
        if (!f_.has("temperature_unit")) return;
        const std::string written = f_.text("temperature_unit");
        const Result<Unit> t = parse_unit(written);
        if (!t || !(t->dimension == base_dimension(Dimension::kelvin)))
            f_.fail("temperature_unit", "K, degC or degF is expected");
        temperature_ = *t;
        has_temperature_unit_ = true;
    }

    double temperature(const std::string& key, const std::string& text) {
        double number = 0;
        if (!whole_number(text, number)) f_.fail(key, "'" + text + "' is no temperature");
        if (!has_temperature_unit_) f_.fail(key, "needs a temperature_unit");
        const double kelvin = temperature_.to_si(number);
        if (kelvin < -1e-9) f_.fail(key, "'" + text + "' is below absolute zero");
        return kelvin;
    }

    double optional_temperature(const std::string& key) {
        return f_.has(key) ? temperature(key, f_.text(key)) : no_number;
    }

    void content() {
        int held = 0;
        for (const char* key : {"value", "points", "equation", "text", "none"}) held += f_.has(key) ? 1 : 0;
        if (held != 1) f_.fail("", "exactly one of value, points, equation, text, none is expected");
        r_.none = f_.text_or("none", "");
        r_.from_K = optional_temperature("from");
        if (f_.has("from") && r_.property != "linear_expansion")
            f_.fail("from", "only an expansion is kept as a mean over a range: set a mean " + r_.property +
                                " at the middle of its range, computed");
        if (f_.has("value")) r_.points.push_back(figure("value", f_.text("value")));
        if (f_.has("points")) points();
        if (f_.has("equation")) equation();
        if (f_.has("text")) r_.text = word("text", behaviours);
        if (!r_.text.empty() && !property_->is_text) f_.fail("text", r_.property + " is a number");
        if (property_->is_text && r_.text.empty() && r_.none.empty()) f_.fail("text", "is missing");
        valid();
    }

    Point figure(const std::string& key, const std::string& printed) {
        const Result<Point> p = read_figure(printed, unit_);
        if (!p) f_.fail(key, p.problem().text);
        for (double x : {p->value_si, p->low_si, p->high_si}) plausible(key, printed, x);
        return *p;
    }

    void plausible(const std::string& key, const std::string& printed, double si) const {
        if (std::isnan(si)) return;
        if (si < property_->plausible_low_si || si > property_->plausible_high_si)
            f_.fail(key, printed + " " + r_.unit + " is outside the plausible range of " + r_.property +
                             " (unit or decimal point?)");
    }

    void points() {
        const JsonNode& list = *f_.node("points");
        if (list.kind != JsonNode::Kind::list || list.items.empty())
            f_.fail("points", "a list of [temperature, figure] is expected");
        for (const JsonNode& item : list.items) {
            const bool pair = item.kind == JsonNode::Kind::list && item.items.size() == 2 &&
                              item.items[0].kind == JsonNode::Kind::text && item.items[1].kind == JsonNode::Kind::text;
            if (!pair) f_.fail_at(item, "points", "[\"temperature\", \"figure\"] is expected, both in quotation marks");
            Point p = figure("points", item.items[1].text);
            p.temperature_K = temperature("points", item.items[0].text);
            if (!r_.points.empty() && p.temperature_K <= r_.points.back().temperature_K)
                f_.fail_at(item, "points", "temperatures must rise");
            r_.points.push_back(std::move(p));
        }
    }

    void equation() {
        Fields e = f_.object("equation");
        if (e.text("form") != "polynomial") e.fail("form", "only polynomial is known");
        if (!has_temperature_unit_) f_.fail("equation", "needs a temperature_unit");
        Polynomial p;
        const auto coefficients = e.texts("coefficients");
        if (coefficients.empty()) e.fail("coefficients", "is missing");
        double per_kelvin = 1; // (T - offset) in the source's unit is (T_K - offset_K) / scale
        for (std::size_t i = 0; i < coefficients.size(); ++i) {
            double number = 0;
            if (!whole_number(coefficients[i], number))
                e.fail("coefficients", "'" + coefficients[i] + "' is no number");
            p.coefficient_si.push_back(number * unit_.scale * per_kelvin + (i == 0 ? unit_.offset : 0));
            per_kelvin /= temperature_.scale;
            r_.equation_printed += (i ? " " : "coefficients ") + coefficients[i];
        }
        const auto range = e.texts("range");
        if (range.size() != 2) e.fail("range", "[\"from\", \"to\"] is expected");
        double offset = 0;
        if (!whole_number(e.text_or("offset", "0"), offset)) e.fail("offset", "is no number");
        p.offset_K = temperature_.to_si(offset);
        p.low_K = temperature("equation", range[0]);
        p.high_K = temperature("equation", range[1]);
        if (!(p.low_K < p.high_K)) e.fail("range", "must rise");
        r_.equation_printed += ", offset " + e.text_or("offset", "0") + ", " + range[0] + " to " + range[1] + " " +
                               f_.text("temperature_unit");
        e.finish();
        for (double t : {p.low_K, p.high_K})
            plausible("equation", "the value at " + std::to_string(t) + " K in", p.at(t));
        r_.equation = std::move(p);
    }

    void valid() {
        const auto range = f_.texts("valid");
        if (range.empty()) return;
        if (range.size() != 2) f_.fail("valid", "[\"from\", \"to\"] is expected");
        r_.valid_low_K = temperature("valid", range[0]);
        r_.valid_high_K = temperature("valid", range[1]);
    }

    /// The figure as the source prints it where the record holds it converted; shown with the note.
    void verbatim() {
        const double molar_mass_g_mol = f_.number_or("molar_mass", 0);
        const std::string printed = f_.text_or("printed", "");
        if (printed.empty() && molar_mass_g_mol > 0) f_.fail("molar_mass", "goes with \"printed\"");
        if (printed.empty()) return;
        const std::string wrong = check_verbatim(r_, unit_, printed, molar_mass_g_mol * 1e-3);
        if (!wrong.empty()) f_.fail("printed", wrong);
        const std::string molar = molar_mass_g_mol > 0 ? ", per kg with " + f_.text("molar_mass") + " g/mol" : "";
        r_.note = "printed " + printed + molar + (r_.note.empty() ? "" : "; " + r_.note);
    }

    void uncertainty() {
        std::string text = f_.text_or("uncertainty", "");
        const std::string kind = f_.text_or("uncertainty_kind", "standard");
        if (text.empty()) return;
        r_.uncertainty_printed = text + (r_.unit.empty() || text.ends_with("%") ? "" : " " + r_.unit) + ", " + kind;
        if (kind == "defined") return defined(text);
        const double divisor = kind == "standard" ? 1 : kind == "expanded" ? 2 : kind == "limits" ? std::sqrt(3.0) : 0;
        if (divisor == 0) f_.fail("uncertainty_kind", "standard, expanded, limits or defined is expected");
        const bool relative = text.ends_with("%");
        if (relative) text = text.substr(0, text.find_last_not_of(" %") + 1);
        double number = 0;
        if (!whole_number(text, number) || number < 0)
            f_.fail("uncertainty", "\"1 %\" or a figure in the record's unit is expected");
        (relative ? r_.uncertainty_relative : r_.uncertainty_si) = number / divisor * (relative ? 0.01 : unit_.scale);
    }

    /// A fixed point: exact, whatever digits are printed.
    void defined(const std::string& text) {
        if (text != "0") f_.fail("uncertainty", "a defined value has the uncertainty \"0\"");
        r_.uncertainty_printed = "none: fixed by definition";
        r_.uncertainty_si = 0;
        for (Point& p : r_.points) p.half_digit_si = 0;
    }

    void use() {
        const auto use = use_named(f_.text_or("use", "alternate"));
        if (!use) f_.fail("use", "preferred, disputed or superseded is expected");
        r_.use = *use;
        r_.why = f_.text_or("why", "");
        if (r_.use != Use::alternate && r_.why.empty()) f_.fail("use", "needs a \"why\"");
    }

    Fields f_;
    const Catalogue& dictionary_;
    const Property* property_ = nullptr;
    Unit unit_, temperature_;
    bool has_temperature_unit_ = false;
    Record r_;
};

} // namespace

Citation read_citation(Fields& fields, const Catalogue& dictionary) {
    Citation c;
    c.source = fields.text("source");
    c.locator = fields.text("locator");
    const auto how = how_known_named(fields.text("how_known"));
    if (!how || *how == HowKnown::own)
        fields.fail("how_known", "read, memory, common practice or computed is expected");
    c.how_known = *how;
    c.through = fields.text_or("through", "");
    if (!dictionary.reference(c.source)) fields.fail("source", "'" + c.source + "' is not in db/references.json");
    return c;
}

Record read_record(const std::string& file, const std::string& place, const JsonNode& node,
                   const Catalogue& dictionary) {
    return RecordReader(file, place, node, dictionary).run();
}

} // namespace pourbook
