#include "gui/state/workshop_desk.hpp"

#include "questions/workshop/keep.hpp"

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
    stamp_ = file_->stamp(); // before its content: what changes while it is read is seen by the next look
    WorkshopData data = read_workshop(*file_);
    if (data.fault) fault_ = data.fault->text;
    data_ = std::make_shared<WorkshopData>(std::move(data));
    if (const Result<std::int64_t> serial = file_->serial()) seen_ = *serial;
}

void WorkshopDesk::look() {
    if (!file_ || file_->stamp() == stamp_) return;
    stamp_ = file_->stamp();
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

std::optional<Problem> WorkshopDesk::clash(const Kind& kind, const Entry& entry, const Entry& as_opened) {
    const bool unnamed = kind.key.size() == 1 && text_of(kind, entry, kind.key.front()).empty();
    const auto same_key = [&](const Entry& other) {
        return std::all_of(kind.key.begin(), kind.key.end(), [&](const std::string& field) {
            return text_of(kind, other, field) == text_of(kind, entry, field);
        });
    };
    bool found = false;
    for (const Entry& now : entries(kind)) {
        const bool same = now.id == entry.id;
        found = found || same;
        if (same && now.values != as_opened.values)
            return Problem{Problem::Kind::refused,
                           title_of(kind, now) + " was changed by another program meanwhile and is not overwritten: "
                                                 "open it again from the list",
                           0};
        if (!same && !unnamed && same_key(now))
            return Problem{Problem::Kind::refused,
                           "there is a " + title_of(kind, now) + " already: open it from the list to change it", 0};
    }
    if (found || entry.id == 0) return std::nullopt;
    return Problem{Problem::Kind::refused,
                   title_of(kind, as_opened) + " is no longer in the file, which another program changed meanwhile", 0};
}

Result<Entry> WorkshopDesk::keep(const Catalogue& catalogue, const Kind& kind, const Entry& entry,
                                 const Entry& as_opened) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    const Result<Entry> fit = sound(catalogue, kind, entry);
    if (!fit) return fit.problem();
    look();
    if (const auto problem = clash(kind, *fit, as_opened)) return *problem;
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

std::optional<Problem> WorkshopDesk::remove(const Kind& kind, const Entry& as_opened) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    look();
    if (const auto problem = clash(kind, as_opened, as_opened)) return problem;
    return read_after(problem_of(pourbook::remove(*file_, kind, {as_opened}, "remove " + title_of(kind, as_opened))));
}

std::optional<Problem> WorkshopDesk::undo() {
    if (!file_) return std::nullopt;
    const std::string offered = last_change();
    look();
    if (last_change() != offered)
        return Problem{Problem::Kind::refused, "another program changed the file meanwhile: nothing was undone", 0};
    return read_after(problem_of(file_->undo()));
}

std::optional<Problem> WorkshopDesk::redo() {
    if (!file_) return std::nullopt;
    look();
    return read_after(problem_of(file_->redo()));
}

Result<std::size_t> WorkshopDesk::keep_all(const Catalogue& catalogue, const Kind& kind,
                                           const std::vector<Entry>& entries) {
    if (!file_) return Problem{Problem::Kind::refused, "this window has no workshop file", 0};
    std::vector<Entry> fit;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        Result<Entry> one = sound(catalogue, kind, of_its_type(kind, entries[i]));
        if (!one) return Problem{one.problem().kind, "entry " + std::to_string(i + 1) + ": " + one.problem().text, 0};
        fit.push_back(std::move(*one));
    }
    const auto batch = file_->begin("paste " + std::to_string(fit.size()) + " into " + kind.name);
    if (!batch) return batch.problem();
    for (const Entry& entry : fit)
        if (const Result<Put> put = (*batch)->put(kind, entry); !put) return put.problem();
    if (const Result<bool> done = (*batch)->commit(); !done) return done.problem();
    read();
    return fit.size();
}

} // namespace pourbook
