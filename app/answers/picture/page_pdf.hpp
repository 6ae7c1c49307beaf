// A page as a PDF on A4, front and back.
#pragma once

#include "answers/writers/page.hpp"
#include "core/result.hpp"

#include <string>

namespace pourbook {

/// `date` "2026-11-25" goes into the file's own description; the same page and date give the same bytes.
/// Errors: no_value (a font is missing), refused (can't be drawn).
Result<std::string> page_pdf(const Page& page, const std::string& date);

} // namespace pourbook
