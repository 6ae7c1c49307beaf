#include "answers/pour/pour_file.hpp"

#include "answers/picture/page_pdf.hpp"

namespace pourbook {

Result<std::string> pour_sheet_file(const PourResult& plan, const Catalogue& catalogue, UnitSystem units,
                                    const std::string& file, const std::string& date) {
    const auto ends = [&](const char* ending) { return file.ends_with(ending); };
    if (ends(".json")) return json_of(plan, catalogue);
    Page page = pour_page(plan, catalogue, units);
    page.foot += ", " + date;
    if (ends(".txt")) return page_text(page);
    if (ends(".md")) return page_markdown(in_print(page));
    if (ends(".html")) return page_html(in_print(page));
    if (ends(".pdf")) return page_pdf(in_print(page), date);
    return Problem{Problem::Kind::unreadable, "'" + file + "': a pour sheet's name ends in " + pour_sheet_endings, 0};
}

} // namespace pourbook
