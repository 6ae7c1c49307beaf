// What every kind of picture of `chart` has in common; a kind is declared in one of the files chart*.cpp.
#pragma once

#include "cli/picture_words.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <string>
#include <type_traits>

namespace pourbook {

using Drawing = std::function<Scene(const Canvas&)>;

/// A kind of chart: its own words W and those of every picture. `scene(catalogue, words, conditions, units)` gives a
/// function of the canvas, or a problem; where it takes the upper end of a range of temperatures, after the conditions,
/// --at may be one.
template <class W, class F>
std::shared_ptr<W> chart_kind(Context& context, CLI::App* chart, const std::string& name, const std::string& help,
                              F scene) {
    struct Words {
        W own;
        PictureWords picture;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command(chart, name, help);
    with_picture_words(c, words->picture);
    const auto answer = [&context, words, scene](const Catalogue& catalogue, const auto&... conditions) {
        const Result<UnitSystem> units = units_from(context.units);
        if (!units) return context.failed(units.problem());
        const Result<Drawing> drawing = scene(catalogue, words->own, conditions..., *units);
        return drawing ? answer_picture(context, catalogue, words->picture, *drawing)
                       : context.failed(drawing.problem());
    };
    c->callback([&context, answer] {
        if constexpr (std::is_invocable_v<F, const Catalogue&, const W&, const Conditions&, double, UnitSystem>)
            context.answer = context.under_range(answer);
        else
            context.answer = context.under_conditions(answer);
    });
    return {words, &words->own};
}

void declare_fall_charts(Context& context, CLI::App* chart);    // drop, drag, sweep
void declare_mixture_charts(Context& context, CLI::App* chart); // diagram, mix

} // namespace pourbook
