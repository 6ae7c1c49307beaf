#include "cli/context.hpp"

#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"
#include "cli/setup_words.hpp"
#include "core/quantity/unit.hpp"

namespace pourbook {
namespace {

Result<double> speed_from(const std::string& text) {
    static const Dimension speed = parse_unit("m/s")->dimension;
    const Result<double> v = parse_si(text, speed, "a speed");
    if (v && *v >= 0) return v;
    return Problem{
        Problem::Kind::unreadable,
        "--speed '" + text + "': a speed such as 0.1m/s is expected" + (v ? "" : " (" + v.problem().text + ")"), 0};
}

} // namespace

void declare_drag(Context& context) {
    struct Words {
        DragRequest request;
        std::string speed;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("drag", "the drag on a magnet at a speed in a long tube");
    with_setup(c, words->request.drop.setup);
    with_tube_metal(c, words->request.drop.metal, words->request.drop.resistivity);
    c->add_option("--speed", words->speed, "speed of the magnet, such as 0.1m/s")->required();
    context.with_conditions(c);
    context.metal_words.push_back(&words->request.drop.metal);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                const Result<double> speed = speed_from(words->speed);
                if (!speed) return context.failed(speed.problem());
                words->request.speed_m_s = *speed;
                words->request.drop.conditions = conditions;
                return context.answered(
                    drag(catalogue, words->request), [&](const DragResult& r) { return json_of(r, catalogue); },
                    [&](const DragResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook
