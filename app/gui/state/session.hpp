// The window's model: the catalogue, what the person chose, and the answers, each kept under its request and worked out
// again only when the request changes. Slow questions run off the frame thread; a null answer means "being worked out".
#pragma once

#include "answers/askers.hpp"
#include "answers/parts/source_index.hpp"
#include "answers/pour/pour_report.hpp"
#include "answers/workshop/trial_report.hpp"
#include "charts/words.hpp"
#include "gui/state/ask_desk.hpp"
#include "gui/state/background.hpp"
#include "gui/state/drop_questions.hpp"
#include "gui/state/history.hpp"
#include "gui/state/view_state.hpp"
#include "gui/state/workshop_desk.hpp"
#include "questions/metals/check.hpp"
#include "questions/metals/curve.hpp"
#include "questions/metals/sheet.hpp"
#include "questions/mix/mix_sheet.hpp"
#include "questions/rank/tradeoff.hpp"
#include "questions/rank/versus.hpp"
#include "questions/workshop/measured_beside.hpp"

#include <chrono>
#include <functional>
#include <optional>
#include <unordered_map>

namespace pourbook {

/// The figures the list of metals shows.
struct MetalFigures {
    Result<Evaluated> solidus, liquidus, conductivity;
};

/// The entry of the workshop's file that is being filled in.
struct EntryDesk {
    std::string kind;
    Entry entry, as_opened;
    std::string fault;
    std::size_t serial = 0; // of the workshop when it was opened
};

/// A casting plan ready to be read: the page as printed, and the keys of its sources.
struct PourSheet {
    PourResult plan;
    Page page;
    std::vector<std::string> sources;
    casting::Workshop limits; // of the workshop, whether the plan keeps them or not
    std::string refusal;      // why it can't be poured so; then the plan is the one without those limits
};

struct PourAsked {
    Stated stated;
    UnitSystem units = UnitSystem::shown;
    bool operator==(const PourAsked&) const = default;
};

struct SaidAsked {
    Stated stated;
    UnitSystem units = UnitSystem::shown;
    bool operator==(const SaidAsked&) const = default;
};

struct RankAsked {
    RankRequest request;
    bool at_shelf_prices = false;
    bool operator==(const RankAsked&) const = default;
};

/// What a trial shows, a sentence each.
struct TrialLines {
    std::int64_t id = 0;
    std::string name;
    std::vector<std::string> lines;
    std::optional<MeasuredBeside> beside; // where a conductivity was measured
};

/// What lasts for a moment and is never saved.
struct Passing {
    bool focus_find = false;
    bool evidence = false; // asked for by its shortcut
    AskField ask;
    bool scroll_to_selected = true;
    bool sheet_open = false; // of the selected metal, in place of the list: where the window is narrow
    bool quit = false;
    std::string link_fault = {}; // of a link that can't be read, until the next click
    std::string leaving = {};    // "save picture", "copy table" ...: asked for by a shortcut, taken by what is shown
    EntryDesk entry;
    std::map<std::string, Entry> fresh = {}; // the last row of each grid, by kind
    std::string told = {};                   // what was kept or taken back last
    std::string formula_name = {};           // under which a formula is being kept
    std::string seen;                        // defect chosen in Trials
};

class Session {
public:
    /// The reference without the workshop's own.
    Session(const Catalogue& reference, ViewState start, std::function<void()> wake, Workshop* workshop = nullptr);

private:
    const Catalogue& reference_;
    Catalogue own_;   // the reference, the workshop's own and the mixes pinned
    Catalogue shelf_; // the same with the prices paid for what is on the shelf
    BackgroundWorks works_;

public:
    const Catalogue& catalogue = own_; // changes only in keep_catalogue()
    WorkshopDesk workshop;
    ViewState view;
    Passing passing;
    std::string date;     // of today, "2026-11-25", for what is saved
    MeshReader read_mesh; // of STL files, set once by whoever opens the window
    History history;

    /// Call between frames: brings the workshop's own and the mixes that are pinned or chosen into the catalogue, as
    /// soon as no question rests on it.
    void keep_catalogue();

    UnitSystem units() const { return view.workshop_units ? UnitSystem::workshop : UnitSystem::shown; }
    /// As stated for all questions, read once for each statement; a range counts where a goal does.
    const RangedConditions& asked_conditions() const;
    /// The same where a single temperature counts: a range's lower end.
    const Conditions& conditions() const { return asked_conditions().from; }
    /// The same for a question about a part: a casting, unless the handbook's metal is asked for.
    Conditions part_conditions() const;
    /// Those of the figures that the view shows.
    Conditions view_conditions() const;
    /// The same for what is asked in words, which name a temperature themselves: that of the room else.
    AskUnder ask_under() const;
    /// A question's own statement with these conditions.
    Stated asked(const Stated& own) const { return under(own, view.conditions, catalogue); }

    const std::vector<const Metal*>& found(); // metals that match view.find
    const Result<SheetResult>& sheet(const std::string& slug);
    const MetalFigures& figures(const Metal& metal); // valid until the next call
    const Result<RankResult>* ranking();
    const Result<CurveResult>* curves();
    const MixSheet* mix();
    std::size_t mix_serial() const { return mix_.serial(); }
    const Result<PourSheet>* pour_sheet();
    std::size_t pour_serial() const { return pour_.serial(); }
    const Result<PourSheet>* last_pour_sheet() const { return pour_.last_good(); } // while the newest is refused
    /// A question of Ask, answered in words.
    const Result<std::string>* said(const Stated& stated);
    Asking asking() const { return {catalogue, workshop.data(), units(), date}; }
    /// Every trial of the workshop with what it shows.
    const std::vector<TrialLines>* trials();
    /// What of the workshop's own could not be used in answers, and why.
    const std::vector<std::string>& remarks() const { return remarks_; }
    const CheckResult* self_check();
    SourceIndex& sources();

    GoalWords goal_words() const;
    RankRequest rank_request() const;
    /// The two metals set against each other: as chosen, else the first two pinned; empty where there are none.
    VersusChoice compared() const;
    const Result<VersusResult>* versus();
    /// The goal asked about against view.rank.second_goal.
    const Result<TradeoffResult>* tradeoff();
    BackgroundWork& ranking_work() { return ranking_; } // how far it is, and to stop it
    BackgroundWork& tradeoff_work() { return tradeoff_; }
    std::size_t tradeoff_serial() const { return tradeoff_.serial(); }
    bool ranking_is_current() const { return !ranking_.working(); }
    std::size_t ranking_serial() const { return ranking_.serial(); }
    std::size_t curves_serial() const { return curves_.serial(); }
    /// A change of the file that was made here, in words.
    void note_kept(const std::string& words);
    /// Takes back what was done last, a choice or a change of the file, and tells which.
    void undo_last();
    void redo_last();
    bool working() const;
    /// Stops all work; false where some of it still runs after this time.
    bool ended_in(std::chrono::milliseconds time);
    DropQuestions drop;
    AskDesk ask;

private:
    Background<RankAsked, Result<RankResult>> ranking_;
    Background<TradeoffRequest, Result<TradeoffResult>> tradeoff_;
    Background<VersusRequest, Result<VersusResult>> versus_;
    Background<CurveRequest, Result<CurveResult>> curves_;
    Background<MixSheetWords, MixSheet> mix_;
    Background<PourAsked, Result<PourSheet>> pour_;
    Background<std::size_t, std::vector<TrialLines>> trials_; // of the workshop as it was at that serial
    Background<bool, CheckResult> check_;
    Background<SaidAsked, Result<std::string>> said_;
    GoalWords with_setup(GoalWords goal) const; // magnet and tube where the goal needs them

    std::unordered_map<std::string, Result<SheetResult>> sheets_; // by slug, under these conditions
    Conditions sheets_at_;
    std::unordered_map<std::string, MetalFigures> figures_; // the same
    Conditions figures_at_;
    mutable std::optional<Stated> conditions_read_;
    mutable RangedConditions conditions_;
    std::optional<SourceIndex> sources_;
    std::optional<std::string> searched_;
    std::vector<const Metal*> found_;
    std::vector<std::string> wanted_mixes() const;
    void rebuild(std::vector<std::string> mixes);
    /// The profile's units and the kept pins, at the start and whenever they become others; what is chosen in the
    /// window meanwhile stands.
    void take_profile();
    std::string profile_units_;
    std::vector<std::string> kept_pins_;
    std::vector<std::string> remarks_;
    std::vector<std::string> mixes_;  // in own_
    std::size_t workshop_serial_ = 0; // of what is in own_
};

} // namespace pourbook
