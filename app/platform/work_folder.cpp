#include "platform/files.hpp"

#include <random>

namespace pourbook::platform {
namespace {

std::string chance_name() {
    std::random_device chance;
    std::string name = "pourbook-";
    for (int i = 0; i < 16; ++i) name += "abcdefghijklmnopqrstuvwxyz"[chance() % 26];
    return name;
}

} // namespace

WorkFolder::WorkFolder() {
    namespace fs = std::filesystem;
    std::error_code error;
    above_ = fs::temp_directory_path(error);
    const fs::path folder = above_ / chance_name();
    const bool made = !error && fs::create_directory(folder, error);
    if (made) fs::permissions(folder, fs::perms::owner_all, error);
    if (made && !error)
        path_ = folder;
    else
        fault_ = error ? error.message() : "'" + folder.string() + "' is there already";
}

WorkFolder::~WorkFolder() {
    std::error_code ignored;
    if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
}

std::uintmax_t WorkFolder::free_bytes() const {
    std::error_code error;
    const auto space = std::filesystem::space(path_, error);
    return error ? UINTMAX_MAX : space.available;
}

} // namespace pourbook::platform
