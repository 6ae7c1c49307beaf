// What every kind of picture of `chart` has in common; a kind is declared in one of the files chart*.cpp.
#pragma once

#include "cli/options.hpp"
#include "cli/picture_words.hpp"
#include "core/result.hpp"

#include <functional>

namespace pourbook {

using Drawing = std::function<Scene(const Canvas&)>;
using DrawingOf = std::function<Result<Drawing>(const Stated&, const Catalogue&, UnitSystem)>;

/// A kind of chart: the fields of its question, and those of every picture.
void chart_kind(Context& context, CLI::App* chart, const QuestionTable& question, const DrawingOf& scene);

/// A chart as a function of the canvas.
template <class Chart> Drawing drawing_of(Chart made) {
    return [made = std::move(made)](const Canvas& canvas) { return layout(made, canvas); };
}

void declare_fall_charts(Context& context, CLI::App* chart);    // drop, drag, sweep
void declare_motion_charts(Context& context, CLI::App* chart);  // field, fall
void declare_mixture_charts(Context& context, CLI::App* chart); // diagram, mix

} // namespace pourbook
