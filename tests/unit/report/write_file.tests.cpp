// A file is written whole or not at all, and nothing is left beside it.
#include "platform/files.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

#include <unistd.h>

using namespace pourbook;
namespace fs = std::filesystem;

namespace {

struct FolderToWrite {
    fs::path path = fs::temp_directory_path() / ("pourbook-write." + std::to_string(::getpid()));
    FolderToWrite() { fs::create_directories(path); }
    ~FolderToWrite() { fs::remove_all(path); }
    std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(path), fs::directory_iterator{}));
    }
};

std::string read(const fs::path& file) {
    std::ostringstream out;
    out << std::ifstream(file, std::ios::binary).rdbuf();
    return out.str();
}

} // namespace

TEST_CASE("a file is written, replaced, and keeps its rights and its link") {
    const FolderToWrite f;
    const fs::path file = f.path / "a.csv", link = f.path / "link.csv";
    CHECK_FALSE(platform::write_file(file, std::string("one\0two", 7)));
    CHECK(read(file) == std::string("one\0two", 7));
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink(file, link);
    CHECK_FALSE(platform::write_file(link, "three"));
    CHECK(read(file) == "three");
    CHECK(fs::is_symlink(link));
    CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
    CHECK(f.files() == 2);
}

TEST_CASE("what can't be written is told in words and nothing is left") {
    const FolderToWrite f;
    for (const fs::path& path : {f.path, f.path / "no" / "such" / "folder.csv", fs::path("/dev/null"), fs::path()}) {
        const auto problem = platform::write_file(path, "x");
        REQUIRE(problem);
        CHECK(problem->kind == Problem::Kind::file);
        CHECK(problem->text.find("can't be written: ") != std::string::npos);
    }
    CHECK(f.files() == 0);
}
