#include "cli/chart_kind.hpp"

#include "charts/diagram_chart.hpp"
#include "charts/mix_chart.hpp"
#include "core/quantity/unit.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/mix/mix_sheet.hpp"
#include "questions/mix/mix_words.hpp"

#include <cctype>

namespace pourbook {
namespace {

struct DiagramWords {
    std::string system, composition, at;
};

/// "AG-CU" as two symbols.
Result<PhaseDiagramRequest> system_from(const std::string& words) {
    const std::size_t dash = words.find('-');
    if (dash == 0 || dash >= words.size() - 1 || words.empty())
        return unreadable("'" + words + "': two elements are expected, such as Ag-Cu");
    PhaseDiagramRequest out{words.substr(0, dash), words.substr(dash + 1), {}, {}};
    for (std::string* symbol : {&out.a, &out.b})
        for (std::size_t i = 0; i < symbol->size(); ++i) {
            const auto letter = static_cast<unsigned char>((*symbol)[i]);
            (*symbol)[i] = static_cast<char>(i == 0 ? std::toupper(letter) : std::tolower(letter));
        }
    return out;
}

/// Adds composition and temperature; returns how the composition is called.
Result<std::string> place_composition(const Catalogue& catalogue, const DiagramWords& w, PhaseDiagramRequest& request) {
    if (w.composition.empty()) return std::string();
    const Result<Composition> c = composition_from(catalogue, w.composition);
    if (!c) return unreadable("--composition: " + c.problem().text);
    const Result<MixAxis> axis = axis_of(catalogue, *c);
    const bool same =
        axis && ((axis->a == request.a && axis->b == request.b) || (axis->a == request.b && axis->b == request.a));
    if (!same) return unreadable("--composition: its two main elements are not " + request.a + " and " + request.b);
    request.wt_of_b = axis->b == request.b ? axis->wt_b : 100 - axis->wt_b;
    if (!w.at.empty()) {
        const Result<double> t = parse_si(w.at, base_dimension(Dimension::kelvin), "a temperature");
        if (!t) return unreadable("--at '" + w.at + "': " + t.problem().text);
        if (c->shares().size() > 2) return unreadable("--at: shares of phases are told for two elements only");
        request.temperature_K = *t;
    }
    return name_on_axis(*c);
}

const QuestionOf<DiagramWords>& diagram_question() {
    using R = DiagramWords;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("diagram", "the phase diagram of two elements");
        q.add(input::needed(input::by_place(input::words("system", "two elements", "Ag-Cu"))), &R::system);
        q.add(input::words("composition", "pointed out", "\"Ag 92.5 Cu 7.5\""), &R::composition);
        q.add(input::words("at", "with the shares of its phases at this temperature", "600degC"), &R::at);
        return q;
    }();
    return question;
}

Result<Drawing> draw_diagram(const Stated& stated, const Catalogue& catalogue, UnitSystem units) {
    const Result<DiagramWords> w = diagram_question().read(stated, catalogue);
    if (!w) return w.problem();
    if (!w->at.empty() && w->composition.empty()) return unreadable("--at requires --composition");
    Result<PhaseDiagramRequest> request = system_from(w->system);
    if (!request) return request.problem();
    const Result<std::string> name = place_composition(catalogue, *w, *request);
    if (!name) return name.problem();
    const Result<PhaseDiagram> result = phase_diagram(catalogue, *request);
    if (!result) return result.problem();
    return drawing_of(diagram_chart(catalogue, *result, *name, units));
}

struct MixWords {
    std::string mix;
    std::vector<std::string> treatments;
    bool resistivity = false;
};

Result<CurveChart> mix_chart_of(const Catalogue& catalogue, const MixWords& w) {
    const Result<MixRequest> request = mix_request_from(catalogue, w.mix);
    if (!request) return request.problem();
    const Result<MixResult> result = mix(catalogue, *request);
    if (!result) return result.problem();
    const Composition& composition = result->composition;
    const Result<MixAxis> axis = axis_of(catalogue, composition);
    if (!axis) return axis.problem();
    std::vector<Treatment> treatments;
    for (const std::string& t : w.treatments) treatments.push_back(*treatment_named(t)); // checked when it was read
    if (treatments.empty()) treatments.push_back(request->treatment);
    std::vector<MixCurve> curves;
    for (const Treatment t : treatments) {
        const Result<MixCurve> curve = mix_curve(catalogue, {axis->a, axis->b, t});
        if (!curve) return curve.problem();
        curves.push_back(*curve);
    }
    CurveChart made =
        mix_chart(catalogue, curves, {w.resistivity, CurveUpright{axis->wt_b, name_on_axis(composition)}});
    if (made.lines.empty()) return Problem{Problem::Kind::no_value, made.notes.front(), 0};
    return made;
}

Fault read_treatment(MixWords& w, const std::string& text, const Catalogue&) {
    if (!treatment_named(text)) return unreadable("as-cast, annealed, quenched or aged is expected");
    w.treatments.push_back(text);
    return {};
}

const QuestionOf<MixWords>& mix_chart_question() {
    using R = MixWords;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("mix", "conductivity against composition, with a mix pointed out");
        q.add(input::needed(
                  input::by_place(input::words("mix", "stocks or a composition", "\"Ag 92.5 Cu 7.5 annealed\""))),
              &R::mix);
        q.add_read(
            input::commas(input::words("treatment", "a line for each of these, instead of the mix's own: as-cast, "
                                                    "annealed, quenched, aged")),
            read_treatment);
        q.add(input::flag("resistivity", "resistivity instead of conductivity"), &R::resistivity);
        return q;
    }();
    return question;
}

Result<Drawing> draw_mix(const Stated& stated, const Catalogue& catalogue, UnitSystem) {
    const Result<MixWords> w = mix_chart_question().read(stated, catalogue);
    if (!w) return w.problem();
    const Result<CurveChart> made = mix_chart_of(catalogue, *w);
    if (!made) return made.problem();
    return drawing_of(*made);
}

} // namespace

void declare_mixture_charts(Context& context, CLI::App* chart) {
    chart_kind(context, chart, diagram_question(), draw_diagram);
    chart_kind(context, chart, mix_chart_question(), draw_mix);
}

} // namespace pourbook
