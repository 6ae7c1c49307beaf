#include "gui/state/session.hpp"

#include "platform/thread.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/say/in_units_of.hpp"
#include "questions/workshop/own_pour.hpp"

#include <algorithm>
#include <iterator>

namespace pourbook {
namespace {

constexpr std::size_t most_sheets = 200, most_figures = 1000;

} // namespace

Session::Session(const Catalogue& reference, ViewState start, std::function<void()> wake, Workshop* file)
    : reference_(reference), works_{std::move(wake)}, workshop(file), view(std::move(start)), history(view),
      drop(own_, view, workshop, works_), ask(own_, workshop, works_), ranking_(works_), tradeoff_(works_),
      versus_(works_), curves_(works_), mix_(works_), pour_(works_), trials_(works_), check_(works_), said_(works_) {
    rebuild(wanted_mixes());
}

bool Session::ended_in(std::chrono::milliseconds time) {
    const auto until = std::chrono::steady_clock::now() + time;
    for (BackgroundWork* w : works_.all) w->cancel();
    const auto running = [](BackgroundWork* w) { return w->busy(); };
    while (std::any_of(works_.all.begin(), works_.all.end(), running)) {
        if (std::chrono::steady_clock::now() > until) return false;
        platform::pause_ms(5);
    }
    return true;
}

void Session::note_kept(const std::string& words) {
    history.note_file(view);
    passing.told = words;
}

void Session::undo_last() {
    if (!history.can_undo()) {
        passing.told = "nothing is left to take back";
        return;
    }
    const bool of_file = history.undoes_file();
    take_back(view, history.undo());
    if (!of_file) {
        passing.told = "taken back: a choice in the window";
        return;
    }
    const std::string words = workshop.last_change();
    const auto problem = workshop.undo();
    passing.told = problem ? problem->text : "taken back: " + words;
}

void Session::redo_last() {
    const bool of_file = history.redoes_file();
    take_back(view, history.redo());
    if (!of_file) return;
    const auto problem = workshop.redo();
    passing.told = problem ? problem->text : "done again: " + workshop.last_change();
}

bool Session::working() const {
    return std::any_of(works_.all.begin(), works_.all.end(), [](const BackgroundWork* w) { return w->working(); });
}

std::vector<std::string> Session::wanted_mixes() const {
    std::vector<std::string> wanted;
    std::copy_if(view.pins.begin(), view.pins.end(), std::back_inserter(wanted), names_mix);
    for (const std::string& chosen : {view.selected, view.pour.text("metal")})
        if (names_mix(chosen) && std::find(wanted.begin(), wanted.end(), chosen) == wanted.end())
            wanted.push_back(chosen);
    return wanted;
}

void Session::keep_catalogue() {
    workshop.look();
    for (BackgroundWork* w : works_.all) w->tick();
    std::vector<std::string> wanted = wanted_mixes();
    if (wanted == mixes_ && workshop.serial() == workshop_serial_) return;
    bool busy = false;
    for (BackgroundWork* w : works_.all) busy = w->busy() || busy;
    if (busy) return;
    rebuild(std::move(wanted));
}

void Session::rebuild(std::vector<std::string> mixes) {
    for (BackgroundWork* w : works_.all) w->forget();
    sheets_.clear();
    figures_.clear();
    drop.forget_setups();
    sources_.reset();
    searched_.reset();
    workshop_serial_ = workshop.serial();
    const UsualAmounts before = usual_amounts(own_);
    own_ = reference_;
    remarks_.clear();
    take_profile();
    if (workshop.available()) {
        WithWorkshop with = with_workshop(std::move(own_), workshop.data());
        own_ = std::move(with.catalogue);
        remarks_ = std::move(with.remarks);
    }
    follow_currency(view, before, usual_amounts(own_));
    if (!mixes.empty())
        if (Result<Catalogue> extended = with_mixes(own_, mixes)) // only words that were read are pinned
            own_ = std::move(*extended);
    mixes_ = std::move(mixes);
    shelf_ = workshop.data().stock.empty() ? Catalogue{} : with_lot_prices(own_, workshop.data());
}

const RangedConditions& Session::asked_conditions() const {
    if (!conditions_read_ || !(*conditions_read_ == view.conditions)) {
        const Result<RangedConditions> read = ranged_question().read(view.conditions, catalogue);
        conditions_ = read ? *read : RangedConditions{}; // only what can be read is kept
        conditions_read_ = view.conditions;
    }
    return conditions_;
}

AskUnder Session::ask_under() const {
    AskUnder under;
    under.figure = conditions();
    under.part = part_conditions();
    under.figure.temperature_K = under.part.temperature_K = room_temperature_K;
    return under;
}

Conditions Session::part_conditions() const {
    Conditions c = conditions();
    if (!view.conditions.states("as") && !c.casting) c.casting.emplace();
    return c;
}

Conditions Session::view_conditions() const {
    const bool of_part = view.view == "start" || view.view == "rank" || view.view == "drop" || view.view == "pour";
    return of_part ? part_conditions() : conditions();
}

void Session::take_profile() {
    const WorkshopData& data = workshop.data();
    if (data.profile.units != profile_units_) {
        profile_units_ = data.profile.units;
        if (!profile_units_.empty()) view.workshop_units = profile_units_ == "workshop";
    }
    for (const std::string& pin : data.pins)
        if (std::find(kept_pins_.begin(), kept_pins_.end(), pin) == kept_pins_.end() && !is_pinned(view, pin))
            view.pins.push_back(pin);
    give_marks(view);
    kept_pins_ = data.pins;
}

const std::vector<const Metal*>& Session::found() {
    if (searched_ != view.find) {
        found_ = search_metals(catalogue, view.find);
        searched_ = view.find;
    }
    return found_;
}

const Result<SheetResult>& Session::sheet(const std::string& slug) {
    const SheetRequest request{slug, conditions()};
    if (!(sheets_at_ == request.conditions) || sheets_.size() > most_sheets) sheets_.clear();
    sheets_at_ = request.conditions;
    if (const auto at = sheets_.find(slug); at != sheets_.end()) return at->second;
    return sheets_.emplace(slug, pourbook::sheet(catalogue, request)).first->second;
}

const MetalFigures& Session::figures(const Metal& metal) {
    const Conditions& c = conditions();
    if (!(figures_at_ == c) || figures_.size() > most_figures) figures_.clear();
    figures_at_ = c;
    if (const auto known = figures_.find(metal.slug); known != figures_.end()) return known->second;
    const auto at = [&](const char* property) { return evaluate(catalogue, metal, property, c); };
    return figures_.emplace(metal.slug, MetalFigures{at("solidus"), at("liquidus"), at("conductivity")}).first->second;
}

const Result<CurveResult>* Session::curves() {
    CurveRequest request;
    request.property = view.curves.property;
    request.metals = view.pins;
    request.condition = conditions().condition;
    return curves_.ask(request, [this, request] { return curve(catalogue, request); });
}

const MixSheet* Session::mix() {
    const MixSheetWords& w = view.mix.words;
    return mix_.ask(w, [this, w] { return mix_sheet(catalogue, w); });
}

const Result<PourSheet>* Session::pour_sheet() {
    const PourAsked question{asked(view.pour), units()};
    return pour_.ask(question, [this, question, own = workshop.shared_data()]() -> Result<PourSheet> {
        Result<PourRequest> request = pour_request_from(question.stated, read_mesh, catalogue);
        if (!request) return request.problem();
        *request = with_own_pour(catalogue, std::move(*request), *own);
        const Result<PourResult> plan = pour_in_workshop(catalogue, *request, *own);
        const bool refused = !plan && plan.problem().kind == Problem::Kind::refused;
        const Result<PourResult> shown = refused ? pour_beyond_limits(catalogue, *request, *own) : plan;
        if (!shown) return plan.problem();
        return PourSheet{*shown, in_print(pour_page(*shown, catalogue, question.units)), source_keys(*shown),
                         refused ? limits_in_workshop(*request, *own) : shown->request.workshop,
                         refused ? in_units_of(question.units, plan.problem().text) : ""};
    });
}

const Result<std::string>* Session::said(const Stated& stated) {
    const SaidAsked question{stated, units()};
    return said_.ask(question, [this, question, own = workshop.shared_data()]() -> Result<std::string> {
        const Asker* to = asker(question.stated.question().name);
        if (!to) return Problem{Problem::Kind::unknown, "no such question", 0};
        return to->text(question.stated, {catalogue, *own, question.units, date});
    });
}

const std::vector<TrialLines>* Session::trials() {
    const auto entries = workshop.shared_entries(known_kind("trial"));
    const std::vector<std::string> owned = metals_on_the_shelf(workshop.data()), known = view.pins;
    return trials_.ask(workshop.serial(), [this, entries, owned, known](const Progress& progress) {
        std::vector<TrialLines> out;
        for (const Entry& entry : *entries) {
            const ShownTrial shown{entry, show_trial(catalogue, trial_from(entry))};
            out.push_back({entry.id, text_of(known_kind("trial"), entry, "name"), {}, {}});
            if (shown.result) out.back().beside = measured_beside(catalogue, *shown.result, owned, known);
            for (const std::string& line : lines_of(shown)) out.back().lines.push_back(in_print(line));
            if (!progress(static_cast<double>(out.size()) / static_cast<double>(entries->size()))) break;
        }
        return out;
    });
}

const CheckResult* Session::self_check() {
    return check_.ask(true, [this] { return check(catalogue); });
}

SourceIndex& Session::sources() {
    if (!sources_) sources_.emplace(catalogue);
    return *sources_;
}

} // namespace pourbook
