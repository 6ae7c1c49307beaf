#include "answers/help/help_report.hpp"

#include "answers/parts/json_parts.hpp"

namespace pourbook {

std::string json_of_help(const std::string& page, const std::string& text) {
    return json_text({{"page", page}, {"text", text}});
}

} // namespace pourbook
