#include "gui/actions/open_asked.hpp"

#include "gui/actions/actions.hpp"
#include "questions/pour/defects.hpp"
#include "questions/rank/goal_plan.hpp"

#include <regex>

namespace pourbook {
namespace {

void pin(ViewState& view, const std::string& slug) {
    if (!is_pinned(view, slug)) view.pins.push_back(slug);
}

void put_where_stated(std::string& word, const std::string& stated) {
    if (!stated.empty()) word = stated;
}

/// The goal or the bare property that is asked about, else the usual goal.
void take_goal(Session& s, const QuestionRead& read) {
    RankChoice& rank = s.view.rank;
    const Goal* usual = usual_goal(s.catalogue);
    rank.goal = read.goal;
    if (rank.goal.empty() && read.property.empty() && usual) rank.goal = usual->id;
    if (rank.goal.empty()) rank.formula = read.property;
    rank.best_high = true;
    rank.holding = RankChoice{}.holding;
    rank.where.clear();
    rank.include_unusual = false;
}

void open_values(Session& s, const QuestionRead& read) {
    if (read.metals.size() == 1) return show_metal(s, read.metals.front());
    for (const std::string& slug : read.metals) pin(s.view, slug);
    s.view.view = "compare";
}

void open_versus(Session& s, const QuestionRead& read) {
    for (const std::string& slug : {read.metals[0], read.metals[1]}) pin(s.view, slug);
    s.view.versus = {read.metals[0], read.metals[1]};
    take_goal(s, read);
    s.view.view = "compare";
}

void open_rank(Session& s, const QuestionRead& read) {
    take_goal(s, read);
    s.view.rank.only_pinned = false;
    s.view.rank.on_shelf = read.from_shelf;
    s.view.rank.two_goals = false;
    s.view.view = "rank";
}

void open_drop(Session& s, const QuestionRead& read) {
    pin(s.view, read.metals.front());
    s.view.drop.metal = read.metals.front();
    s.view.drop.against = false;
    put_where_stated(s.view.drop_setup.magnet, read.magnet);
    put_where_stated(s.view.drop_setup.grade, read.grade);
    put_where_stated(s.view.drop_setup.tube, read.tube);
    if (!read.grade.empty()) s.view.drop_setup.br = s.view.drop_setup.surface_field = {};
    s.view.view = "drop";
}

void open_pour(Session& s, const QuestionRead& read) {
    s.view.pour.set("metal", read.metals.front()).set("part", read.part);
    s.view.view = "pour";
}

/// "1kg copper + 100g tin": a stock each.
std::vector<MixStockWords> stocks_in(const std::string& words) {
    static const std::regex stock(R"(\s*([\d.,]+ ?[a-z]+) ([^+]*[^+\s])\s*)");
    std::vector<MixStockWords> out;
    for (auto at = std::sregex_iterator(words.begin(), words.end(), stock); at != std::sregex_iterator(); ++at)
        out.push_back({(*at)[1].str(), (*at)[2].str(), ""});
    return out;
}

void open_mix(Session& s, const QuestionRead& read) {
    MixSheetWords& words = s.view.mix.words;
    words = {};
    words.stocks = stocks_in(read.mix);
    s.view.view = "mix";
}

} // namespace

void open_question(Session& s, const QuestionRead& read) {
    const bool at_a_temperature = read.asked == Asked::value || read.asked == Asked::versus ||
                                  read.asked == Asked::rank || read.asked == Asked::drop;
    if (at_a_temperature || !read.at.empty()) s.view.conditions.set("at", read.at);
    switch (read.asked) {
    case Asked::value:
    case Asked::sheet:
        return open_values(s, read);
    case Asked::versus:
        return open_versus(s, read);
    case Asked::rank:
        return open_rank(s, read);
    case Asked::drop:
        return open_drop(s, read);
    case Asked::pour:
        return open_pour(s, read);
    case Asked::mix:
        return open_mix(s, read);
    case Asked::defect:
        if (const auto found = defects(s.catalogue, read.defect)) return show_defect(s, found->front().name);
        return;
    case Asked::nothing:
        return;
    }
}

void open_entry(Session& s, const AskFound& found, const AskEntry& entry) {
    using Named = AskEntry::Kind;
    switch (entry.kind) {
    case Named::question:
        return open_question(s, found.read);
    case Named::temperature:
        s.view.conditions.set("at", entry.id);
        return;
    case Named::view:
    case Named::command:
        return action(entry.id)->run(s);
    case Named::metal:
        return show_metal(s, entry.id);
    case Named::goal:
        return show_goal(s, entry.id);
    case Named::defect:
        return show_defect(s, entry.id);
    case Named::help:
        return show_help(s, entry.id);
    case Named::source:
        return show_source(s, entry.id);
    }
}

} // namespace pourbook
