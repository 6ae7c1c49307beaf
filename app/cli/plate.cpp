#include "cli/context.hpp"

#include "answers/drop/plate_report.hpp"
#include "cli/setup_words.hpp"

namespace pourbook {

void declare_plate(Context& context) {
    auto request = std::make_shared<PlateRequest>();
    CLI::App* c = context.command("plate", "drag and lift on a magnet sliding or swinging past a plate");
    with_magnet(c, request->magnet);
    with_tube_metal(c, request->metal, request->resistivity);
    c->add_option("--thickness", request->thickness, "of the plate, such as 5mm")->required();
    c->add_option("--height", request->height, "of the magnet's centre above the plate");
    c->add_option("--gap", request->gap, "instead: of its lower face");
    c->add_option("--axis", request->axis, "of the magnet: normal to the plate (default), or along the motion");
    c->add_option("--speed", request->speed, "such as 0.5m/s, or 0.1m/s:10m/s for a table")->required();
    c->add_option("--steps", request->steps, "rows of the table (default 15)");
    context.with_conditions(c);
    c->callback([&context, request] {
        context.answer =
            context.under_conditions([&context, request](const Catalogue& catalogue, const Conditions& conditions) {
                request->conditions = conditions;
                return context.answered(
                    plate(catalogue, *request), [&](const PlateResult& r) { return json_of(r, catalogue); },
                    [&](const PlateResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
