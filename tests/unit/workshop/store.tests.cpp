// The workshop's own file: nothing lost, nothing half written, everything can be undone.
#include "db/store/workshop_file.hpp"
#include "db/store/workshop_salvage.hpp"

#include <catch2/catch.hpp>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <random>

using namespace pourbook;
namespace fs = std::filesystem;

namespace {

struct Folder {
    fs::path path = fs::temp_directory_path() / ("pourbook-store-" + std::to_string(getpid()));
    Folder() {
        fs::remove_all(path);
        fs::create_directories(path);
    }
    ~Folder() { fs::remove_all(path); }
    std::string file(const std::string& name = "workshop.sqlite") const { return path / name; }
};

Entry stock(const std::string& lot, const std::string& metal, const std::string& mass) {
    const Kind& kind = known_kind("stock");
    Entry e = new_entry(kind);
    text_of(kind, e, "lot") = lot;
    text_of(kind, e, "metal") = metal;
    text_of(kind, e, "mass") = mass;
    return e;
}

std::unique_ptr<Workshop> open(const std::string& path) {
    auto w = open_workshop(path);
    REQUIRE(w);
    return std::move(*w);
}

Put put(Workshop& w, const Entry& entry) {
    auto batch = w.begin("test");
    REQUIRE(batch);
    const auto done = (*batch)->put(known_kind("stock"), entry);
    REQUIRE(done);
    REQUIRE((*batch)->commit());
    return *done;
}

std::vector<std::vector<std::string>> content(Workshop& w) {
    std::vector<std::vector<std::string>> out;
    const auto entries = w.entries(known_kind("stock"));
    REQUIRE(entries);
    for (const Entry& e : *entries) out.push_back(e.values);
    return out;
}

void run_sql(const std::string& path, const char* sql) {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &db) == SQLITE_OK);
    REQUIRE(sqlite3_exec(db, sql, nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(db);
}

std::size_t copies(const Folder& folder, const std::string& part) {
    std::size_t n = 0;
    for (const auto& f : fs::directory_iterator(folder.path)) n += f.path().string().find(part) != std::string::npos;
    return n;
}

} // namespace

TEST_CASE("the tables have the fields of the kinds, in their order") {
    const Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("a", "copper", "2 kg"));
    for (const Kind& kind : workshop_kinds()) {
        INFO(kind.name);
        const auto entries = w->entries(kind);
        REQUIRE(entries);
    }
}

TEST_CASE("nothing is written before the first entry, and an entry is there for the next program") {
    const Folder folder;
    {
        const auto w = open(folder.file());
        REQUIRE(content(*w).empty());
        REQUIRE_FALSE(fs::exists(folder.file()));
        REQUIRE(put(*w, stock("", "copper", "2 kg")) == Put::added);
        REQUIRE(put(*w, stock("stock-1", "copper", "2 kg")) == Put::unchanged);
        REQUIRE(put(*w, stock("stock-1", "copper", "3 kg")) == Put::changed);
    }
    const auto again = open(folder.file());
    REQUIRE(content(*again).size() == 1);
    REQUIRE(content(*again)[0][2] == "3 kg");
    REQUIRE(again->entry(known_kind("stock"), "stock-1"));
    REQUIRE(again->entry(known_kind("stock"), "1"));
    REQUIRE(again->entry(known_kind("stock"), "stock-2").problem().kind == Problem::Kind::unknown);
}

TEST_CASE("a group that is not committed leaves nothing") {
    const Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("a", "copper", "2 kg"));
    {
        auto batch = w->begin("dropped");
        REQUIRE((*batch)->put(known_kind("stock"), stock("b", "tin", "1 kg")));
        REQUIRE((*batch)->remove(known_kind("stock"), 1));
    }
    REQUIRE(content(*w).size() == 1);
    REQUIRE(w->changes()->size() == 1);
}

TEST_CASE("an entry can't be touched twice in a group") {
    const Folder folder;
    const auto w = open(folder.file());
    auto batch = w->begin("twice");
    REQUIRE((*batch)->put(known_kind("stock"), stock("b", "tin", "1 kg")));
    REQUIRE(*(*batch)->put(known_kind("stock"), stock("b", "tin", "1 kg")) == Put::unchanged);
    REQUIRE((*batch)->put(known_kind("stock"), stock("b", "tin", "2 kg")).problem().text.find("twice") !=
            std::string::npos);
}

TEST_CASE("undo and redo walk through every state, whatever was changed") {
    const Folder folder;
    const auto w = open(folder.file());
    std::mt19937 random(8);
    std::vector<std::vector<std::vector<std::string>>> states = {{}};
    for (int step = 0; step < 40; ++step) {
        auto batch = w->begin("step " + std::to_string(step));
        const auto entries = *w->entries(known_kind("stock"));
        if (entries.size() > 2 && random() % 3 == 0) {
            REQUIRE((*batch)->remove(known_kind("stock"), entries[random() % entries.size()].id));
        } else {
            for (unsigned i = 0; i < 1 + random() % 4; ++i) {
                const std::string lot = "lot-" + std::to_string(random() % 12);
                (*batch)->put(known_kind("stock"), stock(lot, "tin", std::to_string(step) + "." + std::to_string(i)));
            }
        }
        REQUIRE((*batch)->commit());
        batch = Problem{};
        states.push_back(content(*w));
    }
    for (std::size_t round = 0; round < 2; ++round) {
        for (std::size_t i = states.size() - 1; i-- > 0;) {
            REQUIRE(w->undo());
            REQUIRE(content(*w) == states[i]);
        }
        REQUIRE(w->undo().problem().kind == Problem::Kind::refused);
        for (std::size_t i = 1; i < states.size(); ++i) {
            REQUIRE(w->redo());
            REQUIRE(content(*w) == states[i]);
        }
        REQUIRE(w->redo().problem().kind == Problem::Kind::refused);
    }
    REQUIRE(w->undo());
    put(*w, stock("new", "tin", "9 kg")); // what was undone is gone
    REQUIRE(w->redo().problem().kind == Problem::Kind::refused);
}

TEST_CASE("two programs: each sees the other's work, and a locked file is one clear line") {
    const Folder folder;
    const auto a = open(folder.file());
    put(*a, stock("a", "copper", "2 kg"));
    WorkshopOptions hasty;
    hasty.wait_ms = 50;
    const auto b = open_workshop(folder.file(), hasty);
    REQUIRE(b);
    const auto before = *(*b)->serial();
    put(*a, stock("b", "tin", "1 kg"));
    REQUIRE(*(*b)->serial() != before);
    REQUIRE(content(**b).size() == 2);
    const auto writing = a->begin("holds the file");
    const auto refused = (*b)->begin("waits");
    REQUIRE_FALSE(refused);
    REQUIRE(refused.problem().kind == Problem::Kind::file);
    REQUIRE(refused.problem().text.find("locked") != std::string::npos);
    REQUIRE(content(**b).size() == 2); // reading goes on
}

TEST_CASE("a newer file, a foreign file, a folder: refused, untouched") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "2 kg"));
    run_sql(folder.file(), "PRAGMA user_version = 99");
    const auto newer = open_workshop(folder.file());
    REQUIRE(newer.problem().text.find("newer version") != std::string::npos);
    run_sql(folder.file("foreign"), "CREATE TABLE t (x)");
    REQUIRE(open_workshop(folder.file("foreign")).problem().text.find("no workshop file") != std::string::npos);
    REQUIRE(open_workshop(folder.path).problem().text.find("is a folder") != std::string::npos);
    REQUIRE(copies(folder, "damaged") == 0);
}

TEST_CASE("a text file in its place is kept, copied once and never written") {
    const Folder folder;
    std::ofstream(folder.file()) << std::string(5000, 'x');
    for (int i = 0; i < 2; ++i) {
        const auto w = open_workshop(folder.file());
        REQUIRE(w.problem().kind == Problem::Kind::file);
        REQUIRE(w.problem().text.find("is damaged") != std::string::npos);
        REQUIRE(copies(folder, "damaged") == 1);
    }
    REQUIRE(fs::file_size(folder.file()) == 5000);
}

TEST_CASE("a figure changed behind the program's back is noticed") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "2 kg"));
    run_sql(folder.file(), "UPDATE stock SET mass = '3 kg'");
    const auto w = open(folder.file());
    const auto entries = w->entries(known_kind("stock"));
    REQUIRE(entries.problem().kind == Problem::Kind::file);
    REQUIRE(entries.problem().text.find("check sum") != std::string::npos);
    REQUIRE(copies(folder, "damaged") == 1);
}

TEST_CASE("a newer schema is reached in one step after a backup, or not at all") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "2 kg"));
    WorkshopOptions next;
    next.schema.push_back({4, "CREATE TABLE shelf (id INTEGER PRIMARY KEY) STRICT;"});
    SECTION("it works") {
        const auto w = open_workshop(folder.file(), next);
        REQUIRE(w);
        REQUIRE(content(**w).size() == 1);
        REQUIRE((*w)->undo().problem().kind == Problem::Kind::refused); // the journal belonged to the old tables
        REQUIRE(open_workshop(folder.file()).problem().text.find("newer version") != std::string::npos);
        const auto backup = open(folder.file("workshop.sqlite.before-schema-4"));
        REQUIRE(content(*backup).size() == 1);
    }
    SECTION("it fails half way") {
        next.schema.back().sql += "CREATE TABLE shelf (id INTEGER);";
        REQUIRE_FALSE(open_workshop(folder.file(), next));
        const auto w = open(folder.file());
        REQUIRE(content(*w).size() == 1);
    }
}

TEST_CASE("a file of the first release opens with all it holds") {
    const Folder folder;
    fs::copy_file(std::string(POURBOOK_DB) + "/../tests/workshop/schema-1.sqlite", folder.file());
    const auto w = open(folder.file());
    REQUIRE(content(*w).size() == 2);
    REQUIRE(w->entries(known_kind("price"))->size() == 2);
    REQUIRE(w->entries(known_kind("trial"))->size() == 1);
    REQUIRE(w->undo().problem().kind == Problem::Kind::refused); // the journal of schema 1 had no check sums
    REQUIRE(copies(folder, "before-schema-3") == 1);
}

TEST_CASE("a file of the second release opens, and what is sound in a damaged one is gathered") {
    const Folder folder;
    fs::copy_file(std::string(POURBOOK_DB) + "/../tests/workshop/schema-2.sqlite", folder.file());
    const auto gathered = salvage_workshop(folder.file(), folder.file("gathered"));
    REQUIRE(gathered);
    CHECK(gathered->kept == 3);
    CHECK(gathered->lost.empty());
    const auto w = open(folder.file());
    CHECK(content(*w).size() == 1);
    const auto trials = w->entries(known_kind("trial"));
    REQUIRE(trials);
    CHECK(trials->size() == 2);
    CHECK(text_of(known_kind("trial"), trials->front(), "mass_in_water").empty());
    Entry weighed = trials->front();
    text_of(known_kind("trial"), weighed, "mass_in_water") = "750 g";
    auto batch = w->begin("weighed");
    REQUIRE((*batch)->put(known_kind("trial"), weighed));
    REQUIRE((*batch)->commit());
    CHECK(text_of(known_kind("trial"), open(folder.file())->entries(known_kind("trial"))->front(), "mass_in_water") ==
          "750 g");
}

TEST_CASE("a backup put in the place of an open file is what is read and written from then on") {
    Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("first", "copper", "1 kg"));
    REQUIRE(w->back_up(folder.file("safe")));
    put(*w, stock("second", "tin", "2 kg"));
    const auto before = w->serial();
    const std::string stamp = w->stamp();
    const auto kept = restore_workshop(folder.file(), folder.file("safe"));
    REQUIRE(kept);
    CHECK(w->stamp() != stamp);
    CHECK(*w->serial() != *before);
    CHECK(content(*w).size() == 1);
    put(*w, stock("third", "zinc", "3 kg"));
    const auto now = open(folder.file()), old = open(*kept);
    CHECK(content(*now).size() == 2);
    CHECK(content(*old).size() == 2);
    CHECK(content(*old).back()[0] == "second"); // nothing was written into what was put aside
}

TEST_CASE("a file is not replaced while another program writes") {
    Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("first", "copper", "1 kg"));
    REQUIRE(w->back_up(folder.file("safe")));
    {
        auto batch = w->begin("half way");
        REQUIRE(batch);
        REQUIRE((*batch)->put(known_kind("stock"), stock("second", "tin", "2 kg")));
        const auto refused = restore_workshop(folder.file(), folder.file("safe"));
        REQUIRE_FALSE(refused);
        CHECK(refused.problem().kind == Problem::Kind::file);
        CHECK(refused.problem().text.find("another program") != std::string::npos);
        REQUIRE((*batch)->commit());
    }
    CHECK(content(*w).size() == 2);
    for (const auto& file : fs::directory_iterator(folder.path))
        CHECK(file.path().string().find(".restored") == std::string::npos);
}

TEST_CASE("backup and restore keep what was there") {
    const Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("a", "copper", "2 kg"));
    REQUIRE(w->back_up(folder.file("safe")));
    REQUIRE_FALSE(w->back_up(folder.file("safe")));
    put(*w, stock("b", "tin", "1 kg"));
    const auto kept = restore_workshop(folder.file(), folder.file("safe"));
    REQUIRE(kept);
    REQUIRE(content(*open(folder.file())).size() == 1);
    REQUIRE(content(*open(*kept)).size() == 2);
    std::ofstream(folder.file("broken")) << "no database";
    REQUIRE_FALSE(restore_workshop(folder.file(), folder.file("broken")));
    REQUIRE(content(*open(folder.file())).size() == 1);
}

TEST_CASE("undo puts nothing back whose record is damaged, and leaves all as it was") {
    const Folder folder;
    const Kind& kind = known_kind("stock");
    put(*open(folder.file()), stock("a", "copper", "3 kg"));
    {
        const auto w = open(folder.file());
        auto batch = w->begin("remove stock a");
        REQUIRE((*batch)->remove(kind, 1));
        REQUIRE((*batch)->commit());
    }
    const char* damage = GENERATE("UPDATE change_row SET before = replace(before, '3 kg', '8 kg')",
                                  "UPDATE change_row SET last = 700 WHERE before IS NULL OR 1",
                                  "UPDATE change SET words = 'remove stock b'");
    run_sql(folder.file(), damage);
    const auto w = open(folder.file());
    const auto undone = w->undo();
    REQUIRE(undone.problem().kind == Problem::Kind::file);
    CHECK(undone.problem().text.find("can't be taken back") != std::string::npos);
    CHECK(content(*w).empty());
    put(*w, stock("b", "tin", "1 kg")); // and the file can still be used
    CHECK(content(*w).size() == 1);
}

TEST_CASE("a file that holds more than the program's tables is not opened, and its triggers never run") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "3 kg"));
    const char* more = GENERATE("CREATE TRIGGER t AFTER INSERT ON change BEGIN DELETE FROM stock; END",
                                "CREATE VIEW v AS SELECT * FROM stock", "CREATE INDEX i ON stock (abs(seal))",
                                "ALTER TABLE stock ADD COLUMN more TEXT", "DROP INDEX stock_key",
                                "CREATE VIRTUAL TABLE x USING fts5(a)");
    run_sql(folder.file(), more);
    const auto refused = open_workshop(folder.file());
    REQUIRE(refused.problem().kind == Problem::Kind::file);
    CHECK(refused.problem().text.find("not as this program makes its files") != std::string::npos);
    const auto gathered = salvage_workshop(folder.file(), folder.file("sound"));
    REQUIRE(gathered);
    CHECK(gathered->kept == 1);
    CHECK(content(*open(folder.file("sound"))).size() == 1);
}

TEST_CASE("salvage keeps every row whose check sum fits and names the others") {
    const Folder folder;
    {
        const auto w = open(folder.file());
        for (const char* lot : {"a", "b", "c"}) put(*w, stock(lot, "copper", "3 kg"));
    }
    run_sql(folder.file(), "UPDATE stock SET mass = '4 kg' WHERE lot = 'b'");
    const auto gathered = salvage_workshop(folder.file(), folder.file("sound"));
    REQUIRE(gathered);
    CHECK(gathered->kept == 2);
    REQUIRE(gathered->lost.size() == 1);
    CHECK(gathered->lost[0].find("stock 2") != std::string::npos);
    CHECK(content(*open(folder.file("sound"))).size() == 2);
    CHECK_FALSE(salvage_workshop(folder.file(), folder.file("sound"))); // never overwrites
    std::ofstream(folder.file("text")) << std::string(3000, 'x');
    const auto nothing = salvage_workshop(folder.file("text"), folder.file("none"));
    CHECK((!nothing || nothing->kept == 0));
}

TEST_CASE("a file of a few bytes is damaged, an empty one is new and says what lies beside it") {
    const Folder folder;
    std::ofstream(folder.file()) << "S";
    CHECK(open_workshop(folder.file()).problem().text.find("is damaged (it has only 1 bytes)") != std::string::npos);
    std::ofstream(folder.file("empty.sqlite")).flush();
    std::ofstream(folder.file("empty.sqlite.daily-2026-11-25")) << "copy";
    const auto w = open(folder.file("empty.sqlite"));
    CHECK_FALSE(w->exists());
    CHECK(w->remark().find("empty.sqlite.daily-2026-11-25") != std::string::npos);
    put(*w, stock("a", "copper", "1 kg"));
    CHECK(w->remark().empty());
}

TEST_CASE("a backup is read whole before it takes a file's place") {
    const Folder folder;
    const auto w = open(folder.file());
    put(*w, stock("a", "copper", "3 kg"));
    REQUIRE(w->back_up(folder.file("safe")));
    run_sql(folder.file("safe"), "UPDATE stock SET mass = '4 kg'");
    const auto refused = restore_workshop(folder.file(), folder.file("safe"));
    REQUIRE(refused.problem().kind == Problem::Kind::file);
    CHECK(refused.problem().text.find("stock 1") != std::string::npos);
    CHECK(content(*w).size() == 1);
    CHECK(copies(folder, "before-restore") == 0);
}

TEST_CASE("restore keeps a link and the rights of the file and what is made is for its owner only") {
    const Folder folder;
    const auto rights = [](const std::string& file) { return static_cast<int>(fs::status(file).permissions()) & 0777; };
    const std::string real = folder.file("made/real.sqlite");
    put(*open(real), stock("a", "copper", "3 kg"));
    CHECK(rights(real) == 0600);
    CHECK(rights(folder.path / "made") == 0700);
    REQUIRE(open(real)->back_up(folder.file("safe")));
    CHECK(rights(folder.file("safe")) == 0600);
    put(*open(real), stock("b", "tin", "1 kg"));
    fs::permissions(real, fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
    fs::create_symlink(real, folder.file());
    REQUIRE(restore_workshop(folder.file(), folder.file("safe")));
    CHECK(fs::is_symlink(folder.file()));
    CHECK(content(*open(real)).size() == 1);
    CHECK(rights(real) == 0640);
}

TEST_CASE("numbers go on where SQLite's own counter is lost or mad") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "3 kg"));
    run_sql(folder.file(),
            GENERATE("DELETE FROM sqlite_sequence", "UPDATE sqlite_sequence SET seq = 0",
                     "UPDATE sqlite_sequence SET seq = 'x'", "UPDATE sqlite_sequence SET seq = 9223372036854775807"));
    const auto w = open(folder.file());
    auto batch = w->begin("add");
    REQUIRE(batch);
    REQUIRE((*batch)->put(known_kind("stock"), stock("b", "tin", "1 kg")));
    CHECK((*batch)->last_id() == 2);
}

TEST_CASE("a copy is made before the first change of a day, and seven are kept") {
    const Folder folder;
    put(*open(folder.file()), stock("a", "copper", "3 kg"));
    CHECK(copies(folder, ".daily-") == 0); // there was nothing to copy
    for (int day = 1; day <= 9; ++day)
        std::ofstream(folder.file("workshop.sqlite.daily-2020-01-0" + std::to_string(day))) << "old";
    put(*open(folder.file()), stock("b", "tin", "1 kg"));
    CHECK(copies(folder, ".daily-") == 7);
    CHECK(copies(folder, ".daily-2020-01-03") == 0);
    put(*open(folder.file()), stock("c", "tin", "1 kg"));
    for (const auto& f : fs::directory_iterator(folder.path))
        if (f.path().string().find(".daily-") != std::string::npos &&
            f.path().string().find("2020") == std::string::npos)
            CHECK(content(*open(f.path())).size() == 1);
}

TEST_CASE("without a home folder nothing is written anywhere") {
    const auto w = open("");
    const auto batch = w->begin("add");
    REQUIRE(batch.problem().text.find("--workshop") != std::string::npos);
}
