// Files here lie in memory; app/web/own_files.js brings those of /own into the browser's store.
#include "platform/files.hpp"

#include <sys/stat.h>

#include <fstream>

namespace pourbook::platform {

std::optional<Problem> write_file(const std::string& path, const std::string& bytes) {
    const std::string beside = draft_name(path, "part");
    std::error_code error;
    std::ofstream(beside, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    const bool whole = std::filesystem::file_size(beside, error) == bytes.size() && !error;
    if (whole) std::filesystem::rename(beside, path, error);
    if (whole && !error) return std::nullopt;
    const std::string why = error ? error.message() : "no room";
    std::filesystem::remove(beside, error);
    return Problem{Problem::Kind::file, "'" + path + "' can't be written: " + why, 0};
}

bool make_private(const std::string& path) {
    std::error_code error;
    return !std::filesystem::exists(path, error) && std::ofstream(path).good();
}

std::string file_identity(const std::string& path) {
    struct stat file {};
    return ::stat(path.c_str(), &file) == 0 ? std::to_string(file.st_ino) : std::string();
}

std::string draft_name(const std::string& path, const std::string& ending) {
    return path + ".page." + ending; // one program alone has these files
}

} // namespace pourbook::platform
