// The clock of this machine, and the calendar in which it is told (UTC).
#pragma once

#include <cstdint>
#include <string>

namespace pourbook::platform {

/// Seconds since 1970-01-01T00:00 UTC.
std::int64_t now_s();

/// The day it is; SOURCE_DATE_EPOCH stands for the clock, so that what is written can be written again byte for byte.
/// Empty where that is no number of seconds.
std::string today();

/// "2026-11-30" of such seconds.
std::string utc_day(std::int64_t seconds);
/// "20261130-225900"
std::string utc_stamp(std::int64_t seconds);

/// Noon of a day written "2026-11-30"; 0 where it is no day.
std::int64_t noon_of(const std::string& day);

/// When a file was last written; 0 where there is none.
std::int64_t last_written_s(const std::string& path);

} // namespace pourbook::platform
