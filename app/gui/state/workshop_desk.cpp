#include "gui/state/workshop_desk.hpp"

#include "usecases/keep.hpp"

#include <algorithm>

namespace pourbook {
namespace {

template <class T> std::optional<Problem> problem_of(const Result<T>& result) {
    return result ? std::nullopt : std::optional<Problem>(result.problem());
}

} // namespace

WorkshopDesk::WorkshopDesk(Workshop* file) : file_(file) {
    if (file_) read();
}

void WorkshopDesk::read() {
    lists_.clear();
    last_change_.reset();
    fault_.clear();
    ++serial_;
    Result<WorkshopData> data = read_workshop(*file_);
    if (data)
        data_ = std::make_shared<WorkshopData>(std::move(*data));
    else
        fault_ = data.problem().text;
    if (const Result<std::int64_t> serial = file_->serial()) seen_ = *serial;
}

void WorkshopDesk::look() {
    if (!file_) return;
    const Result<std::int64_t> serial = file_->serial();
    if (!serial)
        fault_ = serial.problem().text;
    else if (*serial != seen_)
        read();
}

std::shared_ptr<const std::vector<Entry>> WorkshopDesk::shared_entries(const Kind& kind) {
    std::shared_ptr<const std::vector<Entry>>& list = lists_[kind.name];
    if (list) return list;
    Result<std::vector<Entry>> entries = file_ ? file_->entries(kind) : std::vector<Entry>{};
    if (!entries) fault_ = entries.problem().text;
    list = std::make_shared<std::vector<Entry>>(entries ? std::move(*entries) : std::vector<Entry>{});
    return list;
}

std::string WorkshopDesk::last_change() {
    if (last_change_) return *last_change_;
    last_change_ = "";
    if (!file_) return "";
    const Result<std::vector<Change>> changes = file_->changes();
    if (!changes) return "";
    const auto last = std::find_if(changes->begin(), changes->end(), [](const Change& c) { return !c.undone; });
    if (last != changes->end()) last_change_ = last->words;
    return *last_change_;
}

Result<Entry> WorkshopDesk::keep(const Catalogue& catalogue, const Kind& kind, const Entry& entry) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    const Result<Entry> fit = sound(catalogue, kind, entry);
    if (!fit) return fit.problem();
    const std::string verb = fit->id ? "edit " : "add ";
    Result<Kept> kept = pourbook::keep(*file_, kind, *fit, verb + title_of(kind, *fit));
    if (!kept) return kept.problem();
    read();
    return kept->entry;
}

std::optional<Problem> WorkshopDesk::read_after(const std::optional<Problem>& problem) {
    if (!problem) read();
    return problem;
}

std::optional<Problem> WorkshopDesk::remove(const Kind& kind, const Entry& entry) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    return read_after(problem_of(pourbook::remove(*file_, kind, {entry}, "remove " + title_of(kind, entry))));
}

std::optional<Problem> WorkshopDesk::undo() {
    return file_ ? read_after(problem_of(file_->undo())) : std::nullopt;
}

} // namespace pourbook
