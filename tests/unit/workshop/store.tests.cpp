// The workshop's own file: nothing lost, nothing half written, everything can be undone.
#include "db/store/workshop_file.hpp"

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
    next.schema.push_back({2, "CREATE TABLE shelf (id INTEGER PRIMARY KEY) STRICT;"});
    SECTION("it works") {
        const auto w = open_workshop(folder.file(), next);
        REQUIRE(w);
        REQUIRE(content(**w).size() == 1);
        REQUIRE((*w)->undo().problem().kind == Problem::Kind::refused); // the journal belonged to the old tables
        REQUIRE(open_workshop(folder.file()).problem().text.find("newer version") != std::string::npos);
        const auto backup = open(folder.file("workshop.sqlite.before-schema-2"));
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
    REQUIRE(w->undo());
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
