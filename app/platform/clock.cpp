#include "platform/clock.hpp"

#include <charconv>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>

namespace pourbook::platform {
namespace {

using namespace std::chrono;

struct Moment {
    year_month_day day;
    std::int64_t second_of_day;
};

Moment moment(std::int64_t s) {
    const sys_seconds when{seconds(s)};
    const sys_days midnight = floor<days>(when);
    return {midnight, (when - midnight).count()};
}

template <class... Parts> std::string filled(const char* form, const year_month_day& day, Parts... parts) {
    char text[64];
    std::snprintf(text, sizeof text, form, static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                  static_cast<unsigned>(day.day()), parts...);
    return text;
}

} // namespace

std::int64_t now_s() {
    return std::time(nullptr);
}

std::string today() {
    std::int64_t now = now_s();
    if (const char* set = std::getenv("SOURCE_DATE_EPOCH"); set && *set) {
        const char* end = set + std::strlen(set);
        if (std::from_chars(set, end, now).ptr != end) return {};
    }
    constexpr std::int64_t first_of_year_1 = -62135596800, first_of_year_10000 = 253402300800;
    return now >= first_of_year_1 && now < first_of_year_10000 ? utc_day(now) : "";
}

std::string utc_day(std::int64_t seconds) {
    return filled("%04d-%02u-%02u", moment(seconds).day);
}

std::string utc_stamp(std::int64_t seconds) {
    const auto [day, s] = moment(seconds);
    return filled("%04d%02u%02u-%02d%02d%02d", day, static_cast<int>(s / 3600), static_cast<int>(s / 60 % 60),
                  static_cast<int>(s % 60));
}

std::int64_t noon_of(const std::string& day) {
    int y = 0;
    unsigned m = 0, d = 0;
    if (std::sscanf(day.c_str(), "%4d-%2u-%2u", &y, &m, &d) != 3) return 0;
    const year_month_day read{year(y), month(m), std::chrono::day(d)};
    constexpr int noon_s = 12 * 3600;
    return read.ok() ? sys_seconds(sys_days(read)).time_since_epoch().count() + noon_s : 0;
}

std::int64_t last_written_s(const std::string& path) {
    namespace fs = std::filesystem;
    std::error_code error;
    const auto age = fs::file_time_type::clock::now() - fs::last_write_time(path, error);
    return error ? 0 : now_s() - duration_cast<seconds>(age).count();
}

} // namespace pourbook::platform
