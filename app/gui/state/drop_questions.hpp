// What Drop asks: the pinned metals' falls, a sweep over them, and two set-ups side by side; off the frame thread,
// worked out again only when the question changes. A null answer means "being worked out".
#pragma once

#include "gui/state/background.hpp"
#include "gui/state/view_state.hpp"
#include "gui/state/workshop_desk.hpp"
#include "questions/drop/against.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/workshop/measured_falls.hpp"

#include <deque>

namespace pourbook {

class DropQuestions {
public:
    /// All outlive it.
    DropQuestions(const Catalogue& catalogue, const ViewState& view, WorkshopDesk& workshop, BackgroundWorks& works)
        : catalogue_(catalogue), view_(view), workshop_(workshop), falls_(works), cold_(works), sweep_(works),
          against_(works) {}

    struct FallsBeside {
        std::vector<DropOfMetal> drops;
        MeasuredFalls measured; // of the workshop's trials with this set-up
    };
    using Falls = Result<FallsBeside>;
    const Falls* falls(const Conditions& conditions);
    /// The same with the tubes in liquid nitrogen.
    const Falls* falls_in_nitrogen(Conditions conditions);
    const Falls* last_falls() const { return falls_.last_good(); } // while the newest are refused
    const Result<SweepResult>* sweep(const Conditions& conditions);
    const Result<AgainstResult>* against(const Conditions& conditions);
    /// Magnet and tube with the wall's other parts as they read. Its walk off the axis is dear: worked out once and
    /// kept until a word of it changes. Stands until the next such question.
    const Result<DropSetup>& setup(const SetupWords& words, const WallWords& wall, const Conditions& conditions);
    void forget_setups() { setups_.clear(); }

    /// The pinned metal whose numbers are shown; empty where nothing is pinned.
    std::string metal() const;
    std::string second_metal() const;
    bool falls_are_current() const { return !falls_.working(); }
    std::size_t falls_serial() const { return falls_.serial(); }
    std::size_t nitrogen_serial() const { return cold_.serial(); }
    std::size_t sweep_serial() const { return sweep_.serial(); }
    std::size_t against_serial() const { return against_.serial(); }

private:
    struct FallsAsked {
        DropRequest request;
        std::vector<std::string> metals;
        std::size_t trials = 0; // serial of the workshop
        bool operator==(const FallsAsked&) const = default;
    };
    struct SweepAsked {
        SweepRequest request;
        std::string over, range;
        bool operator==(const SweepAsked&) const = default;
    };
    struct ReadSetup {
        DropRequest asked;
        Result<DropSetup> made;
    };
    DropRequest request(const SetupWords& setup, const Conditions& conditions) const;
    Result<DropSetup> read(const DropRequest& asked) const;

    const Catalogue& catalogue_;
    const ViewState& view_;
    WorkshopDesk& workshop_;
    const Falls* falls_by(Background<FallsAsked, Falls>& by, const Conditions& conditions);
    Background<FallsAsked, Falls> falls_, cold_;
    Background<SweepAsked, Result<SweepResult>> sweep_;
    Background<AgainstRequest, Result<AgainstResult>> against_;
    std::deque<ReadSetup> setups_; // the newest first
};

} // namespace pourbook
