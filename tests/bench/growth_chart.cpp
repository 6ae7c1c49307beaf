// Draws what growth.py measured: growth-chart FILE.svg TITLE X_LABEL, with lines "name<tab>x<tab>seconds" on standard
// input. The charts are the program's own.
#include "answers/picture/letters.hpp"
#include "answers/picture/picture.hpp"
#include "charts/curve_chart.hpp"
#include "platform/files.hpp"

#include <cstdio>
#include <iostream>
#include <sstream>
#include <string>

using namespace pourbook;

namespace {

CurveLine& line_of(std::vector<CurveLine>& lines, const std::string& name) {
    for (CurveLine& line : lines)
        if (line.name == name) return line;
    return lines.emplace_back(CurveLine{name, name, lines.size(), {{}}, {}, "", {}});
}

std::vector<CurveLine> read_lines(std::istream& in) {
    std::vector<CurveLine> lines;
    for (std::string text, name; std::getline(in, text);) {
        std::istringstream fields(text);
        CurveSpot spot;
        std::getline(fields, name, '\t');
        fields >> spot.x >> spot.y;
        spot.low = spot.high = spot.y;
        CurveLine& line = line_of(lines, name);
        line.stretches[0].push_back(spot);
        line.printed.push_back(spot);
    }
    return lines;
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 4) {
        std::cerr << "growth-chart: FILE.svg TITLE X_LABEL\n";
        return 2;
    }
    CurveChart chart;
    chart.title = argv[2];
    chart.x_label = argv[3];
    chart.y_label = "processor time, s";
    chart.log = chart.log_x = true;
    chart.legend = "medians; both axes logarithmic";
    chart.lines = read_lines(std::cin);
    const Result<const Letters*> measure = letters();
    if (!measure) return std::cerr << "growth-chart: " << measure.problem().text << "\n", 4;
    const Palette& colours = palette(false);
    PictureLook look;
    look.ground = colours.ground;
    const auto picture = picture_of(layout(chart, {900, 560, colours, **measure}), PictureFormat::svg, look);
    if (!picture) return std::cerr << "growth-chart: " << picture.problem().text << "\n", 4;
    if (const auto problem = platform::write_file(argv[1], *picture))
        return std::cerr << "growth-chart: " << problem->text << "\n", 4;
    return 0;
}
