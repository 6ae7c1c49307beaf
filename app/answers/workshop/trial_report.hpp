// Trials with what they show, as text and JSON.
#pragma once

#include "core/workshop/workshop.hpp"
#include "questions/say/shown.hpp"
#include "questions/workshop/trial.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// An entry with its result or the reason why there is none.
struct ShownTrial {
    Entry entry;
    Result<TrialResult> result;
};

/// Like json_of_entries, with "shows" in each (left out on import).
std::string json_of_trials(const std::vector<ShownTrial>& trials);
/// What one trial shows, a sentence each.
std::vector<std::string> lines_of(const ShownTrial& trial);
std::string text_of_trials(const std::vector<ShownTrial>& trials);

} // namespace pourbook
