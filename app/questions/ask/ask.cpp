#include "questions/ask/ask.hpp"

#include "core/quantity/format.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/metals/temperature_words.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr std::size_t shown_first = 5;

class Answering {
public:
    Answering(const Catalogue& catalogue, const AskRequest& request, QuestionRead read)
        : catalogue_(catalogue), request_(request), under_(request.under) {
        out_.read = std::move(read);
    }

    Result<AskResult> run() {
        if (!out_.read.at.empty()) {
            const Result<double> t = temperature_from(out_.read.at);
            if (!t) return t.problem();
            under_.figure.temperature_K = under_.part.temperature_K = *t;
        }
        cautions();
        if (!out_.read.missing.empty())
            out_.fault = "still needed: " + joined(out_.read.missing, "; ");
        else
            answer();
        return std::move(out_);
    }

private:
    void answer() {
        const QuestionRead& read = out_.read;
        switch (read.asked) {
        case Asked::value:
            for (const std::string& metal : read.metals) add_value(metal, read.property);
            break;
        case Asked::sheet:
            for (const char* property : {"conductivity", "density", "solidus", "liquidus", "price"})
                add_value(read.metals[0], property);
            if (!out_.values.empty()) out_.fault.clear();
            break;
        case Asked::versus:
            keep(versus(catalogue_, {read.metals[0], read.metals[1], goal(), under_.part}), out_.versus);
            break;
        case Asked::rank:
            keep(rank(catalogue_, ranking()), out_.rank);
            break;
        case Asked::drop:
            keep(drop(catalogue_, falling()), out_.drop);
            break;
        case Asked::defect:
            if (const auto found = defects(catalogue_, read.defect)) out_.defects = *found;
            break;
        default:
            break; // a plan or a mixture is answered in whole by its command
        }
    }

    template <class T> void keep(const Result<T>& result, std::optional<T>& place) {
        if (result)
            place = *result;
        else
            out_.fault = result.problem().text;
    }

    void add_value(const std::string& metal, const std::string& property) {
        const Result<ValueResult> found = value(catalogue_, {metal, property, under_.figure});
        if (found)
            out_.values.push_back(*found);
        else
            out_.fault = found.problem().text;
    }

    GoalWords goal() const {
        GoalWords words;
        words.goal = out_.read.goal;
        if (words.goal.empty()) {
            words.formula = out_.read.property;
            words.best_high = !out_.read.least;
        }
        const Goal* usual = usual_goal(catalogue_);
        if (words.goal.empty() && words.formula.empty() && usual) words.goal = usual->id;
        return words;
    }

    RankRequest ranking() const {
        RankRequest r;
        r.goal = goal();
        r.conditions = under_.part;
        r.top = shown_first;
        if (out_.read.from_shelf) r.from = request_.shelf;
        return r;
    }

    DropRequest falling() const {
        DropRequest r;
        r.setup.magnet = out_.read.magnet;
        r.setup.grade = out_.read.grade;
        r.setup.tube = out_.read.tube;
        r.metal = out_.read.metals[0];
        r.conditions = under_.part;
        return r;
    }

    void cautions() {
        for (const std::string& slug : out_.read.metals)
            for (const Caution* c : catalogue_.cautions_for(*catalogue_.metal(slug)))
                if (std::find(out_.cautions.begin(), out_.cautions.end(), c->text) == out_.cautions.end())
                    out_.cautions.push_back(c->text);
    }

    const Catalogue& catalogue_;
    const AskRequest& request_;
    AskUnder under_;
    AskResult out_;
};

} // namespace

Result<AskResult> ask(const Catalogue& catalogue, const AskRequest& request) {
    QuestionRead read = read_question(catalogue, request.words);
    if (read.asked == Asked::nothing) {
        std::string near;
        for (const Metal* metal : search_metals(catalogue, request.words))
            if (near.size() < 60) near += (near.empty() ? ": near are " : ", ") + metal->slug;
        return unreadable("'" + request.words + "': no metal, property, goal or defect is named that is known here" +
                          near + ": see `pourbook metals`, `pourbook help`");
    }
    return Answering(catalogue, request, std::move(read)).run();
}

} // namespace pourbook
