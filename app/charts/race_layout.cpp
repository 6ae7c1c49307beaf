#include "charts/race.hpp"

#include "charts/magnet_drawing.hpp"
#include "charts/marker.hpp"
#include "charts/place_text.hpp"
#include "charts/wall_drawing.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace pourbook {
namespace {

constexpr double title_line = line_height(TextStyle::title);
constexpr double lane_gap = 6;
constexpr double name_mark = 14; // of a name, for the mark before it
constexpr std::size_t most_name_lines = 3;
constexpr double clock_drop = 8;     // the clock is larger than the title beside it
constexpr double narrow = 600;       // points, below which a foot has two lines
constexpr double race_upright = 350; // below which the title stands below the clock
constexpr double least_lane = 80;    // of width, below which the lanes are named in a list
constexpr double least_tube = 60;    // points of height below which the foot gives way

std::string clock_text(double time_s) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3f s", std::max(time_s, 0.0));
    return text;
}

class RaceLayout {
public:
    RaceLayout(const Race& race, const Canvas& canvas) : race_(race), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
        scene_.title = canvas.title.empty() ? race.title : canvas.title;
        scene_.origin = race.origin;
    }

    Scene moment(double time_s, double slow) {
        add_clock(time_s);
        slow_ = slow;
        const double top = add_heading();
        const double bottom = add_foot();
        if (race_.lanes.empty()) return std::move(scene_);
        place_lanes(top, bottom);
        for (std::size_t i = 0; i < race_.lanes.size(); ++i) add_lane(i, time_s);
        return std::move(scene_);
    }

    Scene sources() {
        const double bottom = add_origin(scene_, canvas_, race_.origin);
        double y = add_head(scene_, canvas_, race_.title, race_.subtitle);
        for (const RaceLane& lane : race_.lanes) y = add_line(result_of(lane), y, colours_.ink, bottom);
        y += label_line / 2;
        for (const std::string& caution : race_.cautions) y = add_line(caution, y, colours_.warning, bottom);
        return std::move(scene_);
    }

private:
    double width() const { return canvas_.width - 2 * chart_margin; }

    std::string fitted(const std::string& text, double room, TextStyle style = TextStyle::label) const {
        return shortened(text, room, style, canvas_.measure);
    }

    void add_text(Spot at, std::string text, Colour colour, Anchor anchor = Anchor::start,
                  TextStyle style = TextStyle::label) {
        scene_.parts.push_back(Text{at, std::move(text), colour, anchor, style});
    }

    double add_line(const std::string& text, double y, Colour colour, double bottom) {
        for (const std::string& line : wrapped(text, width(), TextStyle::label, canvas_.measure)) {
            if (y + label_line > bottom) return y;
            add_text({chart_margin, y + label_line / 2}, line, colour);
            y += label_line;
        }
        return y;
    }

    /// At the right of the title's line; what is left for the title is clock_left_.
    void add_clock(double time_s) {
        const std::string text = clock_text(race_.lanes.empty() ? time_s : std::min(time_s, race_.end_s()));
        const double right = canvas_.width - chart_margin, y = chart_margin + title_line / 2;
        const bool wide = canvas_.width >= narrow;
        const TextStyle style = wide ? TextStyle::large : TextStyle::title;
        add_text({right, wide ? y + clock_drop : y}, text, colours_.ink, Anchor::end, style);
        clock_left_ = right - canvas_.measure.width(wide ? "000.000 s" : "0000.000 s", style);
    }

    double add_heading() {
        const bool below = is_upright();
        const double beside_clock = clock_left_ - chart_margin - lane_gap;
        double y = chart_margin + title_line / 2 + (below ? title_line : 0);
        for (const std::string& line : fitted_lines(scene_.title, below ? width() : beside_clock, below ? 2 : 1,
                                                    TextStyle::title, canvas_.measure)) {
            add_text({chart_margin, y}, line, colours_.ink, Anchor::start, TextStyle::title);
            y += title_line;
        }
        const double room = canvas_.width < narrow ? width() : beside_clock;
        for (const std::string& line :
             fitted_lines(race_.subtitle, room, below ? 3 : 2, TextStyle::label, canvas_.measure)) {
            add_text({chart_margin, y}, line, colours_.dim);
            y += label_line;
        }
        return y - label_line / 2 + 4;
    }

    bool is_upright() const { return canvas_.width < race_upright && canvas_.height > 1.3 * canvas_.width; }
    std::size_t caution_lines() const {
        constexpr double low = 300; // points of height, in which the tubes need all there is
        return is_upright() ? 8 : canvas_.width < narrow && canvas_.height > low ? 4 : 2;
    }
    std::size_t foot_lines() const { return is_upright() ? 3 : canvas_.width < narrow ? 2 : 1; }

    /// At most `most` lines that end at y; returns the y above all of their room.
    double add_foot_lines(const std::string& text, std::size_t most, double y, Colour colour) {
        std::vector<std::string> lines = wrapped(text, width(), TextStyle::label, canvas_.measure);
        for (; lines.size() > most; lines.pop_back()) lines[lines.size() - 2] += " " + lines.back();
        const double top = y - label_line * static_cast<double>(lines.size());
        for (std::size_t i = 0; i < lines.size(); ++i)
            add_text({chart_margin, top + label_line * (static_cast<double>(i) + 0.5)}, fitted(lines[i], width()),
                     colour);
        return top;
    }

    /// A line of caution; below it room for what was slowed and enlarged, which is known later.
    double add_foot() {
        note_bottom_ = canvas_.height - chart_margin;
        const double y = note_bottom_ - label_line * static_cast<double>(foot_lines());
        if (race_.cautions.empty()) return y - 4;
        return add_foot_lines(whole_sentences(race_.cautions.front(), caution_lines()), caution_lines(), y,
                              colours_.warning) -
               4;
    }

    /// Those of its first sentences that fit; the last frame has all.
    std::string whole_sentences(std::string text, std::size_t lines) const {
        const std::string whole = text;
        while (wrapped(text, width(), TextStyle::label, canvas_.measure).size() > lines) {
            const std::size_t end = text.rfind(". ");
            if (end == std::string::npos) return whole;
            text.resize(end + 1);
        }
        return text;
    }

    std::string pace() const {
        if (slow_ == 1) return "";
        return slow_ > 1 ? trimmed(slow_, 3) + " times slower than life · "
                         : trimmed(1 / slow_, 3) + " times faster than life · ";
    }

    bool any_detail() const {
        return std::any_of(race_.lanes.begin(), race_.lanes.end(), [](const RaceLane& l) { return !l.detail.empty(); });
    }

    /// One scale for all; depths from `high_` above the mouth to `low_` below it.
    void place_lanes(double top, double bottom) {
        const auto count = static_cast<double>(race_.lanes.size());
        lane_width_ = (width() - (count - 1) * lane_gap) / count;
        foot_ = bottom;
        choose_name_style();
        listed_ = lane_width_ < least_lane && is_upright();
        const double lines = listed_ ? count + 1 : 2.0 + (any_detail() ? 1 : 0) + (race_.aim_s > 0 ? 1 : 0);
        words_top_ = bottom - lines * label_line - (listed_ ? 0 : static_cast<double>(names_) * name_line());
        if (!listed_ && words_top_ - top < least_tube) {
            names_ = 1;
            words_top_ = std::max(top + 10, bottom - name_line());
        }
        nearest_ = nearest_to_aim();
        double high = 0, low = 0, wide = 0, longest = 0;
        for (const RaceLane& lane : race_.lanes) {
            if (lane.path.empty()) continue;
            high = std::max(high, -lane.path.front().depth_m);
            low = std::max(low, lane.path.back().depth_m);
            for (const RaceWall& wall : lane.walls) {
                low = std::max(low, wall.outline.to_m);
                wide = std::max({wide, 2 * wall.outline.upper.outer_radius_m, 2 * wall.outline.lower.outer_radius_m});
            }
            longest = std::max(longest, lane.magnet.whole_length_m());
        }
        if (low == 0) return;
        constexpr double magnet_share = 0.14; // of the height, that a magnet is drawn at most
        const double room = words_top_ - top - 8;
        scale_ = std::min((1 - magnet_share) * room / (high + low), 0.8 * lane_width_ / wide);
        larger_ =
            std::max(1.0, std::min(magnet_share * room / (longest * scale_), 0.45 * lane_width_ / (wide * scale_)));
        mouth_ = top + 4 + high * scale_ + longest * scale_ * larger_ / 2;
        add_foot_lines(pace() +
                           (larger_ > 1.05 ? "places to scale, widths and magnets drawn " + significant(larger_, 2) +
                                                 " times larger"
                                           : "to scale") +
                           " · timed until the magnet's middle is out",
                       foot_lines(), note_bottom_, colours_.dim);
    }

    void add_lane(std::size_t i, double time_s) {
        const RaceLane& lane = race_.lanes[i];
        const double left = chart_margin + static_cast<double>(i) * (lane_width_ + lane_gap);
        const Spot axis{left + lane_width_ / 2, mouth_};
        const Colour colour = colours_.of_slot(canvas_.slot(lane.id, lane.slot));
        if (listed_) return add_listed(lane, i, time_s, axis, colour);
        if (lane.path.empty()) {
            add_reason(lane.problem, axis.x);
        } else {
            const RacePlace place = place_at(lane, time_s);
            add_tube(lane, i, axis, colour);
            add_falling(lane, i, place, axis);
            add_words(lane, place, axis.x, i == nearest_ && time_s >= race_.end_s());
        }
        add_name(lane, axis.x, colour);
    }

    /// Under the tube its mark alone; who it is and how far, in a line of the list below.
    void add_listed(const RaceLane& lane, std::size_t i, double time_s, Spot axis, Colour colour) {
        const std::size_t slot = canvas_.slot(lane.id, lane.slot);
        std::string said = lane.path.empty() ? lane.problem : clock_text(0);
        if (!lane.path.empty()) {
            const RacePlace place = place_at(lane, time_s);
            add_tube(lane, i, axis, colour);
            add_falling(lane, i, place, axis);
            said = (place.out ? "out after " : "") + clock_text(place.time_s);
        }
        add_marker(scene_, slot, {axis.x, words_top_ + label_line / 2}, 4.5, colour);
        const double y = words_top_ + label_line * (static_cast<double>(i) + 1.5), right = canvas_.width - chart_margin;
        said = fitted(said, width() / 2);
        add_marker(scene_, slot, {chart_margin + 5, y}, 4.5, colour);
        add_text({right, y}, said, lane.path.empty() ? colours_.warning : colours_.ink, Anchor::end);
        const std::string detail = lane.detail.empty() ? "" : ", " + lane.detail; // stays whole
        const double room = width() - name_mark - canvas_.measure.width(said + detail, TextStyle::label) - lane_gap;
        add_text({chart_margin + name_mark, y}, fitted(lane.name, room) + detail, colours_.ink);
    }

    double name_room() const { return lane_width_ - name_mark; }

    /// A word that is too long may break behind its hyphen.
    std::vector<std::string> name_lines(const RaceLane& lane, TextStyle style) const {
        std::string name = lane.name;
        for (std::size_t at = name.find('-'); at != std::string::npos; at = name.find('-', at + 1)) {
            const std::size_t begin = name.rfind(' ', at) + 1, end = std::min(name.find(' ', at), name.size());
            const bool too_long = canvas_.measure.width(name.substr(begin, end - begin), style) > name_room();
            if (too_long && at + 1 < end && style == TextStyle::label) name.insert(at + 1, " ");
        }
        return wrapped(name, name_room(), style, canvas_.measure);
    }

    /// Large, unless a name would then take a second line.
    void choose_name_style() {
        const auto fits = [&](const RaceLane& lane) {
            return canvas_.measure.width(lane.name, TextStyle::title) <= name_room();
        };
        name_style_ = std::all_of(race_.lanes.begin(), race_.lanes.end(), fits) ? TextStyle::title : TextStyle::label;
        for (const RaceLane& lane : race_.lanes)
            names_ = std::clamp(name_lines(lane, name_style_).size(), names_, most_name_lines);
    }

    double name_line() const { return line_height(name_style_); }

    /// Its last line stands above what is said of the lane.
    void add_name(const RaceLane& lane, double x, Colour colour) {
        std::vector<std::string> lines = name_lines(lane, name_style_);
        for (; lines.size() > names_; lines.pop_back()) lines[lines.size() - 2] += " " + lines.back();
        for (std::string& line : lines) line = fitted(line, name_room(), name_style_);
        const double half = canvas_.measure.width(lines.front(), name_style_) / 2;
        double y = words_top_ + (static_cast<double>(names_ - lines.size()) + 0.5) * name_line();
        add_marker(scene_, canvas_.slot(lane.id, lane.slot), {x - half - 3, y}, 4.5, colour);
        for (const std::string& line : lines) {
            add_text({x + 7, y}, line, colours_.ink, Anchor::middle, name_style_);
            y += name_line();
        }
    }

    void add_tube(const RaceLane& lane, std::size_t i, Spot axis, Colour colour) {
        const WallPlace place{axis, scale_ * larger_, scale_};
        for (const RaceWall& wall : lane.walls)
            if (wall.outline.piece == 0 || wall.outline.from_m > 0)
                add_bore(scene_, wall.outline, place, colour_of(wall, colour).with_alpha(50));
        for (const RaceWall& wall : lane.walls) add_wall(scene_, wall.outline, place, colour_of(wall, colour));
        const double outer = lane.bore.outer_radius_m * scale_ * larger_;
        scene_.hits.push_back(
            {{axis.x - outer, axis.y, 2 * outer, lane.tube_length_m * scale_}, "tube-" + std::to_string(i), lane.name});
    }

    Colour colour_of(const RaceWall& wall, Colour lane) const {
        return wall.slot ? colours_.of_slot(canvas_.slot(wall.id, *wall.slot)) : lane;
    }

    void add_falling(const RaceLane& lane, std::size_t i, const RacePlace& place, Spot axis) {
        const Spot centre{axis.x, axis.y + place.depth_m * scale_};
        const double drawn = scale_ * larger_;
        add_magnet(scene_, lane.magnet, centre, drawn);
        const double r = lane.magnet.outer_radius_m * drawn, half = lane.magnet.whole_length_m() / 2 * drawn;
        scene_.hits.push_back(
            {{centre.x - r, centre.y - half, 2 * r, 2 * half},
             "magnet-" + std::to_string(i),
             lane.name + "\n" + length_text(std::round(place.depth_m * 1e5) / 1e5, race_.units) + " below the mouth"});
    }

    /// The lane whose time comes nearest to the wished one; their number where none was wished for.
    std::size_t nearest_to_aim() const {
        std::size_t nearest = race_.lanes.size();
        double least = 0;
        for (std::size_t i = 0; race_.aim_s > 0 && i < race_.lanes.size(); ++i) {
            if (race_.lanes[i].path.empty()) continue;
            const double off = std::abs(race_.lanes[i].path.back().time_s - race_.aim_s);
            if (nearest == race_.lanes.size() || off < least) nearest = i, least = off;
        }
        return nearest;
    }

    /// Why nothing falls here, as far as there is room.
    void add_reason(const std::string& why, double x) {
        std::vector<std::string> lines = wrapped(why, lane_width_, TextStyle::label, canvas_.measure);
        double y = words_top_ + static_cast<double>(names_) * name_line() + label_line / 2;
        const auto room = static_cast<std::size_t>(std::max(0.0, std::floor((foot_ - y) / label_line) + 1));
        if (room == 0) return;
        if (lines.size() > room) {
            lines.resize(room);
            lines.back() = fitted(lines.back() + " …", lane_width_);
        }
        for (const std::string& line : lines) {
            add_text({x, y}, line, colours_.warning, Anchor::middle);
            y += label_line;
        }
    }

    void add_words(const RaceLane& lane, const RacePlace& place, double x, bool nearest) {
        double y = words_top_ + static_cast<double>(names_) * name_line() + label_line / 2;
        const auto say = [&](const std::string& text, Colour colour) {
            if (y + label_line / 2 <= foot_ + 1) add_text({x, y}, fitted(text, lane_width_), colour, Anchor::middle);
            y += label_line;
        };
        if (!lane.detail.empty()) say(lane.detail, colours_.dim);
        const std::string speed = speed_text(place.speed_m_s, race_.units);
        if (place.out) { // the clock above is that of the slowest
            say(with_fitting("out after ", "out ", clock_text(place.time_s)), colours_.accent);
            say("at " + speed, colours_.ink);
            if (nearest) say("nearest to " + significant(race_.aim_s, 3) + " s", colours_.accent);
            return;
        }
        say(with_fitting("speed ", "", speed), colours_.ink);
        say(with_fitting("in the hand ", "hand ", force_text(std::max(place.load_N, 0.0), race_.units)), colours_.ink);
    }

    /// What comes before a figure, as far as the lane has room for it.
    std::string with_fitting(const std::string& words, const std::string& fewer, const std::string& figure) const {
        for (const std::string& before : {words, fewer})
            if (canvas_.measure.width(before + figure, TextStyle::label) <= lane_width_) return before + figure;
        return figure;
    }

    std::string result_of(const RaceLane& lane) const {
        std::string text = lane.name + (lane.detail.empty() ? "" : " (" + lane.detail + ")") + ": ";
        if (lane.path.empty()) return text + lane.problem;
        return text + clock_text(lane.path.back().time_s) + " (90 %: " + significant(lane.low_s, 3) + " to " +
               significant(lane.high_s, 3) + " s), out at " + speed_text(lane.path.back().speed_m_s, race_.units);
    }

    const Race& race_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    double clock_left_ = 0, slow_ = 1, note_bottom_ = 0;
    double lane_width_ = 0, words_top_ = 0, foot_ = 0;
    TextStyle name_style_ = TextStyle::title;
    bool listed_ = false;                       // lanes too narrow for their names
    std::size_t names_ = 1, nearest_ = 0;       // lines of a name, the lane nearest to the wished time
    double scale_ = 0, larger_ = 1, mouth_ = 0; // points a metre, of widths against lengths, y of the mouths
};

} // namespace

Scene race_scene(const Race& race, double time_s, double slow, const Canvas& canvas) {
    return RaceLayout(race, canvas).moment(time_s, slow);
}

Scene race_sources(const Race& race, const Canvas& canvas) {
    return RaceLayout(race, canvas).sources();
}

} // namespace pourbook
