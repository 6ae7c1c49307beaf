// The commands of the questions that are answered in words, all made from their tables.
#include "answers/askers.hpp"
#include "cli/options.hpp"
#include "cli/short_words.hpp"
#include "cli/table_words.hpp"
#include "core/quantity/format.hpp"
#include "core/ranking/formula.hpp"
#include "platform/files.hpp"
#include "questions/rank/goal_plan.hpp"

namespace pourbook {
namespace {

struct Asked {
    Stated stated;
    TableWords table;
    ShortWords brief;
};

/// What the usual goal weighs, and where the metal melts.
std::vector<std::string> usual_properties(const Catalogue& catalogue) {
    std::vector<std::string> out;
    if (const Goal* goal = usual_goal(catalogue))
        if (const Result<Formula> formula = Formula::parse(goal->formula, catalogue)) out = formula->names();
    for (const char* more : {"solidus", "liquidus"})
        if (catalogue.property(more)) out.emplace_back(more);
    return out;
}

int answer(const Context& context, const Catalogue& catalogue, const Asker& asker, const Asked& asked) {
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    Asking asking{catalogue, context.own, *units, context.date};
    const Stated stated = with_usual(context, catalogue, asked.stated);
    if (asked.brief.asked()) {
        const Result<std::string> words = (asked.brief.plain ? asker.plain : asker.brief)(stated, asking);
        if (!words) return context.failed(words.problem());
        return asked.brief.plain ? context.printed(*words) : context.told(*words);
    }
    if (!asked.table.asked()) {
        const Result<std::string> words = (context.json ? asker.json : asker.text)(stated, asking);
        if (!words) return context.failed(words.problem());
        return context.json ? context.printed(*words) : context.told(*words);
    }
    return answer_table(context, asked.table, [&](UnitSystem in) {
        asking.units = in;
        return asker.table(stated, asking);
    });
}

void declare(Context& context, const Asker& asker) {
    const auto asked = std::make_shared<Asked>(Asked{Stated(*asker.question), {}, {}});
    CLI::App* c = command_of(context, asked->stated);
    if (asker.table && asker.question->has("to"))
        with_format_word(c, asked->table); // "to" means something else there
    else if (asker.table)
        with_table_words(c, asked->table);
    if (asker.brief) with_short_words(c, asked->brief);
    c->callback([&context, asked, &asker] {
        context.answer = [&context, asked, &asker](const Catalogue& catalogue) {
            return answer(context, catalogue, asker, *asked);
        };
    });
}

} // namespace

Stated with_usual(const Context& context, const Catalogue& catalogue, const Stated& stated) {
    const auto say = [&](const std::string& remark) {
        if (!context.json) context.remark(remark);
    };
    Stated out = stated;
    const std::string& name = stated.question().name;
    if (name == "compare" && !stated.states("show")) {
        out.set_all("show", usual_properties(catalogue));
        say("no properties were named, so " + joined(out.texts("show")) + " are shown; --show P,P takes others");
    }
    const Goal* goal = usual_goal(catalogue);
    const bool needs_goal = name == "rank" || name == "versus";
    if (!goal || !needs_goal || stated.states("goal") || stated.states("formula")) return out;
    std::vector<std::string> others;
    for (const Goal& g : catalogue.goals)
        if (g.id != goal->id) others.push_back(g.id);
    say("no goal was named, so " + goal->id + " (" + goal->label +
        ") is taken; --goal NAME takes another: " + joined(others));
    return out.set("goal", goal->id);
}

void declare_asked(Context& context) {
    for (const Asker& asker : askers()) declare(context, asker);
}

} // namespace pourbook
