#include "answers/picture/page_layout.hpp"

#include "charts/place_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double margin_pt = 32, gap_pt = 14;
constexpr double title_scale = 1.2, largest_figures = 1.5, largest_text = 0.66, smallest_text = 0.5, step = 0.02;
constexpr Colour ink{0x1a, 0x1a, 0x1a}, dim{0x55, 0x55, 0x55}, rule{0x99, 0x99, 0x99}, warning{0xd5, 0x5e, 0x00};
constexpr double line_share = 0.86;  // of the usual height of a line: a sheet is set closer than a chart
constexpr double bar = 10, box = 11; // room for a caution's bar, side of a box to tick
constexpr double blank_height = 30;  // room to write by hand
constexpr double least_blank = 75, blank_gap = 12;

double pitch(TextStyle style) {
    return line_height(style) * line_share;
}

/// Draws blocks one below the other into a column of a scene.
class Column {
public:
    Column(Scene& scene, const TextMeasure& measure, double x, double y, double width)
        : scene_(scene), measure_(measure), x_(x), y_(y), width_(width) {}
    double y() const { return y_; }

    void section(const PageSection& s) {
        const Colour colour = s.warns() ? warning : ink;
        put(s.title, x_, TextStyle::title, colour);
        if (!s.figure.empty())
            scene_.parts.push_back(
                Text{{x_ + width_, y_ + pitch(TextStyle::title) / 2}, s.figure, ink, Anchor::end, TextStyle::title});
        y_ += pitch(TextStyle::title) + 1;
        stroke({{x_, y_}, {x_ + width_, y_}}, rule);
        y_ += 4;
        for (const PageBlock& b : s.blocks) block(b);
        y_ += 9;
    }

    void lines(const std::string& text, double indent, Colour colour) {
        for (const std::string& line : wrapped(text, width_ - indent, TextStyle::label, measure_)) {
            put(line, x_ + indent, TextStyle::label, colour);
            y_ += pitch(TextStyle::label);
        }
    }

private:
    void put(const std::string& text, double x, TextStyle style, Colour colour) {
        scene_.parts.push_back(Text{{x, y_ + pitch(style) / 2}, text, colour, Anchor::start, style});
    }

    void stroke(std::vector<Spot> spots, Colour colour) {
        const Polyline line{std::move(spots), colour, 1, false};
        scene_.parts.emplace_back(line);
    }

    void block(const PageBlock& b) {
        const double top = y_;
        switch (b.kind) {
        case PageBlock::Kind::table:
            table(b.table);
            return;
        case PageBlock::Kind::blanks:
            blanks(b.blanks);
            return;
        case PageBlock::Kind::caution:
            lines(b.text, bar, ink);
            scene_.parts.push_back(Rectangle{{x_, top + 2, 3, y_ - top - 3}, warning});
            return;
        case PageBlock::Kind::tick:
            lines(b.text, box + 7, ink);
            tick_box(top);
            return;
        case PageBlock::Kind::bullet:
            put("·", x_ + 2, TextStyle::label, ink);
            lines(b.text, bar, ink);
            return;
        case PageBlock::Kind::line:
            lines(b.text, 0, ink);
            return;
        }
    }

    void tick_box(double top) {
        const double y = top + (pitch(TextStyle::label) - box) / 2;
        const double right = x_ + box, bottom = y + box;
        stroke({{x_, y}, {right, y}, {right, bottom}, {x_, bottom}, {x_, y}}, ink);
    }

    /// Names with a line each to write on, as many beside each other as leave room to write.
    void blanks(const std::vector<std::string>& names) {
        for (std::size_t i = 0; i < names.size();) {
            double words = 0;
            std::size_t n = 0;
            while (i + n < names.size()) {
                const double more = words + measure_.width(names[i + n], TextStyle::label) + blank_gap;
                if (n > 0 && (width_ - more) / static_cast<double>(n + 1) < least_blank) break;
                words = more;
                ++n;
            }
            const double blank = (width_ - words) / static_cast<double>(n);
            y_ += blank_height - pitch(TextStyle::label);
            double x = x_;
            for (const std::size_t end = i + n; i < end; ++i) x = to_fill_in(names[i], x, blank);
            y_ += pitch(TextStyle::label);
        }
    }

    double to_fill_in(const std::string& name, double x, double blank) {
        put(name, x, TextStyle::label, dim);
        const double from = x + measure_.width(name, TextStyle::label) + 4, base = y_ + pitch(TextStyle::label) - 2;
        stroke({{from, base}, {from + blank, base}}, ink);
        return from + blank + blank_gap - 4;
    }

    void table(const DataTable& t) {
        std::vector<double> widths;
        for (std::size_t i = 0; i < t.columns.size(); ++i) {
            double width = measure_.width(t.columns[i].title, TextStyle::label);
            for (const auto& row : t.rows) width = std::max(width, measure_.width(row[i].text, TextStyle::label));
            widths.push_back(width);
        }
        double all = 0;
        for (const double w : widths) all += w;
        const double gap =
            std::clamp((width_ - all) / static_cast<double>(std::max<std::size_t>(widths.size(), 2) - 1), 4.0, 26.0);
        std::vector<DataCell> head;
        for (const DataColumn& c : t.columns) head.push_back(DataCell::words(c.title));
        row(t, head, widths, gap, dim);
        for (const auto& cells : t.rows) row(t, cells, widths, gap, ink);
    }

    void row(const DataTable& t, const std::vector<DataCell>& cells, const std::vector<double>& widths, double gap,
             Colour colour) {
        double x = x_;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const bool right = t.columns[i].number;
            scene_.parts.push_back(Text{{right ? x + widths[i] : x, y_ + pitch(TextStyle::label) / 2},
                                        cells[i].text,
                                        colour,
                                        right ? Anchor::end : Anchor::start,
                                        TextStyle::label});
            x += widths[i] + gap;
        }
        y_ += pitch(TextStyle::label) + 2;
    }

    Scene& scene_;
    const TextMeasure& measure_;
    double x_, y_, width_;
};

bool needs_width(const PageSection& s) {
    return s.warns() || std::any_of(s.blocks.begin(), s.blocks.end(), [](const PageBlock& b) {
               return b.kind == PageBlock::Kind::table || b.kind == PageBlock::Kind::blanks;
           });
}

/// Sections of the body in the points of their own scale; narrow ones in two columns, wide ones below each other.
class Body {
public:
    Body(const TextMeasure& measure, double scale, double top_pt)
        : measure_(measure), scale_(scale), left_(margin_pt / scale), width_((paper_width_pt - 2 * margin_pt) / scale),
          y_(top_pt / scale) {}

    void add(const std::vector<const PageSection*>& sections) {
        for (std::size_t i = 0; i < sections.size();) {
            if (needs_width(*sections[i])) {
                Column column(scene_, measure_, left_, y_, width_);
                column.section(*sections[i++]);
                y_ = column.y();
                continue;
            }
            std::vector<const PageSection*> narrow;
            while (i < sections.size() && !needs_width(*sections[i])) narrow.push_back(sections[i++]);
            two_columns(narrow);
        }
    }
    bool fits() const { return y_ * scale_ <= paper_height_pt - margin_pt; }
    PageLayer layer() { return {scale_, std::move(scene_)}; }

private:
    double height(const PageSection& s, double width) const {
        Scene scratch;
        Column column(scratch, measure_, 0, 0, width);
        column.section(s);
        return column.y();
    }

    /// The first sections to the left until half of the height is there.
    void two_columns(const std::vector<const PageSection*>& sections) {
        const double width = (width_ - gap_pt / scale_) / 2;
        double all = 0;
        for (const PageSection* s : sections) all += height(*s, width);
        Column left(scene_, measure_, left_, y_, width), right(scene_, measure_, left_ + width_ - width, y_, width);
        double done = 0;
        for (const PageSection* s : sections) {
            const double h = height(*s, width);
            (done + h / 2 <= all / 2 ? left : right).section(*s);
            done += h;
        }
        y_ = std::max(left.y(), right.y());
    }

    const TextMeasure& measure_;
    double scale_, left_, width_, y_;
    Scene scene_;
};

/// Title, part, and the figures to read from across the room. Returns the paper's y below them.
double head_of(const Page& page, const TextMeasure& measure, PageSide& side) {
    PageLayer title{title_scale, {}};
    const double x = margin_pt / title_scale;
    double y = margin_pt / title_scale + 8;
    title.scene.parts.push_back(Text{{x, y}, page.title, ink, Anchor::start, TextStyle::title});
    side.push_back(std::move(title));
    double bottom = margin_pt + 26;
    PageLayer part{largest_text, {}};
    for (const std::string& line : page.subtitle) {
        part.scene.parts.push_back(
            Text{{margin_pt / largest_text, bottom / largest_text}, line, dim, Anchor::start, TextStyle::label});
        bottom += line_height(TextStyle::label) * largest_text;
    }
    side.push_back(std::move(part));
    double wide = 0;
    int count = 0;
    for (const PageSection& s : page.sections)
        if (!s.figure.empty()) {
            wide += measure.width(s.figure, TextStyle::title);
            ++count;
        }
    if (count == 0) return bottom;
    const double room = paper_width_pt - 2 * margin_pt - (count - 1) * gap_pt;
    const double scale = std::min(largest_figures, room / wide);
    PageLayer figures{scale, {}};
    double at = margin_pt / scale;
    for (const PageSection& s : page.sections) {
        if (s.figure.empty()) continue;
        figures.scene.parts.push_back(
            Text{{at, (bottom + 12) / scale}, s.figure, ink, Anchor::start, TextStyle::title});
        at += measure.width(s.figure, TextStyle::title) + gap_pt / scale;
    }
    side.push_back(std::move(figures));
    return bottom + 32;
}

using Sections = std::vector<const PageSection*>;

/// The largest text with which the sections fit between `top_pt` and the foot of the paper; those that don't fit even
/// in the smallest are taken off the end and left in `rest`.
PageLayer body_of(Sections sections, const TextMeasure& measure, double top_pt, Sections& rest) {
    for (double scale = largest_text;;) {
        Body body(measure, scale, top_pt);
        body.add(sections);
        if (body.fits() || sections.size() < 2) return body.layer();
        scale -= step;
        if (scale >= smallest_text) continue;
        scale = smallest_text;
        rest.insert(rest.begin(), sections.back());
        sections.pop_back();
    }
}

PageLayer foot_of(const Page& page, const std::string& side) {
    PageLayer foot{smallest_text, {}};
    const double y = (paper_height_pt - margin_pt * 0.6) / smallest_text;
    foot.scene.parts.push_back(Text{{margin_pt / smallest_text, y}, page.foot, dim});
    foot.scene.parts.push_back(Text{{(paper_width_pt - margin_pt) / smallest_text, y}, side, dim, Anchor::end});
    return foot;
}

} // namespace

std::vector<PageSide> lay_out(const Page& page, const TextMeasure& measure) {
    PageSection sources{"Sources", "", {}, PageSection::Part::notes, ""};
    std::string all;
    for (const std::string& source : page.sources) all += (all.empty() ? "" : "; ") + source;
    if (!all.empty()) sources.add(all);
    Sections now, later;
    for (const PageSection& s : page.sections) (s.part == PageSection::Part::notes ? later : now).push_back(&s);
    if (!all.empty()) later.push_back(&sources);
    std::vector<PageSide> sides;
    while (!now.empty()) {
        PageSide side;
        const double top = sides.empty() ? head_of(page, measure, side) : margin_pt;
        Sections rest;
        side.push_back(body_of(now, measure, top, rest));
        side.push_back(foot_of(page, "side " + std::to_string(sides.size() + 1)));
        sides.push_back(std::move(side));
        rest.insert(rest.end(), later.begin(), later.end());
        later.clear();
        now = rest;
    }
    return sides;
}

} // namespace pourbook
