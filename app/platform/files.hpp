// What a program may want of files that std::filesystem does not give.
#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace pourbook::platform {

/// Bytes into a file, whole or not at all: writes a new file beside the old one and puts it in its place, so that a
/// failure leaves the old one as it was. Errors: file, with the system's reason.
std::optional<Problem> write_file(const std::string& path, const std::string& bytes);

/// An empty file for this user only; false where there is one already or none can be made.
bool make_private(const std::string& path);

/// Which file lies at the path, whatever it is named; empty where there is none.
std::string file_identity(const std::string& path);

/// A name beside `path` that no other running program chooses: "path.1234.part" for the ending "part".
std::string draft_name(const std::string& path, const std::string& ending);

/// A folder of this process alone below the system's temporary one, whose name nobody can foresee; taken away with what
/// is in it.
class WorkFolder {
public:
    WorkFolder();
    ~WorkFolder();
    WorkFolder(const WorkFolder&) = delete;
    WorkFolder& operator=(const WorkFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }   // empty: none could be made
    const std::filesystem::path& above() const { return above_; } // the temporary folder
    const std::string& fault() const { return fault_; }           // why none could be made
    std::uintmax_t free_bytes() const;

private:
    std::filesystem::path above_, path_;
    std::string fault_;
};

} // namespace pourbook::platform
