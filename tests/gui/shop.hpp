// A workshop's file of a test's own, and entries put into it as another program would.
#pragma once

#include "db/store/workshop_file.hpp"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <filesystem>
#include <map>
#include <memory>
#include <string>

namespace pourbook::testing {

class Shop {
    struct Folder {
        Folder() { std::filesystem::remove_all(path); }
        ~Folder() { std::filesystem::remove_all(path); }
        std::filesystem::path path =
            std::filesystem::temp_directory_path() / ("pourbook-shop-" + std::to_string(::getpid()));
    };
    static std::unique_ptr<Workshop> opened(const Folder& folder) {
        Result<std::unique_ptr<Workshop>> file = open_workshop((folder.path / "workshop.sqlite").string());
        REQUIRE(file);
        return std::move(*file);
    }
    Folder folder_;

public:
    std::unique_ptr<Workshop> workshop = opened(folder_);
};

inline void put(Workshop& workshop, const char* kind, const std::map<std::string, std::string>& fields) {
    Entry entry = new_entry(known_kind(kind));
    for (const auto& [field, words] : fields) text_of(known_kind(kind), entry, field) = words;
    const auto batch = workshop.begin("test");
    REQUIRE(batch);
    REQUIRE((*batch)->put(known_kind(kind), entry));
    REQUIRE((*batch)->commit());
}

} // namespace pourbook::testing
