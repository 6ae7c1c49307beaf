#include "gui/state/workshop_desk.hpp"

#include "usecases/keep.hpp"

#include <algorithm>

namespace pourbook {

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
        data_ = std::move(*data);
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

const std::vector<Entry>& WorkshopDesk::entries(const Kind& kind) {
    const auto there = lists_.find(kind.name);
    if (there != lists_.end()) return there->second;
    std::vector<Entry>& list = lists_[kind.name];
    if (!file_) return list;
    Result<std::vector<Entry>> entries = file_->entries(kind);
    if (entries)
        list = std::move(*entries);
    else
        fault_ = entries.problem().text;
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

std::optional<Problem> WorkshopDesk::remove(const Kind& kind, const Entry& entry) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    const Result<bool> done = pourbook::remove(*file_, kind, {entry}, "remove " + title_of(kind, entry));
    if (!done) return done.problem();
    read();
    return std::nullopt;
}

std::optional<Problem> WorkshopDesk::undo() {
    if (!file_) return std::nullopt;
    const Result<Change> done = file_->undo();
    if (!done) return done.problem();
    read();
    return std::nullopt;
}

std::optional<Problem> WorkshopDesk::redo() {
    if (!file_) return std::nullopt;
    const Result<Change> done = file_->redo();
    if (!done) return done.problem();
    read();
    return std::nullopt;
}

} // namespace pourbook
