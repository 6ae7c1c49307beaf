#include "charts/table_picture.hpp"

#include "charts/place_text.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

constexpr double column_gap = 16, widest_column = 0.4; // of the width
constexpr double roomy_line = 30;                      // where there are few rows

class TableLayout {
public:
    TableLayout(const TablePicture& table, const Canvas& canvas) : table_(table), canvas_(canvas) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
        scene_.origin = table.origin;
    }

    Scene run() {
        top_ = add_head(scene_, canvas_, table_.title, "");
        bottom_ = add_origin(scene_, canvas_, table_.origin);
        choose_columns();
        choose_rows();
        add_notes(scene_, canvas_, more(), bottom_);
        add_row(table_.columns, 0, canvas_.palette.dim);
        for (std::size_t r = 0; r < rows_; ++r) {
            if (r % 2 == 0)
                scene_.parts.push_back(Rectangle{
                    {chart_margin, top_ + line_ * static_cast<double>(r + 1), room(), line_}, canvas_.palette.raised});
            add_row(table_.rows[r], r + 1, canvas_.palette.ink);
        }
        return std::move(scene_);
    }

private:
    double room() const { return canvas_.width - 2 * chart_margin; }

    double width_of(std::size_t column) const { return std::min(wanted(column), widest_column * room()); }

    double wanted(std::size_t column) const {
        double width = canvas_.measure.width(table_.columns[column], TextStyle::label);
        for (const auto& row : table_.rows)
            width = std::max(width, canvas_.measure.width(row[column], TextStyle::label));
        return std::ceil(width);
    }

    void choose_columns() {
        double left = room();
        for (std::size_t c = 0; c < table_.columns.size(); ++c) {
            const double width = width_of(c) + column_gap;
            if (width > left) break;
            widths_.push_back(width);
            left -= width;
        }
        if (widths_.size() < 2) return;
        for (std::size_t c = 0; c + 1 < widths_.size(); ++c) { // what is left: first to what would be cut
            const double more = std::min(left, std::max(0.0, wanted(c) + column_gap - widths_[c]));
            widths_[c] += more;
            left -= more;
        }
        for (std::size_t c = 0; c + 1 < widths_.size(); ++c) // then to the edge, evenly
            widths_[c] += left / static_cast<double>(widths_.size() - 1);
    }

    void choose_rows() {
        const double notes = 2 * label_line, height = bottom_ - top_ - notes;
        const auto wanted = static_cast<double>(table_.rows.size() + 1);
        line_ = std::clamp(height / wanted, label_line + 2, roomy_line);
        rows_ = std::min(table_.rows.size(), static_cast<std::size_t>(std::max(1.0, height / line_ - 1)));
    }

    std::vector<std::string> more() const {
        std::string words;
        if (rows_ < table_.rows.size()) words = "and " + std::to_string(table_.rows.size() - rows_) + " more rows";
        if (widths_.size() < table_.columns.size())
            words += (words.empty() ? "and " : ", ") + std::to_string(table_.columns.size() - widths_.size()) +
                     " more columns";
        return words.empty() ? std::vector<std::string>{} : std::vector<std::string>{words};
    }

    void add_row(const std::vector<std::string>& cells, std::size_t place, Colour colour) {
        double x = chart_margin + column_gap / 2;
        const double y = top_ + line_ * (static_cast<double>(place) + 0.5);
        for (std::size_t c = 0; c < widths_.size(); ++c) {
            const double width = widths_[c] - column_gap;
            const std::string words = shortened(cells[c], width, TextStyle::label, canvas_.measure);
            const bool right = table_.right[c];
            scene_.parts.push_back(
                Text{{right ? x + width : x, y}, words, colour, right ? Anchor::end : Anchor::start});
            x += widths_[c];
        }
    }

    const TablePicture& table_;
    const Canvas& canvas_;
    Scene scene_;
    double top_ = 0, bottom_ = 0, line_ = label_line;
    std::size_t rows_ = 0;
    std::vector<double> widths_; // with the gap
};

} // namespace

Scene layout(const TablePicture& table, const Canvas& canvas) {
    constexpr double narrow = 350; // points
    const bool upright = canvas.width < narrow && table.columns.size() > 2;
    return upright ? narrow_layout(table, canvas) : TableLayout(table, canvas).run();
}

} // namespace pourbook
