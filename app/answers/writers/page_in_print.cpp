#include "answers/writers/page.hpp"

#include <array>
#include <utility>

namespace pourbook {
namespace {

constexpr std::array<std::pair<const char*, const char*>, 10> signs = {{{"degC", "°C"},
                                                                        {"degF", "°F"},
                                                                        {"cm3", "cm³"},
                                                                        {"in3", "in³"},
                                                                        {"kg/m3", "kg/m³"},
                                                                        {"mg/m3", "mg/m³"},
                                                                        {"lb/in3", "lb/in³"},
                                                                        {"+-", "±"},
                                                                        {" 1e-6/K", "·10⁻⁶/K"},
                                                                        {"uohm.cm", "µΩ·cm"}}};

void print(std::string& text) {
    for (const auto& [typed, printed] : signs)
        for (std::size_t at = text.find(typed); at != std::string::npos; at = text.find(typed, at))
            text.replace(at, std::string(typed).size(), printed);
}

void print(std::vector<std::string>& texts) {
    for (std::string& text : texts) print(text);
}

} // namespace

std::string in_print(std::string text) {
    print(text);
    return text;
}

Page in_print(Page page) {
    print(page.title);
    print(page.subtitle);
    for (PageSection& section : page.sections) {
        print(section.figure);
        for (PageBlock& block : section.blocks) {
            print(block.text);
            for (auto& row : block.table.rows)
                for (DataCell& cell : row) print(cell.text);
        }
    }
    return page;
}

} // namespace pourbook
