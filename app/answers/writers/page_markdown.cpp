#include "answers/writers/page.hpp"

#include <cctype>

namespace pourbook {
namespace {

/// Signs that Markdown would read as its own stand for themselves; a line in the middle of a word or address is none.
std::string plain(const std::string& text) {
    const auto in_word = [&](std::size_t at) {
        return at > 0 && at + 1 < text.size() && std::isalnum(static_cast<unsigned char>(text[at - 1])) &&
               text[at + 1] != ' ';
    };
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (std::string("\\`*_[]<>|#").find(c) != std::string::npos && !(c == '_' && in_word(i))) out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

std::string markdown_table(const DataTable& table) {
    std::string titles = "|", rule = "|", rows;
    for (const DataColumn& column : table.columns) {
        titles += " " + plain(column.title) + " |";
        rule += column.number ? "---:|" : "---|";
    }
    for (const auto& row : table.rows) {
        rows += "|";
        for (const DataCell& cell : row) rows += " " + plain(cell.text) + " |";
        rows += "\n";
    }
    return "\n" + titles + "\n" + rule + "\n" + rows + "\n";
}

std::string markdown_of(const PageBlock& block) {
    switch (block.kind) {
    case PageBlock::Kind::caution:
        return "- **!** " + plain(block.text) + "\n";
    case PageBlock::Kind::tick:
        return "- [ ] " + plain(block.text) + "\n";
    case PageBlock::Kind::blanks: {
        std::string out = "-";
        for (const std::string& name : block.blanks) out += " " + plain(name) + ": \\_\\_\\_\\_\\_\\_\\_\\_";
        return out + "\n";
    }
    case PageBlock::Kind::table:
        return markdown_table(block.table);
    case PageBlock::Kind::bullet:
    case PageBlock::Kind::line:
        break;
    }
    return "- " + plain(block.text) + "\n";
}

} // namespace

std::string page_markdown(const Page& page) {
    std::string out = "# " + plain(page.title) + "\n\n";
    for (const std::string& line : page.subtitle) out += plain(line) + "\n\n";
    for (const PageSection& section : page.sections) {
        out += "## " + plain(section.title) + (section.figure.empty() ? "" : ": " + plain(section.figure)) + "\n\n";
        for (const auto& block : section.blocks) out += markdown_of(block);
        out += "\n";
    }
    if (!page.sources.empty()) out += "## Sources\n\n";
    for (const std::string& source : page.sources) out += "- " + plain(source) + "\n";
    return out + (page.foot.empty() ? "" : "\n" + plain(page.foot) + "\n");
}

} // namespace pourbook
