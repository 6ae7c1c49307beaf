#include "charts/contour.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <utility>

namespace pourbook {
namespace {

/// A side of a cell: its lower left node, and whether it runs upwards.
using Side = std::pair<std::size_t, bool>;

class Contour {
public:
    Contour(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& value, double level)
        : x_(x), y_(y), value_(value), level_(level) {}

    std::vector<std::vector<Spot>> run() {
        for (std::size_t j = 0; j + 1 < y_.size(); ++j)
            for (std::size_t i = 0; i + 1 < x_.size(); ++i) cross(i, j);
        std::vector<std::vector<Spot>> lines;
        for (const bool ends_first : {true, false}) // lines that end at the edge, then what is left: closed ones
            for (auto& [side, next] : links_)
                if (!next.empty() && (!ends_first || next.size() == 1)) lines.push_back(line_from(side));
        return lines;
    }

private:
    double at(std::size_t node) const { return value_[node] - level_; }

    void link(Side a, Side b) {
        links_[a].push_back(b);
        links_[b].push_back(a);
    }

    void cross(std::size_t i, std::size_t j) {
        const std::size_t n = x_.size(), low = j * n + i;
        const std::array<Side, 4> sides = {{{low, false}, {low + 1, true}, {low + n, false}, {low, true}}};
        const std::array<std::size_t, 4> corners = {low, low + 1, low + n + 1, low + n};
        std::vector<Side> cut;
        for (std::size_t k = 0; k < 4; ++k)
            if ((at(corners[k]) < 0) != (at(corners[(k + 1) % 4]) < 0)) cut.push_back(sides[k]);
        if (cut.size() == 2) link(cut[0], cut[1]);
        if (cut.size() != 4) return;
        const double middle = at(corners[0]) + at(corners[1]) + at(corners[2]) + at(corners[3]);
        const bool apart = (middle < 0) == (at(corners[0]) < 0); // a saddle: the first corner belongs to the third
        link(cut[0], cut[apart ? 1 : 3]);
        link(cut[2], cut[apart ? 3 : 1]);
    }

    Spot spot(const Side& side) const {
        const std::size_t n = x_.size(), i = side.first % n, j = side.first / n;
        const double here = at(side.first), there = at(side.second ? side.first + n : side.first + 1),
                     t = here / (here - there);
        return side.second ? Spot{x_[i], y_[j] + t * (y_[j + 1] - y_[j])}
                           : Spot{x_[i] + t * (x_[i + 1] - x_[i]), y_[j]};
    }

    /// Follows the links and takes them away.
    std::vector<Spot> line_from(Side side) {
        std::vector<Spot> line = {spot(side)};
        for (auto here = links_.find(side); !here->second.empty();) {
            const Side next = here->second.back();
            here->second.pop_back();
            const auto there = links_.find(next);
            std::erase(there->second, here->first);
            line.push_back(spot(next));
            here = there;
        }
        return line;
    }

    const std::vector<double>&x_, &y_, &value_;
    double level_;
    std::map<Side, std::vector<Side>> links_;
};

} // namespace

std::vector<std::vector<Spot>> contour(const std::vector<double>& x, const std::vector<double>& y,
                                       const std::vector<double>& value, double level) {
    return Contour(x, y, value, level).run();
}

} // namespace pourbook
