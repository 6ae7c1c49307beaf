#include "gui/state/view_state.hpp"

#include "charts/marker.hpp"
#include "charts/palette.hpp"
#include "questions/drop/fall_time.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/views.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

// The scenario of the first look: a marble tower whose magnet must take five seconds a floor, through sleeves cast from
// what lies on the shelf. Invented.
constexpr const char* sleeve = "22mm:38mm:300mm";
constexpr std::array shelf_metals = {"za-12", "aluminium-a356-cast", "copper-dhp", "bronze-gunmetal-88-10-2",
                                     "bronze-silicon-cast"};

SetupWords first_setup() {
    SetupWords words;
    words.magnet = "cylinder:20mmx20mm";
    words.grade = "N52";
    words.tube = sleeve;
    return words;
}

/// One of the sleeves, cast as a ceramic shell.
Stated first_pour() {
    Stated stated(pour_question());
    return stated.set("metal", "za-12").set("part", std::string("tube:") + sleeve).set("clear", "20mm");
}

/// The chimes are cast from the rest: gunmetal with what is left of the pipe.
MixSheetWords first_mix() {
    MixSheetWords words;
    words.stocks = {{"1.2 kg", "bronze-gunmetal-88-10-2", ""}, {"300 g", "copper-dhp", ""}};
    words.composition = "Cu 90 Sn 10";
    words.melt_loss = "1 %";
    return words;
}

/// A metal of the catalogue, or a mix in words that can be read.
bool is_known(const Catalogue& catalogue, const std::string& slug) {
    if (!names_mix(slug)) return catalogue.metal(slug) != nullptr;
    const Result<MixRequest> request = mix_request_from(catalogue, slug);
    return request && mix(catalogue, *request);
}

/// The mark whose colour fewest pinned metals have, of these the one fewest metals have at all.
std::size_t free_mark(const ViewState& view) {
    constexpr std::size_t colours = std::tuple_size_v<decltype(Palette::series)>;
    std::array<std::size_t, different_marks> uses{}, pinned_colour{};
    for (const auto& [slug, mark] : view.marks.of) {
        ++uses[mark % different_marks];
        if (is_pinned(view, slug)) ++pinned_colour[mark % colours];
    }
    std::size_t best = 0;
    const auto worth = [&](std::size_t mark) { return std::pair(pinned_colour[mark % colours], uses[mark]); };
    for (std::size_t mark = 1; mark < different_marks; ++mark)
        if (worth(mark) < worth(best)) best = mark;
    return best;
}

/// Reading a set-up works out its walk off the axis: start need not wait for that of the first one.
bool is_sound(const SetupWords& setup, const Catalogue& catalogue) {
    return setup == first_setup() || drop_setup(catalogue, setup);
}

} // namespace

ViewState first_view(const Catalogue& catalogue) {
    ViewState view;
    view.drop_setup = first_setup();
    view.mix.words = first_mix();
    view.pour = first_pour();
    view.drop.second = first_setup();
    view.curves.celsius = true; // as a furnace is read
    for (const char* slug : shelf_metals)
        if (catalogue.metal(slug)) view.pins.emplace_back(slug);
    return fitted(view, catalogue);
}

ViewState fitted(ViewState view, const Catalogue& catalogue) {
    if (!is_view(view.view)) view.view = ViewState{}.view;
    std::vector<std::string> pins;
    for (const std::string& slug : view.pins)
        if (is_known(catalogue, slug) && std::find(pins.begin(), pins.end(), slug) == pins.end()) pins.push_back(slug);
    view.pins = pins;
    give_marks(view);
    view.letters = std::clamp(view.letters, smallest_letters, largest_letters);
    if (!is_known(catalogue, view.selected))
        view.selected = !view.pins.empty()         ? view.pins.front()
                        : catalogue.metals.empty() ? ""
                                                   : catalogue.metals.front().slug;
    if (!view.rank.goal.empty() && !catalogue.goal(view.rank.goal))
        view.rank.goal = catalogue.goals.empty() ? "" : catalogue.goals.front().id;
    if (!view.rank.second_goal.empty() && !catalogue.goal(view.rank.second_goal))
        view.rank.second_goal = view.rank.goal;
    if (std::find(sample_counts.begin(), sample_counts.end(), view.rank.samples) == sample_counts.end())
        view.rank.samples = RankChoice{}.samples;
    if (!catalogue.property(view.curves.property)) view.curves.property = "resistivity";
    if (!catalogue.reference(view.source)) view.source.clear();
    if (!ranged_question().read(view.conditions, catalogue)) view.conditions = Stated(ranged_question());
    if (view.mix.words.stocks.empty()) view.mix.words.stocks = first_mix().stocks;
    if (!treatment_named(view.mix.words.treatment)) view.mix.words.treatment = MixSheetWords{}.treatment;
    if (!is_known(catalogue, view.pour.text("metal"))) view.pour.set("metal", view.selected);
    if (!view.pour.states("part")) view.pour.set("part", first_pour().text("part"));
    if (!is_sound(view.drop_setup, catalogue)) view.drop_setup = first_setup();
    if (!is_sound(view.drop.second, catalogue)) view.drop.second = view.drop_setup;
    const auto swept = with_range(catalogue, {}, view.drop.over, view.drop.range);
    if (!swept && swept.problem().kind == Problem::Kind::unreadable) { // a currency waits for the workshop's rate
        view.drop.over = DropChoice{}.over;
        view.drop.range = DropChoice{}.range;
    }
    return view;
}

UsualAmounts usual_amounts(const Catalogue& catalogue) {
    return {usual_budget(catalogue, " "), usual_range(catalogue, SweepOver::budget)};
}

void follow_currency(ViewState& view, const UsualAmounts& before, const UsualAmounts& now) {
    if (view.rank.budget == before.budget) view.rank.budget = now.budget;
    if (view.drop.range == before.range) view.drop.range = now.range;
}

Stated& stated_for(ViewState& view, const QuestionTable& question) {
    const auto [at, fresh] = view.questions.stated.try_emplace(question.name, question);
    Stated& stated = at->second;
    if (!fresh) return stated;
    state_setup(stated, view.drop_setup);
    if (question.has("metal")) stated.set("metal", view.selected);
    return stated;
}

bool is_pinned(const ViewState& view, const std::string& slug) {
    return std::find(view.pins.begin(), view.pins.end(), slug) != view.pins.end();
}

void give_marks(ViewState& view) {
    for (const std::string& slug : view.pins)
        if (!view.marks.of.contains(slug)) view.marks.of.emplace(slug, free_mark(view));
}

std::size_t mark_of(const ViewState& view, const std::string& slug) {
    const auto at = view.marks.of.find(slug);
    return at == view.marks.of.end() ? 0 : at->second;
}

void take_back(ViewState& view, const ViewState& earlier) {
    KeptMarks marks = std::move(view.marks);
    view = earlier;
    view.marks = std::move(marks);
}

void toggle_pin(ViewState& view, const std::string& slug) {
    const auto at = std::find(view.pins.begin(), view.pins.end(), slug);
    if (at != view.pins.end())
        view.pins.erase(at);
    else if (!slug.empty())
        view.pins.push_back(slug);
    give_marks(view);
}

} // namespace pourbook
