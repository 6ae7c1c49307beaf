#include "db/store/workshop_file.hpp"

#include "db/store/workshop_batch.hpp"
#include "db/store/workshop_daily.hpp"
#include "db/store/workshop_open.hpp"
#include "db/store/workshop_rows.hpp"
#include "platform/files.hpp"

#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

/// The newest price of each metal by way of the index, however long the list.
constexpr const char* newest_price_ids =
    "WITH RECURSIVE m(x) AS (SELECT min(metal) FROM price UNION ALL SELECT (SELECT min(metal) FROM price WHERE metal > "
    "x) FROM m WHERE x IS NOT NULL) SELECT (SELECT id FROM price WHERE metal = x ORDER BY date DESC, id DESC LIMIT 1) "
    "FROM m WHERE x IS NOT NULL";

class FileWorkshop final : public Workshop {
public:
    FileWorkshop(std::string path, WorkshopOptions options) : path_(std::move(path)), options_(std::move(options)) {}

    /// Anew where another file has taken its place, as a restored backup does.
    void open() {
        if (db_ && identity() != opened_) {
            db_.reset();
            ++replaced_;
        }
        if (db_) return;
        db_ = opened(path_, options_);
        opened_ = identity();
    }
    std::string path() const override { return path_; }
    bool exists() const override { return (db_ && opened_.empty()) || has_content(path_); }
    std::string remark() const override {
        std::error_code error;
        if (exists() || !fs::exists(path_, error)) return {};
        std::string copies;
        for (const std::string& copy : copies_beside(path_)) copies += (copies.empty() ? "" : ", ") + copy;
        return "'" + path_ + "' is empty (0 bytes) and taken as new" +
               (copies.empty() ? "" : "; copies beside it: " + copies + " (`pourbook backup --restore FILE`)");
    }
    std::string stamp() const override {
        std::error_code error;
        const auto written = fs::last_write_time(path_, error).time_since_epoch().count();
        return identity() + "|" + std::to_string(static_cast<std::int64_t>(written)) + "|" +
               std::to_string(fs::file_size(path_, error));
    }

    Result<std::vector<Entry>> entries(const Kind& kind) override {
        return read<std::vector<Entry>>([&] { return KindRows(*db_, kind).all(); });
    }

    Result<std::vector<Entry>> newest_prices() override {
        return read<std::vector<Entry>>([&] {
            std::vector<Entry> out;
            KindRows rows(*db_, known_kind("price"));
            SQLite::Statement newest(*db_, newest_price_ids);
            while (newest.executeStep())
                if (auto entry = rows.by_id(newest.getColumn(0).getInt64())) out.push_back(std::move(*entry));
            return out;
        });
    }

    Result<Entry> entry(const Kind& kind, const std::string& name_or_number) override {
        return find(kind, name_or_number, [&](KindRows& rows) {
            std::optional<Entry> found;
            if (kind.key.size() == 1) {
                Entry wanted = new_entry(kind);
                text_of(kind, wanted, kind.key[0]) = name_or_number;
                found = rows.by_key(wanted);
            }
            const bool number = !name_or_number.empty() && name_or_number.size() < 18 &&
                                name_or_number.find_first_not_of("0123456789") == std::string::npos;
            return !found && number ? rows.by_id(std::stoll(name_or_number)) : found;
        });
    }

    Result<Entry> numbered(const Kind& kind, std::int64_t id) override {
        return find(kind, std::to_string(id), [&](KindRows& rows) { return rows.by_id(id); });
    }

    Result<std::unique_ptr<Batch>> begin(const std::string& words) override {
        return guarded(path_, [&]() -> Result<std::unique_ptr<Batch>> {
            std::unique_ptr<Batch> batch;
            do {
                batch.reset();
                const bool there = has_content(path_);
                open();
                if (there) keep_daily(*db_, path_);
                batch = begun(words);
            } while (!batch || identity() != opened_); // replaced while it waited for another program
            ++own_changes_;
            return batch;
        });
    }

    Result<std::vector<Change>> changes() override {
        return read<std::vector<Change>>([&] {
            std::vector<Change> out;
            SQLite::Statement row(*db_, std::string(sealed_changes) + "ORDER BY number DESC");
            while (row.executeStep()) out.push_back(change_from(row));
            return out;
        });
    }

    Result<Change> undo() override {
        return turn("WHERE undone = 0 ORDER BY number DESC LIMIT 1", "there is nothing to undo");
    }
    Result<Change> redo() override {
        return turn("WHERE undone = 1 ORDER BY number LIMIT 1", "there is nothing to redo");
    }

    Result<bool> back_up(const std::string& path) override {
        if (!exists()) return no_value("'" + path_ + "' does not exist yet: there is nothing to back up");
        if (fs::exists(fs::symlink_status(path)))
            return Problem{Problem::Kind::file, "'" + path + "' exists and is not overwritten: name another file", 0};
        const Result<bool> ready = read<bool>([] { return true; });
        if (!ready) return ready;
        return guarded(path, [&]() -> Result<bool> {
            copy_to_file(*db_, path);
            return true;
        });
    }

    Result<std::int64_t> serial() override {
        return read<std::int64_t>([&] {
            constexpr std::int64_t more_than_changes = std::int64_t{1} << 32;
            return replaced_ * more_than_changes + own_changes_ + db_->execAndGet("PRAGMA data_version").getInt64();
        });
    }

private:
    /// Which file lies at the path; empty where there is none.
    std::string identity() const { return platform::file_identity(path_); }

    /// Opens where there is a file and reads; without one there is nothing to read.
    template <class T, class F> Result<T> read(F f) {
        return guarded(path_, [&]() -> Result<T> {
            if (!exists()) return T{};
            open();
            return f();
        });
    }

    template <class F> Result<Entry> find(const Kind& kind, const std::string& words, F f) {
        return guarded(path_, [&]() -> Result<Entry> {
            std::optional<Entry> found;
            if (exists()) {
                open();
                KindRows rows(*db_, kind);
                found = f(rows);
            }
            if (found) return *found;
            return Problem{Problem::Kind::unknown, "no " + kind.name + " '" + words + "' in '" + path_ + "'", 0};
        });
    }

    static constexpr const char* sealed_changes =
        "SELECT number, at, words, undone, seal IS pourbook_seal(number, at, words, undone) FROM change ";

    static Change change_from(SQLite::Statement& row) {
        const Change change{row.getColumn(0).getInt64(), row.getColumn(1).getString(), row.getColumn(2).getString(),
                            row.getColumn(3).getInt() != 0};
        if (row.getColumn(4).getInt() == 0)
            throw DamagedRow("the check sum of change " + std::to_string(change.number) + " does not fit");
        return change;
    }

    /// Null where another file has taken the place of the one that was open.
    std::unique_ptr<Batch> begun(const std::string& words) {
        try {
            return begin_batch(path_, db_, words);
        } catch (const SQLite::Exception&) {
            if (identity() == opened_) throw;
            return nullptr;
        }
    }

    /// The change taken back, or made again, inside a transaction that the caller commits.
    Result<Change> turned(const std::string& which, const std::string& none) {
        Change change;
        try {
            {
                SQLite::Statement row(*db_, sealed_changes + which);
                if (!row.executeStep()) return refused(none);
                change = change_from(row);
            }
            turn_back(*db_, change.number);
        } catch (const DamagedRow& e) {
            const std::string name = change.words.empty() ? "the change" : "'" + change.words + "'";
            return Problem{Problem::Kind::file,
                           name + " can't be taken back or made again: its record in '" + path_ + "' is damaged (" +
                               e.what() + "); nothing was changed",
                           0};
        }
        change.undone = !change.undone;
        const std::string undone = change.undone ? "1" : "0";
        db_->exec("UPDATE change SET undone = " + undone + ", seal = pourbook_seal(number, at, words, " + undone +
                  ") WHERE number = " + std::to_string(change.number));
        return change;
    }

    Result<Change> turn(const std::string& which, const std::string& none) {
        return guarded(path_, [&]() -> Result<Change> {
            if (!exists()) return refused(none);
            open();
            keep_daily(*db_, path_);
            SQLite::Transaction transaction(*db_, SQLite::TransactionBehavior::IMMEDIATE);
            if (identity() != opened_)
                return Problem{Problem::Kind::file, "'" + path_ + "' was replaced: nothing was changed; try again", 0};
            Result<Change> change = turned(which, none);
            if (!change) return change;
            transaction.commit();
            ++own_changes_;
            return change;
        });
    }

    std::string path_;
    WorkshopOptions options_;
    std::shared_ptr<SQLite::Database> db_;
    std::string opened_; // identity of the file that db_ has open; empty where it is in memory
    std::int64_t own_changes_ = 0, replaced_ = 0;
};

} // namespace

Result<std::unique_ptr<Workshop>> open_workshop(const std::string& path, const WorkshopOptions& options) {
    return guarded(path, [&]() -> Result<std::unique_ptr<Workshop>> {
        auto workshop = std::make_unique<FileWorkshop>(path, options);
        if (has_content(path)) workshop->open();
        return std::unique_ptr<Workshop>(std::move(workshop));
    });
}

} // namespace pourbook
