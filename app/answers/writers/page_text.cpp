#include "answers/parts/table.hpp"
#include "answers/writers/page.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string upper(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    return text;
}

std::string blanks_of(const PageBlock& block) {
    std::string out;
    for (const std::string& name : block.blanks) out += (out.empty() ? "" : "  ") + name + " ________";
    return out;
}

std::string lines_of_block(const PageBlock& block) {
    switch (block.kind) {
    case PageBlock::Kind::caution:
        return "! " + block.text;
    case PageBlock::Kind::bullet:
        return "- " + block.text;
    case PageBlock::Kind::tick:
        return "[ ] " + block.text;
    case PageBlock::Kind::blanks:
        return blanks_of(block);
    case PageBlock::Kind::table:
        return as_text(block.table);
    case PageBlock::Kind::line:
        break;
    }
    return block.text;
}

std::string indented(const std::string& text) {
    return wrapped("  " + text, page_width, "    ");
}

} // namespace

std::string page_text(const Page& page) {
    std::string out = upper(page.title) + "\n";
    for (const std::string& line : page.subtitle) out += indented(line);
    for (const PageSection& section : page.sections) {
        out += "\n" + upper(section.title) + (section.figure.empty() ? "" : "  " + section.figure) + "\n";
        for (const auto& block : section.blocks)
            out += block.kind == PageBlock::Kind::table ? lines_of_block(block) : indented(lines_of_block(block));
    }
    if (!page.sources.empty()) {
        std::string all;
        for (const std::string& source : page.sources) all += (all.empty() ? "" : "; ") + source;
        out += "\nSOURCES\n" + indented(all) + indented("in full: pourbook sources KEY");
    }
    return out + (page.foot.empty() ? "" : "\n" + page.foot + "\n");
}

} // namespace pourbook
