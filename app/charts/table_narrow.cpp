// A table in an upright frame: what a row is about stands above its figures, a few columns side by side.
#include "charts/place_text.hpp"
#include "charts/table_picture.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double narrow_gap = 10, least_column = 84, row_air = 6;

class NarrowTable {
public:
    NarrowTable(const TablePicture& table, const Canvas& canvas) : table_(table), canvas_(canvas) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
        const auto words = std::find(table.right.begin(), table.right.end(), false);
        first_ = words == table.right.end() ? 1 : static_cast<std::size_t>(words - table.right.begin()) + 1;
        const std::size_t figures = table.columns.size() - first_;
        const auto room = static_cast<std::size_t>(std::max(1.0, width() / least_column));
        shown_ = std::min(figures, room);
        column_ = width() / static_cast<double>(std::max<std::size_t>(1, shown_));
    }

    Scene run() {
        double y = add_head(scene_, canvas_, table_.title, "");
        const double bottom = add_origin(scene_, canvas_, table_.origin) - label_line; // and what is left out
        y = add_names(y);
        const double row = label_line * (shown_ > 0 ? 2 : 1) + row_air;
        std::size_t rows = 0;
        for (; rows < table_.rows.size() && y + row <= bottom; ++rows, y += row) add_row(rows, y, row);
        add_notes(scene_, canvas_, left_out(rows), bottom + label_line);
        return std::move(scene_);
    }

private:
    double width() const { return canvas_.width - 2 * chart_margin; }

    void add(double x, double y, const std::string& words, Colour colour, Anchor anchor) {
        scene_.parts.push_back(Text{{x, y + label_line / 2}, words, colour, anchor});
    }

    double right_of(std::size_t i) const {
        return chart_margin + column_ * static_cast<double>(i + 1) - narrow_gap / 2;
    }

    std::vector<std::string> name_lines(std::size_t i) const {
        constexpr std::size_t most = 4;
        return fitted_lines(table_.columns[first_ + i], column_ - narrow_gap, most, TextStyle::label, canvas_.measure);
    }

    /// Of the columns, each ends at the line above the rows.
    double add_names(double y) {
        std::size_t most = 0;
        for (std::size_t i = 0; i < shown_; ++i) most = std::max(most, name_lines(i).size());
        for (std::size_t i = 0; i < shown_; ++i) {
            const std::vector<std::string> lines = name_lines(i);
            for (std::size_t l = 0; l < lines.size(); ++l)
                add(right_of(i), y + label_line * static_cast<double>(most - lines.size() + l), lines[l],
                    canvas_.palette.dim, Anchor::end);
        }
        return y + label_line * static_cast<double>(most) + row_air;
    }

    void add_row(std::size_t r, double y, double height) {
        const std::vector<std::string>& cells = table_.rows[r];
        if (r % 2 == 0) scene_.parts.push_back(Rectangle{{chart_margin, y, width(), height}, canvas_.palette.raised});
        std::string about;
        for (std::size_t c = 0; c < first_; ++c) about += (about.empty() ? "" : "  ") + cells[c];
        const double left = chart_margin + narrow_gap / 2;
        add(left, y + row_air / 2, shortened(about, width() - narrow_gap, TextStyle::label, canvas_.measure),
            canvas_.palette.dim, Anchor::start);
        for (std::size_t i = 0; i < shown_; ++i)
            add(right_of(i), y + row_air / 2 + label_line,
                shortened(cells[first_ + i], column_ - narrow_gap, TextStyle::label, canvas_.measure),
                canvas_.palette.ink, Anchor::end);
    }

    std::vector<std::string> left_out(std::size_t rows) const {
        const std::size_t more_rows = table_.rows.size() - rows, more = table_.columns.size() - first_ - shown_;
        std::string words;
        if (more_rows > 0) words = "and " + std::to_string(more_rows) + " more rows";
        if (more > 0) words += (words.empty() ? "and " : ", ") + std::to_string(more) + " more columns";
        return words.empty() ? std::vector<std::string>{} : std::vector<std::string>{words};
    }

    const TablePicture& table_;
    const Canvas& canvas_;
    Scene scene_;
    std::size_t first_ = 1, shown_ = 0; // the first figure's column, and how many are shown
    double column_ = 0;
};

} // namespace

Scene narrow_layout(const TablePicture& table, const Canvas& canvas) {
    return NarrowTable(table, canvas).run();
}

} // namespace pourbook
