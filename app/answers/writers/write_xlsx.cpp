#include "answers/writers/writers.hpp"

#include "answers/parts/citation.hpp"
#include "answers/writers/flat.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"

#include <xlsxwriter.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <fstream>
#include <sstream>

namespace pourbook {
namespace {

constexpr std::size_t most_letters = 32000; // of a cell; the format ends at 32767

/// Whole signs of UTF-8, so that a text too long for a cell is cut and not refused.
std::string fitting(std::string text) {
    if (text.size() <= most_letters) return text;
    std::size_t end = most_letters;
    while ((static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    return text.substr(0, end) + "…";
}

class Book {
public:
    explicit Book(const std::string& file) : book_(workbook_new(file.c_str())) {
        bold_ = workbook_add_format(book_);
        format_set_bold(bold_);
        dim_ = workbook_add_format(book_);
        format_set_font_color(dim_, 0x555555);
    }

    lxw_worksheet* sheet(const std::string& name) { return workbook_add_worksheet(book_, name.c_str()); }

    void text(lxw_worksheet* sheet, std::size_t row, std::size_t column, const std::string& words,
              lxw_format* look = nullptr) {
        if (!words.empty())
            note(worksheet_write_string(sheet, static_cast<lxw_row_t>(row), static_cast<lxw_col_t>(column),
                                        fitting(words).c_str(), look));
    }

    void add(const DataTable& part, const std::string& name) {
        const DataTable table = flat(part);
        lxw_worksheet* page = sheet(name);
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            text(page, 0, i, table.columns[i].title, bold_);
            text(page, 1, i, table.columns[i].unit, dim_);
            worksheet_set_column(page, static_cast<lxw_col_t>(i), static_cast<lxw_col_t>(i), 18, nullptr);
        }
        for (std::size_t r = 0; r < table.rows.size(); ++r)
            for (std::size_t i = 0; i < table.rows[r].size(); ++i) {
                const DataCell& cell = table.rows[r][i];
                if (std::isfinite(cell.number)) // never NaN: the writer would make a broken sheet of it
                    note(worksheet_write_number(page, static_cast<lxw_row_t>(r + 2), static_cast<lxw_col_t>(i),
                                                cell.number, nullptr));
                else
                    text(page, r + 2, i, cell.text);
            }
        worksheet_freeze_panes(page, 2, 1);
    }

    void add(const std::string& name, const std::vector<std::pair<std::string, std::string>>& pairs, double first,
             double second) {
        lxw_worksheet* page = sheet(name);
        worksheet_set_column(page, 0, 0, first, nullptr);
        worksheet_set_column(page, 1, 1, second, nullptr);
        for (std::size_t r = 0; r < pairs.size(); ++r) {
            text(page, r, 0, pairs[r].first, bold_);
            text(page, r, 1, pairs[r].second);
        }
    }

    /// The date a reader shows; never the clock's, so that the bytes repeat.
    void about(const Document& document) {
        std::string title = document.title;
        lxw_doc_properties properties{};
        properties.title = title.data();
        properties.created = static_cast<std::time_t>(platform::noon_of(document.date));
        note(workbook_set_properties(book_, &properties));
    }

    lxw_error close() {
        note(workbook_close(book_));
        return first_;
    }

private:
    void note(lxw_error error) {
        if (first_ == LXW_NO_ERROR) first_ = error;
    }

    lxw_workbook* book_;
    lxw_format *bold_, *dim_;
    lxw_error first_ = LXW_NO_ERROR;
};

/// Generously: the sheets before they are packed, and the packed file.
std::uintmax_t bytes_needed(const Document& document) {
    std::uintmax_t cells = 1000;
    for (const DataTable& part : document.parts) cells += part.rows.size() * (part.columns.size() + 1) * 3;
    return cells * 200;
}

lxw_error write(const Document& document, const std::string& file) {
    Book book(file);
    book.about(document);
    for (const DataTable* part : document.tables(in::file)) book.add(*part, part->title.substr(0, LXW_SHEETNAME_MAX));
    std::vector<std::pair<std::string, std::string>> about = {{"title", document.title}}, sources;
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::file) about.emplace_back(f.id, f.words());
    for (const Sentence& note : document.notes)
        if (note.shown_in & in::file) about.emplace_back("note", note.text);
    about.emplace_back("data version", document.data_version);
    about.emplace_back("cite as", how_to_cite(document.data_version));
    about.emplace_back("date", document.date);
    for (const Reference* r : document.sources) sources.emplace_back(r->key, r->full());
    book.add("Conditions", about, 22, 90);
    if (!sources.empty()) book.add("Sources", sources, 26, 120);
    return book.close();
}

} // namespace

Result<std::string> xlsx_of(const Document& document) {
    const platform::WorkFolder folder;
    const auto failed = [&folder](const std::string& why) {
        return Problem{Problem::Kind::file,
                       "the table can't be made in the temporary folder '" + folder.above().string() + "': " + why, 0};
    };
    if (folder.path().empty()) return failed(folder.fault());
    if (folder.free_bytes() < bytes_needed(document))
        return failed("no space left on it"); // the library would print it
    const std::string file = (folder.path() / "table.xlsx").string();
    const lxw_error fault = write(document, file);
    std::ostringstream bytes;
    bytes << std::ifstream(file, std::ios::binary).rdbuf();
    if (fault != LXW_NO_ERROR || bytes.str().empty()) return failed(lxw_strerror(fault));
    return bytes.str();
}

} // namespace pourbook
