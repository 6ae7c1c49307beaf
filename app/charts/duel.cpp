#include "charts/duel.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double mark_size = 13, bar_height = 12, whole_height = 210, compact_height = 108,
                 name_line = line_height(TextStyle::title);

class DuelLayout {
public:
    DuelLayout(const Duel& duel, const Canvas& canvas) : duel_(duel), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
        scene_.origin = duel.origin;
    }

    Scene run() {
        const double top = add_head(scene_, canvas_, duel_.title, "");
        const double bottom = bottom_ = add_origin(scene_, canvas_, duel_.origin);
        std::vector<std::string> why = wrapped(duel_.reason, inside(), TextStyle::label, canvas_.measure);
        const double lines = static_cast<double>(why.size()) * label_line, whole = whole_height + lines;
        compact_ = bottom - top < whole;
        double y = top + std::max(0.0, (bottom - top - (compact_ ? compact_height + lines : whole)) / 2);
        y = compact_ ? add_row(y) : add_verdict(add_sides(y));
        words({canvas_.width / 2, y + label_line / 2}, duel_.sure, colours_.dim, Anchor::middle, TextStyle::label);
        y += label_line;
        if (std::isfinite(duel_.ratio)) y = add_bar(y + 8);
        y += 8;
        for (const std::string& line : why) {
            if (y + label_line > bottom) break;
            words({canvas_.width / 2, y + label_line / 2}, line, colours_.dim, Anchor::middle, TextStyle::label);
            y += label_line;
        }
        return std::move(scene_);
    }

private:
    double inside() const { return std::min(canvas_.width - 4 * chart_margin, 720.0); }

    void words(Spot at, const std::string& text, Colour colour, Anchor anchor, TextStyle style) {
        scene_.parts.push_back(Text{at, text, colour, anchor, style});
    }

    double add_sides(double y) {
        const double middle = canvas_.width / 2, quarter = inside() / 4;
        add_side(duel_.better, {middle - quarter, y + mark_size}, duel_.tie ? colours_.ink : colours_.accent);
        add_side(duel_.worse, {middle + quarter, y + mark_size}, colours_.ink);
        words({middle, y + mark_size}, duel_.tie ? "or" : "beats", colours_.dim, Anchor::middle, TextStyle::label);
        return y + 2 * mark_size + 2 * name_line;
    }

    void add_side(const DuelSide& side, Spot at, Colour colour) {
        add_marker(scene_, side.slot, at, mark_size, colours_.of_slot(side.slot));
        double y = at.y + mark_size + name_line / 2 + 4;
        for (const std::string& line : wrapped(side.name, inside() / 2 - 12, TextStyle::title, canvas_.measure)) {
            words({at.x, y}, line, colour, Anchor::middle, TextStyle::title);
            y += name_line;
        }
    }

    double add_verdict(double y) {
        for (const std::string& line :
             wrapped(duel_.verdict, canvas_.width - 2 * chart_margin, TextStyle::large, canvas_.measure)) {
            words({canvas_.width / 2, y + line_height(TextStyle::large) / 2 + 6}, line, colours_.ink, Anchor::middle,
                  TextStyle::large);
            y += line_height(TextStyle::large);
        }
        return y + 8;
    }

    /// Where there is little height: names at the sides, the verdict between them.
    double add_row(double y) {
        const double middle = canvas_.width / 2, at = y + line_height(TextStyle::large) / 2,
                     verdict = canvas_.measure.width(duel_.verdict, TextStyle::large) / 2 + 24;
        const double room = canvas_.width / 2 - verdict - chart_margin - 2 * mark_size;
        const auto name = [&](const DuelSide& side) {
            return shortened(side.name, room, TextStyle::title, canvas_.measure);
        };
        words({middle, at}, duel_.verdict, colours_.ink, Anchor::middle, TextStyle::large);
        words({middle - verdict, at}, name(duel_.better), duel_.tie ? colours_.ink : colours_.accent, Anchor::end,
              TextStyle::title);
        words({middle + verdict, at}, name(duel_.worse), colours_.ink, Anchor::start, TextStyle::title);
        const double left = canvas_.measure.width(name(duel_.better), TextStyle::title),
                     right = canvas_.measure.width(name(duel_.worse), TextStyle::title);
        add_marker(scene_, duel_.better.slot, {middle - verdict - left - mark_size, at}, 8,
                   colours_.of_slot(duel_.better.slot));
        add_marker(scene_, duel_.worse.slot, {middle + verdict + right + mark_size, at}, 8,
                   colours_.of_slot(duel_.worse.slot));
        return y + line_height(TextStyle::large);
    }

    /// The ratio with its interval, on an axis that has "equal" at one end or within.
    double add_bar(double y) {
        const double low = std::min(std::log(duel_.low), 0.0), high = std::max(std::log(duel_.high), 0.05);
        const double margin = 0.08 * (high - low), left = canvas_.width / 2 - inside() / 2;
        const auto x_of = [&](double ratio) {
            return left + inside() * (std::log(ratio) - low + margin) / (high - low + 2 * margin);
        };
        const double x_one = x_of(1), middle = y + bar_height / 2;
        scene_.parts.push_back(Rectangle{{left, middle - 0.5, inside(), 1}, colours_.line});
        scene_.parts.push_back(Rectangle{{x_one - 0.5, y - 8, 1, bar_height + 16}, colours_.dim});
        scene_.parts.push_back(Rectangle{{x_of(duel_.low), y, x_of(duel_.high) - x_of(duel_.low), bar_height},
                                         colours_.of_slot(duel_.better.slot).with_alpha(150)});
        scene_.parts.push_back(Rectangle{{x_of(duel_.ratio) - 1.5, y - 4, 3, bar_height + 8}, colours_.ink});
        const double below = y + bar_height + 10 + label_line / 2;
        if (below + label_line / 2 > bottom_) return below; // no room for words
        words({x_one, below}, "equal", colours_.dim, x_one < left + 40 ? Anchor::start : Anchor::middle,
              TextStyle::label);
        if (x_of(duel_.high) - x_one > 120)
            words({x_of(duel_.high), below}, significant(duel_.low, 3) + " to " + significant(duel_.high, 3) + " times",
                  colours_.dim, Anchor::end, TextStyle::label);
        return below + label_line / 2;
    }

    const Duel& duel_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    bool compact_ = false;
    double bottom_ = 0;
};

std::string verdict_of(const VersusResult& r) {
    if (std::isfinite(r.ratio_median)) return significant(r.ratio_median, 3) + " times as good";
    if (!std::isfinite(r.difference_median)) return r.tie ? "as good as equal" : "better";
    return significant(r.difference_median, 3) + (r.difference_unit.empty() ? "" : " ") +
           pretty_unit(r.difference_unit) + " better";
}

std::string sure_of(const VersusResult& r) {
    const std::string p =
        r.p_winner > 0.999 ? "above 99.9 %" : significant(100 * r.p_winner, r.p_winner > 0.99 ? 3 : 2) + " %";
    return r.tie ? "too close to call: " + p + " for the first" : "probability " + p;
}

} // namespace

Duel duel_of(const Catalogue& catalogue, const VersusResult& r, std::size_t better_slot, std::size_t worse_slot) {
    Duel duel;
    duel.title = r.label.empty() ? r.formula : r.label;
    if (!duel.title.empty() && duel.title[0] >= 'a' && duel.title[0] <= 'z')
        duel.title[0] = static_cast<char>(duel.title[0] - 'a' + 'A');
    duel.better = {r.better.metal->name, better_slot};
    duel.worse = {r.worse.metal->name, worse_slot};
    duel.tie = r.tie;
    duel.ratio = r.ratio_median;
    duel.low = r.ratio_low90;
    duel.high = r.ratio_high90;
    duel.verdict = verdict_of(r);
    duel.sure = sure_of(r) + " · " + state_words(r.conditions);
    duel.p = r.p_winner;
    duel.reason = r.reason.empty() ? r.sentence : r.reason + (r.reason.ends_with('.') ? " " : ". ") + r.flip_sentence;
    duel.origin = {r.sources, catalogue.data_version, conditions_text(r.conditions, r.to_K)};
    return duel;
}

Scene layout(const Duel& duel, const Canvas& canvas) {
    return DuelLayout(duel, canvas).run();
}

} // namespace pourbook
