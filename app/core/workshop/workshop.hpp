// The workshop's own file as the rest of the program sees it: entries by kind, changed in groups that are written whole
// or not at all, each of which can be undone. db/store implements it; nothing here knows how it is kept.
//
// Every failure is a Problem: file (damaged, locked, read-only, full, newer: exit code 4), unknown (no such entry).
#pragma once

#include "core/workshop/kinds.hpp"

#include <memory>

namespace pourbook {

/// One group of edits, as the person sees it: "stock add copper 2 kg".
struct Change {
    std::int64_t number = 0;
    std::string at; // UTC, 2026-11-25T10:30:00Z
    std::string words;
    bool undone = false;
};

/// What was gathered from a damaged file.
struct Salvage {
    std::size_t kept = 0;          // entries with a fitting check sum, now in the new file
    std::vector<std::string> lost; // "pin 1: its check sum does not fit", "price: unreadable after number 37"
};

enum class Put { added, changed, unchanged };

/// A group being written. Destroyed without commit(), it leaves nothing behind.
class Batch {
public:
    virtual ~Batch() = default;
    /// An entry with an id replaces that entry; without one it replaces the entry with the same key or is added. A
    /// single key field left empty is filled. An entry may be touched once in a batch; a second touch is a problem.
    virtual Result<Put> put(const Kind& kind, Entry entry) = 0;
    virtual Result<bool> remove(const Kind& kind, std::int64_t id) = 0;
    /// The id given to the last entry that was put.
    virtual std::int64_t last_id() const = 0;
    virtual Result<bool> commit() = 0;
};

/// Used from one thread at a time; any number of programs may have the same file open.
class Workshop {
public:
    virtual ~Workshop() = default;
    virtual std::string path() const = 0;
    virtual bool exists() const = 0; // false before the first entry
    /// What the person should know of the file before trusting an answer; empty where all is well.
    virtual std::string remark() const { return {}; }
    virtual Result<std::vector<Entry>> entries(const Kind& kind) = 0;
    /// Of each metal the price that holds: the newest. (A list may have a million rows.)
    virtual Result<std::vector<Entry>> newest_prices() = 0;
    /// By its name or its number. Errors: unknown.
    virtual Result<Entry> entry(const Kind& kind, const std::string& name_or_number) = 0;
    virtual Result<Entry> numbered(const Kind& kind, std::int64_t id) = 0;
    /// Starts a group; `words` say what it does, for the list of changes. Makes the file where there is none.
    virtual Result<std::unique_ptr<Batch>> begin(const std::string& words) = 0;

    virtual Result<std::vector<Change>> changes() = 0; // newest first; the last thousand are kept
    /// Errors: refused where nothing is left to undo or redo.
    virtual Result<Change> undo() = 0;
    virtual Result<Change> redo() = 0;

    /// A copy of the whole file, taken while others may write. Never overwrites.
    virtual Result<bool> back_up(const std::string& path) = 0;
    /// Another number after every change, by this program or another one, also where another file took its place.
    virtual Result<std::int64_t> serial() = 0;
    /// Of the file as it lies on the disk: another text after most changes, and quickly had.
    virtual std::string stamp() const = 0;
};

} // namespace pourbook
