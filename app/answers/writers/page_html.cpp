#include "answers/writers/page.hpp"

namespace pourbook {
namespace {

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += c;
        }
    return out;
}

constexpr const char* style = R"(
body { font: 13px/1.35 Inter, "DejaVu Sans", sans-serif; color: #1a1a1a; background: #fff; max-width: 60em; margin: 2em auto; padding: 0 1em; }
h1 { font-size: 1.7em; margin: 0 0 .2em; } h2 { font-size: 1.05em; margin: 1em 0 .3em; border-bottom: 1px solid #999; }
h2 b { float: right; font-size: 1.25em; } p { margin: .2em 0; } .caution { border-left: 4px solid #d55e00; padding-left: .6em; }
table { border-collapse: collapse; margin: .5em 0; } th, td { border-bottom: 1px solid #ccc; padding: .15em .7em .15em 0; text-align: left; } .right { text-align: right; }
.blank { display: inline-block; min-width: 9em; border-bottom: 1px solid #1a1a1a; margin: 0 1em .6em .3em; } .sources, footer { font-size: .8em; color: #444; }
section { break-inside: avoid; } @page { margin: 12mm; } @media print { body { margin: 0; max-width: none; font-size: 8.6pt; } .back { break-before: page; } .back ~ .back { break-before: auto; } }
)";

std::string cell(const char* tag, const std::string& text, bool right) {
    return std::string("<") + tag + (right ? " class=\"right\">" : ">") + escaped(text) + "</" + tag + ">";
}

std::string html_table(const DataTable& table) {
    std::string out = "<table>\n<thead><tr>";
    for (const DataColumn& c : table.columns) out += cell("th", c.title, c.number);
    out += "</tr></thead>\n<tbody>\n";
    for (const auto& row : table.rows) {
        out += "<tr>";
        for (std::size_t i = 0; i < row.size(); ++i) out += cell("td", row[i].text, table.columns[i].number);
        out += "</tr>\n";
    }
    return out + "</tbody>\n</table>\n";
}

std::string html_of(const PageBlock& block) {
    switch (block.kind) {
    case PageBlock::Kind::table:
        return html_table(block.table);
    case PageBlock::Kind::line:
        break;
    case PageBlock::Kind::caution:
        return "<p class=\"caution\">" + escaped(block.text) + "</p>\n";
    case PageBlock::Kind::tick:
        return "<p>\u2610 " + escaped(block.text) + "</p>\n";
    case PageBlock::Kind::bullet:
        return "<p>\u2022 " + escaped(block.text) + "</p>\n";
    case PageBlock::Kind::blanks: {
        std::string out = "<p>";
        for (const std::string& name : block.blanks) out += escaped(name) + "<span class=\"blank\">&nbsp;</span>";
        return out + "</p>\n";
    }
    }
    return "<p>" + escaped(block.text) + "</p>\n";
}

} // namespace

std::string page_html(const Page& page) {
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
                      escaped(page.title) + "</title>\n<style>" + style + "</style>\n</head>\n<body>\n<h1>" +
                      escaped(page.title) + "</h1>\n";
    for (const std::string& line : page.subtitle) out += "<p>" + escaped(line) + "</p>\n";
    for (const PageSection& section : page.sections) {
        out += std::string("<section") + (section.part == PageSection::Part::notes ? " class=\"back\"" : "") +
               ">\n<h2>" + escaped(section.title) +
               (section.figure.empty() ? "" : " <b>" + escaped(section.figure) + "</b>") + "</h2>\n";
        for (const auto& block : section.blocks) out += html_of(block);
        out += "</section>\n";
    }
    if (!page.sources.empty()) {
        out += "<section class=\"sources\">\n<h2>Sources</h2>\n<p>";
        for (const std::string& source : page.sources) out += escaped(source) + "; ";
        out += "</p>\n</section>\n";
    }
    if (!page.foot.empty()) out += "<footer>" + escaped(page.foot) + "</footer>\n";
    return out + "</body>\n</html>\n";
}

} // namespace pourbook
