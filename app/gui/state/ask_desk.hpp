// What the Ask field finds while words are typed: the question as the command line's `ask` reads it, its sentence, and
// whatever bears such a name. Worked out off the frame thread; a null answer means "being worked out".
#pragma once

#include "gui/state/background.hpp"
#include "gui/state/workshop_desk.hpp"
#include "questions/ask/ask.hpp"
#include "questions/say/shown.hpp"

#include <array>
#include <string>
#include <vector>

namespace pourbook {

/// The field as it stands; lasts for a moment.
struct AskField {
    std::string text;
    std::size_t at = 0;  // the entry that Return opens
    bool focus = false;  // take the keys in the next frame
    bool open = false;   // what was found is shown below
    bool go = false;     // Return was pressed before the answer was there
    bool active = false; // words are being typed
};

struct AskEntry {
    enum class Kind { question, temperature, view, command, metal, goal, defect, help, source };
    Kind kind = Kind::question;
    std::string label, detail;
    std::string id; // slug, key, name or action; of a temperature its words
};
const char* name_of(AskEntry::Kind kind);

/// Entries in the order in which Return would take them.
struct AskFound {
    std::string words;
    QuestionRead read;
    std::vector<AskEntry> entries;
};

struct AskSaid {
    std::string words;
    std::string sentence; // as the command line says it; empty where only the view answers
    std::string fault, caution;
};

/// A question of the first look, answered on its card.
struct StartCard {
    const char* title;
    const char* words; // as they would be typed
};
constexpr std::array<StartCard, 4> start_cards = {
    StartCard{"How hot is aluminium A356 poured?", "pouring temperature of a356"},
    StartCard{"Silicon bronze or gunmetal: which brakes harder?", "silicon bronze or gunmetal as a better brake"},
    StartCard{"Which metal brakes most for its money?", "cheapest brake"},
    StartCard{"Why did the casting sink?", "why do castings sink"}};

AskFound find_asked(const Catalogue& catalogue, const std::string& words);
AskSaid say_asked(const Catalogue& catalogue, const std::string& words, const std::vector<std::string>& shelf,
                  UnitSystem units, const AskUnder& under);

class AskDesk {
public:
    /// Both outlive it.
    AskDesk(const Catalogue& catalogue, WorkshopDesk& workshop, BackgroundWorks& works)
        : catalogue_(catalogue), workshop_(workshop), found_(works),
          said_(works), cards_{Sentence(works), Sentence(works), Sentence(works), Sentence(works)} {}

    const AskFound* found(const std::string& words);
    const AskSaid* said(const std::string& words, UnitSystem units, const AskUnder& under);
    /// Of start_cards.
    const AskSaid* card(std::size_t i, UnitSystem units, const AskUnder& under);

private:
    struct Asked {
        std::string words;
        UnitSystem units = UnitSystem::shown;
        AskUnder under = {};
        std::size_t workshop = 0; // its serial
        bool operator==(const Asked&) const = default;
    };
    using Sentence = Background<Asked, AskSaid>;
    const AskSaid* say(Sentence& by, const std::string& words, UnitSystem units, const AskUnder& under);

    const Catalogue& catalogue_;
    WorkshopDesk& workshop_;
    Background<Asked, AskFound> found_;
    Sentence said_;
    std::array<Sentence, start_cards.size()> cards_;
};

} // namespace pourbook
