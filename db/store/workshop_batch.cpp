#include "db/store/workshop_batch.hpp"

#include "db/store/workshop_open.hpp"
#include "db/store/workshop_rows.hpp"

#include <map>

namespace pourbook {
namespace {

constexpr int changes_kept = 1000;

class FileBatch final : public Batch {
public:
    FileBatch(std::string path, std::shared_ptr<SQLite::Database> db, const std::string& words)
        : path_(std::move(path)), db_(std::move(db)), transaction_(*db_, SQLite::TransactionBehavior::IMMEDIATE) {
        db_->exec("DELETE FROM change WHERE undone = 1");
        change_ = next_number(*db_, "change", "number");
        SQLite::Statement start(*db_, "INSERT INTO change (number, seal, at, words, undone) VALUES "
                                      "(?, 0, strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, 0)");
        start.bind(1, change_);
        start.bind(2, words);
        start.exec();
        db_->exec("UPDATE change SET seal = pourbook_seal(number, at, words, undone) WHERE number = " +
                  std::to_string(change_));
    }

    Result<Put> put(const Kind& kind, Entry entry) override {
        return guarded(path_, [&]() -> Result<Put> {
            Touched& t = touched(kind);
            if (kind.single && entry.id == 0)
                if (const std::vector<Entry> all = t.rows.all(); !all.empty()) entry.id = all.front().id;
            return entry.id ? replace(t, entry) : add(t, entry);
        });
    }

    Result<bool> remove(const Kind& kind, std::int64_t id) override {
        return guarded(path_, [&]() -> Result<bool> {
            Touched& t = touched(kind);
            const std::optional<Entry> old = t.rows.by_id(id);
            if (!old) return missing(kind, id);
            if (id >= t.first_new) return twice(kind, *old);
            keep_before(*db_, change_, kind, id);
            t.rows.erase(id);
            changed_ = true;
            return true;
        });
    }

    std::int64_t last_id() const override { return last_id_; }

    Result<bool> commit() override {
        return guarded(path_, [&]() -> Result<bool> {
            for (const auto& [name, t] : touched_)
                if (t->next > t->first_new) keep_absent(*db_, change_, t->rows.kind(), t->first_new, t->next - 1);
            touched_.clear();
            if (!changed_) return true; // the destructor rolls back
            db_->exec("DELETE FROM change WHERE number <= " + std::to_string(change_ - changes_kept));
            transaction_.commit();
            return true;
        });
    }

private:
    struct Touched {
        Touched(SQLite::Database& db, const Kind& kind) : rows(db, kind), first_new(rows.next_id()), next(first_new) {}
        KindRows rows;
        std::int64_t first_new, next;
    };

    Touched& touched(const Kind& kind) {
        std::unique_ptr<Touched>& t = touched_[kind.name];
        if (!t) t = std::make_unique<Touched>(*db_, kind);
        return *t;
    }

    static Problem missing(const Kind& kind, std::int64_t id) {
        return Problem{Problem::Kind::unknown, "no " + kind.name + " with the number " + std::to_string(id), 0};
    }
    static Problem twice(const Kind& kind, const Entry& entry) {
        return unreadable("'" + title_of(kind, entry) + "' stands twice: keep one of them");
    }

    /// A single name left empty becomes stock-3, or stock-3-2 where the person has used that name.
    static void fill_name(Touched& t, Entry& entry) {
        const Kind& kind = t.rows.kind();
        if (kind.key.size() != 1 || !text_of(kind, entry, kind.key[0]).empty()) return;
        const std::string name = kind.name + "-" + std::to_string(entry.id);
        std::string& place = text_of(kind, entry, kind.key[0]);
        place = name;
        for (int i = 2; t.rows.by_key(entry); ++i) place = name + "-" + std::to_string(i);
    }

    Result<Put> add(Touched& t, Entry& entry) {
        entry.id = t.next;
        fill_name(t, entry);
        if (t.rows.insert(entry)) {
            last_id_ = t.next++;
            changed_ = true;
            return Put::added;
        }
        entry.id = t.rows.by_key(entry).value().id;
        return replace(t, entry);
    }

    Result<Put> replace(Touched& t, const Entry& entry) {
        const std::optional<Entry> old = t.rows.by_id(entry.id);
        if (!old) return missing(t.rows.kind(), entry.id);
        last_id_ = entry.id;
        if (old->values == entry.values) return Put::unchanged;
        if (entry.id >= t.first_new) return twice(t.rows.kind(), entry);
        if (const auto same = t.rows.by_key(entry); same && same->id != entry.id) return twice(t.rows.kind(), entry);
        keep_before(*db_, change_, t.rows.kind(), entry.id);
        t.rows.update(entry);
        changed_ = true;
        return Put::changed;
    }

    std::string path_;
    std::shared_ptr<SQLite::Database> db_;
    SQLite::Transaction transaction_;
    std::int64_t change_ = 0, last_id_ = 0;
    bool changed_ = false;
    std::map<std::string, std::unique_ptr<Touched>> touched_;
};

} // namespace

std::unique_ptr<Batch> begin_batch(const std::string& path, std::shared_ptr<SQLite::Database> db,
                                   const std::string& words) {
    return std::make_unique<FileBatch>(path, std::move(db), words);
}

} // namespace pourbook
