// The views of the window, in the order of the strip at its top: names for the command line, the state file and the
// help; labels and what each answers for the window. The keys F1, F2 ... follow the order of `keys`.
#pragma once

#include <array>
#include <string_view>

namespace pourbook {

struct ViewName {
    const char* name;
    const char* label;
    const char* answers;
    int function_key;
};

constexpr std::array view_names = {
    ViewName{"start", "Start", "the race, four questions with their answers, and a tour of one project", 12},
    ViewName{"metals", "Metals", "find a metal and read its sheet", 1},
    ViewName{"rank", "Rank", "which metal does the job best", 2},
    ViewName{"curves", "Curves", "a property against temperature", 3},
    ViewName{"compare", "Compare", "the pinned metals side by side", 4},
    ViewName{"drop", "Drop", "a magnet falling through a tube: times, drag, how thick is thick enough", 5},
    ViewName{"mix", "Mix", "what a blend of stocks or a composition is, and is worth", 6},
    ViewName{"pour", "Pour", "a casting plan: pattern, charge, temperatures, cost", 7},
    ViewName{"questions", "All questions",
             "any question with all its fields: a plate, a measured fall, readings, a sweep ...", 11},
    ViewName{"trials", "Trials", "what was measured, what is on the shelf, what the workshop can do", 8},
    ViewName{"sources", "Sources", "where the numbers come from", 9},
};

constexpr bool is_view(std::string_view name) {
    for (const ViewName& view : view_names)
        if (view.name == name) return true;
    return false;
}

} // namespace pourbook
