// Everything a key or a command named in Ask can do, in one table. No drawing here.
#pragma once

#include "gui/state/session.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Key codes: capital letters as in ASCII; the rest as the window library counts them (shell/ asserts that).
namespace keys {
constexpr int f1 = 290;
}

struct Shortcut {
    bool ctrl = false, shift = false;
    int key = 0;
    std::string text() const; // "Ctrl+F", "F1"
};

struct Action {
    const char* id;
    const char* label;
    const char* help;
    Shortcut shortcut; // key 0: none
    void (*run)(Session&);
};

const std::vector<Action>& actions();
const Action* action(const std::string& id);
/// Actions whose label or help contains every word, nearest first (questions/metals/find_words), else in table order.
std::vector<const Action*> matching_actions(const std::string& words);

/// Steps between views and metals that several panels share.
void show_metal(Session& session, const std::string& slug);
void show_goal(Session& session, const std::string& id);
/// Among what may have been seen on a casting.
void show_defect(Session& session, const std::string& name);
/// The page of a view, beside that view.
void show_help(Session& session, const std::string& page);
void show_source(Session& session, const std::string& key);

} // namespace pourbook
