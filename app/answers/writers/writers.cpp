#include "answers/writers/writers.hpp"

#include "questions/metals/find_words.hpp"

#include <array>

namespace pourbook {
namespace {

struct Named {
    const char* word;
    TableFormat format;
};
constexpr std::array formats = {Named{"text", TableFormat::text},
                                Named{"txt", TableFormat::text},
                                Named{"description", TableFormat::description},
                                Named{"csv", TableFormat::csv},
                                Named{"md", TableFormat::markdown},
                                Named{"html", TableFormat::html},
                                Named{"json", TableFormat::json},
                                Named{"xlsx", TableFormat::xlsx}};

} // namespace

Result<TableFormat> table_format(const std::string& file) {
    const std::size_t dot = file.find_last_of("./");
    if (dot != std::string::npos && file[dot] == '.')
        for (const Named& f : formats)
            if (lower_case(file.substr(dot + 1)) == f.word && f.word != std::string("text") &&
                f.format != TableFormat::description)
                return f.format;
    return Problem{Problem::Kind::unreadable,
                   "'" + file + "': a table's name ends in .csv, .md, .html, .json, .xlsx or .txt", 0};
}

Result<TableFormat> table_format_named(const std::string& word) {
    for (const Named& f : formats)
        if (word == f.word) return f.format;
    return Problem{Problem::Kind::unreadable,
                   "--format '" + word + "': csv, md, html, json, xlsx, text or description is expected", 0};
}

Result<std::string> written(const Document& document, TableFormat format) {
    switch (format) {
    case TableFormat::csv:
        return csv_of(document);
    case TableFormat::json:
        return json_of(document);
    case TableFormat::xlsx:
        return xlsx_of(document);
    case TableFormat::markdown:
        return page_markdown(page_of(document));
    case TableFormat::html:
        return page_html(page_of(document));
    case TableFormat::description:
        return description_text(document);
    case TableFormat::text:
        break;
    }
    return page_text(page_of(document));
}

} // namespace pourbook
