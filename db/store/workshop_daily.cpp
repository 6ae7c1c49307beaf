#include "db/store/workshop_daily.hpp"

#include "db/store/workshop_open.hpp"
#include "platform/clock.hpp"

#include <algorithm>
#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;
constexpr std::size_t copies_kept = 7;

/// Files beside `path` whose names go on with one of the marks.
std::vector<fs::path> beside(const fs::path& path, std::initializer_list<const char*> marks) {
    std::vector<fs::path> out;
    std::error_code error;
    const fs::path folder = path.has_parent_path() ? path.parent_path() : ".";
    for (fs::directory_iterator file(folder, error), end; !error && file != end; file.increment(error)) {
        const std::string name = file->path().filename().string(), own = path.filename().string();
        for (const char* mark : marks)
            if (name.starts_with(own + mark)) out.push_back(file->path());
    }
    std::sort(out.begin(), out.end());
    return out;
}

void sweep_drafts(const std::string& path) {
    std::error_code error;
    for (const fs::path& file : beside(path, {"."})) {
        const bool draft = file.filename().string().find(".draft") != std::string::npos;
        constexpr std::int64_t day_s = 24 * 3600;
        const std::int64_t written = platform::last_written_s(file.string());
        if (draft && written != 0 && platform::now_s() - written > day_s) fs::remove(file, error);
    }
}

} // namespace

void keep_daily(SQLite::Database& db, const std::string& path) {
    const std::string day = platform::utc_day(platform::now_s()), copy = path + ".daily-" + day;
    std::error_code error;
    if (fs::exists(copy, error)) return;
    try {
        copy_to_file(db, copy);
    } catch (const std::exception&) {
        return;
    }
    sweep_drafts(path);
    const std::vector<fs::path> daily = beside(path, {".daily-"});
    for (std::size_t i = 0; i + copies_kept < daily.size(); ++i) fs::remove(daily[i], error);
}

std::vector<std::string> copies_beside(const std::string& path) {
    std::vector<std::pair<fs::file_time_type, std::string>> found;
    std::error_code error;
    for (const fs::path& file : beside(path, {".daily-", ".backup-", ".before-", ".damaged-"}))
        found.emplace_back(fs::last_write_time(file, error), file.string());
    std::sort(found.rbegin(), found.rend());
    std::vector<std::string> out;
    for (auto& [written, name] : found)
        if (!name.ends_with("-journal")) out.push_back(std::move(name));
    return out;
}

} // namespace pourbook
