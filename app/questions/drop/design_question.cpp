#include "core/materials/names.hpp"
#include "questions/drop/design.hpp"
#include "questions/drop/setup_question.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>

namespace pourbook {

const QuestionOf<DesignRequest>& design_question() {
    using namespace input;
    using R = DesignRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("design", "the tube for a wanted fall: metal, bore, wall and length within your limits");
        for (const QuestionField& field : magnet_question().fields) {
            q.add_one(magnet_question(), field.name, &R::setup);
            q.last().required = field.name == "magnet";
        }
        q.place("Wish");
        const auto above = [](QuestionField field, double low, double high) {
            field.low = low;
            field.high = high;
            return field;
        };
        q.add(above(quantity("time", "s", "the fall wanted", "5s"), 1e-3, 1e7), &R::time_s);
        q.add(above(quantity("mass", "kg", "metal in hand, all that is melted", "3kg"), 1e-6, 1e5), &R::mass_kg);
        q.add_read(words("budget", "money for the metal of the tube", "40USD"),
                   [](R& r, const std::string& text, const Catalogue& catalogue) {
                       const Result<double> usd = usd_from(catalogue, text, "--budget");
                       if (!usd) return Fault(usd.problem());
                       r.budget_usd = *usd;
                       return *usd > 0 ? Fault() : Fault(unreadable("money above zero is expected"));
                   });
        q.place("Limits");
        q.add(above(quantity("clear", "m", "gap between magnet and bore, on each side", "0.5mm", "0.5 mm"), 1e-5, 0.1),
              &R::clear_m);
        q.add_way(
            above(quantity("longest", "m", "the longest tube that kiln and printer take", "400mm", "1 m"), 1e-3, 100),
            [](R& r, const QuestionField& f, const Texts& texts, const Catalogue&) {
                r.longest_stated = true;
                return put(f, texts, r.longest_m);
            });
        q.add(above(quantity("least-wall", "m", "the thinnest wall that runs", "3mm", "the printed least section"),
                    1e-4, 0.1),
              &R::least_wall_m);
        q.add(above(quantity("crucible-volume", "m3", "melt your crucible holds", "500cm3",
                             "your workshop's, or no limit"),
                    1e-9, 1),
              &R::crucible_m3);
        q.add(
            above(quantity("lift", "kg", "what one person lifts, of the melt", "10kg", "your workshop's, or no limit"),
                  1e-3, 1e4),
            &R::lift_kg);
        q.add(choice("process", "ceramic shell, sand, plaster investment, or a permanent metal mould", process_names,
                     "mould"),
              &R::process);
        q.place("Metal of the tube");
        q.add(commas(metal("metal", "metals to choose from, separated by commas (default: all that are cast at home)")),
              &R::metals);
        q.place("Intervals");
        q.add(whole_number("top", "designs shown", "6", 1, 50), &R::top);
        q.add(whole_number("samples", "samples for the intervals", "200", 20, 20000), &R::samples);
        q.add(whole_number("seed", "seed of the samples", "1", 0, 1e18), &R::seed);
        q.add_all(conditions_question(), &R::conditions);
        as_casting(q, &R::conditions);
        return q;
    }();
    return question;
}

DesignRequest within_workshop(DesignRequest request, const WorkshopData& own) {
    if (!request.lift_kg) request.lift_kg = own.profile.lift_maximum_kg;
    if (request.crucible_m3) return request;
    for (const Crucible& c : own.crucibles)
        if (c.volume_m3) request.crucible_m3 = std::max(request.crucible_m3.value_or(0), *c.volume_m3);
    return request;
}

} // namespace pourbook
