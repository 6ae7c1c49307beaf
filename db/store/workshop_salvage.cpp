#include "db/store/workshop_salvage.hpp"

#include "db/store/workshop_guard.hpp"
#include "db/store/workshop_open.hpp"
#include "db/store/workshop_rows.hpp"
#include "platform/files.hpp"

#include <filesystem>
#include <set>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

class Salvager {
public:
    Salvager(SQLite::Database& from, SQLite::Database& to) : from_(from), to_(to) {}

    Salvage run() {
        SQLite::Transaction all(to_);
        for (const Kind& kind : workshop_kinds()) take(kind);
        all.commit();
        return out_;
    }

private:
    void take(const Kind& kind) {
        KindRows into(to_, kind);
        seen_.clear();
        const std::string broken = read(kind, into, "id");
        const std::int64_t last = last_read_;
        if (broken.empty()) return;
        read(kind, into, "id DESC");
        out_.lost.push_back(kind.name + ": unreadable after " +
                            (seen_.empty() ? "the start" : "number " + std::to_string(last)) + " (" + broken + ")");
    }

    /// Returns why it broke off; empty where it came to the end.
    std::string read(const Kind& kind, KindRows& into, const std::string& order) {
        try {
            SQLite::Statement row(from_, "SELECT id, seal, " + columns_there(kind) + " FROM \"" + kind.name +
                                             "\" ORDER BY " + order);
            while (row.executeStep()) keep(kind, row, into);
            return {};
        } catch (const SQLite::Exception& e) {
            return e.what();
        }
    }

    /// The kind's columns; nothing for one that the file is too old to have.
    std::string columns_there(const Kind& kind) {
        std::set<std::string> there;
        SQLite::Statement column(from_, "SELECT name FROM pragma_table_info(?)");
        column.bind(1, kind.name);
        while (column.executeStep()) there.insert(column.getColumn(0).getString());
        std::string out;
        for (const Field& field : kind.fields)
            out += (out.empty() ? "" : ", ") +
                   (there.contains(field.name) || field.since == 1 ? "\"" + field.name + "\"" : std::string("''"));
        return out;
    }

    void keep(const Kind& kind, SQLite::Statement& row, KindRows& into) {
        const std::int64_t id = row.getColumn(0).getInt64();
        if (!seen_.insert(id).second) return;
        last_read_ = id;
        const std::string name = kind.name + " " + std::to_string(id);
        try {
            if (into.insert(entry_from(kind, row)))
                ++out_.kept;
            else
                out_.lost.push_back(name + ": another entry has its name");
        } catch (const DamagedRow&) {
            out_.lost.push_back(name + ": its check sum does not fit");
        }
    }

    SQLite::Database &from_, &to_;
    Salvage out_;
    std::set<std::int64_t> seen_; // of the kind
    std::int64_t last_read_ = 0;
};

/// A file that is read only may need its journal played back first: that is done to a copy.
class ReadCopy {
public:
    explicit ReadCopy(const std::string& path) {
        if (folder_.path().empty())
            throw Problem{Problem::Kind::file,
                          "no copy to read can be made in the temporary folder '" + folder_.above().string() +
                              "': " + folder_.fault(),
                          0};
        fs::copy_file(path, file());
        std::error_code none;
        fs::copy_file(path + "-journal", file() + "-journal", none);
        fs::permissions(file(), fs::perms::owner_read | fs::perms::owner_write);
    }
    std::string file() const { return (folder_.path() / "copy.sqlite").string(); }

private:
    platform::WorkFolder folder_;
};

} // namespace

Result<Salvage> salvage_workshop(const std::string& path, const std::string& target) {
    std::error_code error;
    if (!fs::is_regular_file(path, error)) return Problem{Problem::Kind::file, "no file at '" + path + "'", 0};
    if (fs::exists(fs::symlink_status(target, error)))
        return Problem{Problem::Kind::file, "'" + target + "' exists and is not overwritten: name another file", 0};
    const std::string draft = platform::draft_name(target, "draft");
    const auto done = guarded(target, [&]() -> Result<Salvage> {
        const ReadCopy copy(path);
        SQLite::Database from(copy.file(), SQLite::OPEN_READWRITE);
        defend(from);
        Salvage out;
        {
            const auto to = opened(draft, {});
            out = Salvager(from, *to).run();
        }
        fs::rename(draft, target);
        return out;
    });
    fs::remove(draft, error);
    fs::remove(draft + "-journal", error);
    return done;
}

} // namespace pourbook
