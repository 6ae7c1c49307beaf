// A page for the wall, before it is known how it is drawn: sections of lines and tables. Writers: text, Markdown, HTML
// (here) and PDF (page_pdf.hpp).
#pragma once

#include "answers/parts/table.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PageBlock {
    enum class Kind { line, caution, bullet, tick, blanks, table }; // tick: a box to tick; blanks: lines to fill in
    Kind kind = Kind::line;
    std::string text;
    std::vector<std::string> blanks; // what to fill in
    DataTable table;
};

struct PageSection {
    enum class Part { plan, pattern, cautions, limits, to_fill_in, notes }; // notes: the reverse of the sheet
    std::string title;
    std::string figure; // the one to read from across the room; may be empty
    std::vector<PageBlock> blocks;
    Part part = Part::plan;
    std::string grounds; // of the figure: how it came about and whence; shown on hover

    bool warns() const { return part == Part::cautions || part == Part::limits; }
    void add(const std::string& text, PageBlock::Kind kind = PageBlock::Kind::line) {
        blocks.push_back({kind, text, {}, {}});
    }
};

struct Page {
    std::string title;
    std::vector<std::string> subtitle;
    std::vector<PageSection> sections;
    std::vector<std::string> sources; // "[key] title year"
    std::string foot;                 // program, data version, date
};

/// The same page with signs as in print: °C, cm³, ±, 10⁻⁶/K. The text writer leaves them to the terminal.
Page in_print(Page page);
std::string in_print(std::string text);

std::string page_text(const Page& page);
std::string page_markdown(const Page& page);
/// One file without foreign parts, prints on A4 or Letter.
std::string page_html(const Page& page);

} // namespace pourbook
