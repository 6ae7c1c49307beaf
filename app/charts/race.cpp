#include "charts/race.hpp"

#include "charts/drop_charts.hpp"
#include "charts/words.hpp"
#include "questions/drop/cold_cautions.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <map>

namespace pourbook {
namespace {

/// What is the same for all, and what is said of each.
struct SetupText {
    std::string magnet, tube, parts, temperature, state;
};

/// What is put to the tube, with its metal where that is another.
std::string parts_text(const DropResult& r) {
    std::string out;
    for (const WallPiece& p : r.pieces) {
        out += (out.empty() ? "" : ", ") + p.what;
        if (p.metal.metal != r.tube.metal)
            out += " of " + (p.metal.metal ? p.metal.metal->name : "a stated resistivity");
    }
    return out;
}

SetupText words_of(const DropResult& r, bool metal, UnitSystem units) {
    return {magnet_text(r.setup, units), tube_text(r.setup.inputs, units), parts_text(r),
            temperature_text(r.conditions.temperature_K, units), metal ? state_words(r.conditions) : ""};
}

RaceLane lane_of(const DropOfMetal& d, std::size_t slot) {
    RaceLane lane;
    lane.id = d.metal ? d.metal->slug : "stated";
    lane.name = d.metal ? d.metal->name : "stated resistivity";
    lane.slot = slot;
    if (!d.result) {
        lane.problem = d.result.problem().text;
        return lane;
    }
    const eddy::DropInputs& i = d.result->setup.inputs;
    lane.magnet = i.magnet();
    lane.bore = i.bore();
    const std::vector<eddy::WallOutline> outlines = i.outlines();
    lane.tube_length_m = outlines.front().to_m;
    for (const eddy::WallOutline& o : outlines) lane.walls.push_back({o, lane.id, std::nullopt});
    for (const WallPiece& p : d.result->pieces)
        lane.walls[p.outline.piece].id = p.metal.metal ? p.metal.metal->slug : "stated";
    lane.path = d.result->fall.path;
    lane.low_s = d.result->fall_time_low90_s;
    lane.high_s = d.result->fall_time_high90_s;
    return lane;
}

/// A metal that is no lane's has the first free colour.
void colour_parts(Race& race) {
    std::map<std::string, std::size_t> slots;
    for (const RaceLane& lane : race.lanes) slots.try_emplace(lane.id, lane.slot);
    std::size_t next = race.lanes.size();
    for (RaceLane& lane : race.lanes)
        for (RaceWall& wall : lane.walls) {
            if (wall.id == lane.id) continue;
            const auto [at, fresh] = slots.try_emplace(wall.id, next);
            next += fresh;
            wall.slot = at->second;
        }
}

void add_words(Race& race, const std::vector<SetupText>& texts) {
    const auto shared = [&](std::string SetupText::*part) {
        return std::all_of(texts.begin(), texts.end(),
                           [&](const SetupText& t) { return t.*part == texts.front().*part; });
    };
    for (const auto part :
         {&SetupText::magnet, &SetupText::tube, &SetupText::parts, &SetupText::temperature, &SetupText::state}) {
        if (texts.empty()) return;
        if (shared(part)) {
            const std::string& words = texts.front().*part;
            race.subtitle += (race.subtitle.empty() || words.empty() ? "" : "; ") + words;
            continue;
        }
        std::size_t of = 0;
        for (RaceLane& lane : race.lanes) {
            if (!lane.problem.empty()) continue;
            const std::string& text = texts[of++].*part;
            if (!text.empty()) lane.detail += (lane.detail.empty() ? "" : "; ") + text;
        }
    }
}

} // namespace

double Race::end_s() const {
    double end = 0;
    for (const RaceLane& lane : lanes)
        if (!lane.path.empty()) end = std::max(end, lane.path.back().time_s);
    return end;
}

RacePlace place_at(const RaceLane& lane, double time_s) {
    const std::vector<eddy::Instant>& path = lane.path;
    const auto stands = [](const eddy::Instant& i, bool out) {
        return RacePlace{i.time_s, i.depth_m, i.speed_m_s, i.drag_N, out};
    };
    if (time_s <= path.front().time_s) return stands(path.front(), false);
    if (time_s >= path.back().time_s) return stands(path.back(), true);
    const auto after = std::upper_bound(path.begin(), path.end(), time_s,
                                        [](double t, const eddy::Instant& i) { return t < i.time_s; });
    const eddy::Instant &a = *(after - 1), &b = *after;
    const double h = b.time_s - a.time_s, t = (time_s - a.time_s) / h, s = 1 - t;
    const double depth = s * s * (1 + 2 * t) * a.depth_m + t * t * (1 + 2 * s) * b.depth_m +
                         h * s * t * (s * a.speed_m_s - t * b.speed_m_s);
    const double speed =
        6 * s * t * (b.depth_m - a.depth_m) / h + s * (1 - 3 * t) * a.speed_m_s + t * (1 - 3 * s) * b.speed_m_s;
    return {time_s, depth, speed, s * a.drag_N + t * b.drag_N, false};
}

Race race_of(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units) {
    Race race;
    race.title = "A magnet falls through a tube";
    race.units = units;
    std::vector<SetupText> texts;
    bool cold = false;
    for (std::size_t i = 0; i < drops.size(); ++i) {
        race.lanes.push_back(lane_of(drops[i], i));
        if (!drops[i].result) continue;
        texts.push_back(words_of(*drops[i].result, drops[i].metal != nullptr, units));
        cold = cold || drops[i].result->conditions.temperature_K < cold_bath_below_K;
    }
    colour_parts(race);
    add_words(race, texts);
    if (cold)
        for (const MagnetFigure* c : cold_cautions(catalogue)) race.cautions.push_back(c->text);
    const std::string about = "Strong magnets: "; // the first sentence says "they"
    for (const MagnetFigure* c : magnet_cautions(catalogue)) race.cautions.push_back(about + c->text);
    race.origin = origin_of(catalogue, drops);
    return race;
}

} // namespace pourbook
