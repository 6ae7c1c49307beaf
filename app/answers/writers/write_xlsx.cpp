#include "answers/writers/writers.hpp"

#include "answers/parts/citation.hpp"
#include "answers/writers/flat.hpp"

#include <xlsxwriter.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <sstream>

#include <unistd.h>

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
        const Flat table = flat(part);
        lxw_worksheet* page = sheet(name);
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            text(page, 0, i, table.columns[i].title, bold_);
            text(page, 1, i, table.columns[i].unit, dim_);
            worksheet_set_column(page, static_cast<lxw_col_t>(i), static_cast<lxw_col_t>(i), 18, nullptr);
        }
        for (std::size_t r = 0; r < table.rows.size(); ++r)
            for (std::size_t i = 0; i < table.rows[r].size(); ++i) {
                const FlatCell& cell = table.rows[r][i];
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
        std::tm day{};
        std::istringstream(document.date) >> std::get_time(&day, "%Y-%m-%d");
        day.tm_hour = 12;
        std::string title = document.title;
        lxw_doc_properties properties{};
        properties.title = title.data();
        properties.created = timegm(&day);
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

/// A folder of this process alone, whose name nobody can foresee; taken away with what is in it.
class WorkFolder {
public:
    WorkFolder() {
        std::error_code error;
        above_ = std::filesystem::temp_directory_path(error).string();
        std::string name = above_ + "/pourbook-XXXXXX";
        if (!above_.empty() && ::mkdtemp(name.data())) path_ = name;
    }
    ~WorkFolder() {
        std::error_code ignored;
        if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
    }
    WorkFolder(const WorkFolder&) = delete;
    WorkFolder& operator=(const WorkFolder&) = delete;

    const std::string& path() const { return path_; } // empty: none could be made
    const std::string& above() const { return above_; }
    std::uintmax_t free_bytes() const {
        std::error_code error;
        const auto space = std::filesystem::space(path_, error);
        return error ? UINTMAX_MAX : space.available;
    }

private:
    std::string above_, path_;
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
    const WorkFolder folder;
    const auto failed = [&folder](const std::string& why) {
        return Problem{Problem::Kind::file,
                       "the table can't be made in the temporary folder '" + folder.above() + "': " + why, 0};
    };
    if (folder.path().empty()) return failed(std::strerror(errno));
    if (folder.free_bytes() < bytes_needed(document))
        return failed(std::strerror(ENOSPC)); // the library would print it
    const std::string file = folder.path() + "/table.xlsx";
    const lxw_error fault = write(document, file);
    std::ostringstream bytes;
    bytes << std::ifstream(file, std::ios::binary).rdbuf();
    if (fault != LXW_NO_ERROR || bytes.str().empty()) return failed(lxw_strerror(fault));
    return bytes.str();
}

} // namespace pourbook
