// Everything a person has chosen in the window, and nothing that is worked out: plain data that comes back next time.
#pragma once

#include "core/materials/catalogue.hpp"
#include "questions/drop/setup_question.hpp"
#include "questions/drop/wall_words.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/mix/mix_sheet.hpp"
#include "questions/pour/pour_request.hpp"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace pourbook {

constexpr double smallest_letters = 0.8, largest_letters = 2;
constexpr std::array<std::size_t, 3> sample_counts = {0, 2000, 20000};

struct RankChoice {
    std::string goal = "braking-per-cost"; // empty: the formula
    std::string formula = "conductivity / density";
    bool best_high = true;
    std::string holding = "size";                  // what is equal: size | mass | budget
    std::string mass = "300 g", budget = "20 USD"; // of the tube, for a goal with a fall
    std::string where;                             // conditions, separated by ';'
    bool only_pinned = false;
    bool on_shelf = false; // only what is in stock, at the prices paid
    bool include_unusual = false;
    std::size_t samples = 2000;                  // one of sample_counts
    bool two_goals = false;                      // the picture sets a second goal against the first
    std::string second_goal = "light-conductor"; // empty: the second formula
    std::string second_formula = "thermal_conductivity";
    bool second_high = true;
    bool operator==(const RankChoice&) const = default;
};

/// Two metals set against each other; empty: the first two pinned.
struct VersusChoice {
    std::string first, second;
    bool operator==(const VersusChoice&) const = default;
};

struct CurveChoice {
    std::string property = "resistivity";
    bool log = true;
    bool celsius = false;
    bool log_t = false; // the temperature axis, in kelvin
    bool operator==(const CurveChoice&) const = default;
};

/// How the table of differences is read.
struct CompareChoice {
    std::string find;      // rows that hold these words
    std::string sorted_by; // property that orders the metals; empty: as pinned
    bool falling = true;
    std::vector<std::string> folded; // groups
    bool operator==(const CompareChoice&) const = default;
};

/// What Drop shows beside its magnet and tube.
struct DropChoice {
    std::string metal;    // whose numbers are shown; not pinned: the first pinned
    WallWords wall;       // liner, sleeve, a tube below, a taper
    bool against = false; // a second set-up beside the first
    SetupWords second;    // its magnet and tube
    std::string second_metal;
    std::string face = "race"; // or charts
    bool nitrogen = false;     // the tubes in liquid nitrogen beside those at the temperature of all views
    std::string over = "wall"; // what is swept: wall | bore | length | temperature | budget
    std::string range = "0.5mm:15mm";
    bool operator==(const DropChoice&) const = default;
};

struct MixChoice {
    MixSheetWords words;
    std::string chart = "diagram"; // diagram | conductivity | resistivity
    bool operator==(const MixChoice&) const = default;
};

/// What is asked in All questions, by the question's name.
struct QuestionsChoice {
    std::string question = "plate";
    std::map<std::string, Stated> stated;
    bool operator==(const QuestionsChoice&) const = default;
};

/// The mark (charts/marker.hpp) of each metal that was ever pinned: colour and shape stay the metal's own.
/// Given, not chosen: undo leaves them alone, so two states that differ in nothing else count as the same.
struct KeptMarks {
    std::map<std::string, std::size_t> of; // by slug
    bool operator==(const KeptMarks&) const { return true; }
};

struct ViewState {
    std::string view = "start";    // a name of questions/views.hpp
    std::vector<std::string> pins; // slugs, a mix in its words
    KeptMarks marks;
    std::map<std::string, double> splits; // share of the left panel, where its edge was dragged
    double letters = 1;                   // size, times that of the display
    bool dark = true;
    bool workshop_units = false;
    bool help = false;                    // the page of the view is open beside it
    Stated conditions{ranged_question()}; // of every question: temperature or a range, condition, price form, purity
    std::string selected;                 // slug of the metal on the sheet
    std::string find;
    RankChoice rank;
    CurveChoice curves;
    VersusChoice versus;
    CompareChoice compare;
    SetupWords drop_setup; // magnet and tube of Drop; each word was readable when it was committed
    DropChoice drop;
    MixChoice mix; // what is melted together, and what is asked of it
    QuestionsChoice questions;
    Stated pour{pour_question()};      // what is cast, and with what
    std::string pour_face = "drawing"; // or sheet
    std::string shelf = "trial";       // the list shown in Trials
    std::string source;                // key of the source shown
    std::string find_source;
    bool operator==(const ViewState&) const = default;
};

/// What the first start shows: a scenario already answered.
ViewState first_view(const Catalogue& catalogue);

/// The same state without what this catalogue doesn't know (an older file, another reference).
ViewState fitted(ViewState view, const Catalogue& catalogue);

/// What is stated of a question in All questions; when it is first asked, magnet and tube are those of Drop, the metal
/// the selected.
Stated& stated_for(ViewState& view, const QuestionTable& question);

/// Amounts of money that stand in the fields until others are typed, in the currency that is shown.
struct UsualAmounts {
    std::string budget, range;
};
UsualAmounts usual_amounts(const Catalogue& catalogue);

/// What was typed stands; what was not is in the currency that is shown now.
void follow_currency(ViewState& view, const UsualAmounts& before, const UsualAmounts& now);

bool is_pinned(const ViewState& view, const std::string& slug);
void toggle_pin(ViewState& view, const std::string& slug);
/// A mark for each pinned metal that has none: the one least in use among the pinned, then among all.
void give_marks(ViewState& view);
/// Of a metal that was pinned once; 0 of another.
std::size_t mark_of(const ViewState& view, const std::string& slug);
/// An earlier state, with the marks given since.
void take_back(ViewState& view, const ViewState& earlier);

} // namespace pourbook
