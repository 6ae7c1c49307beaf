#include "importers/shop/decimal_marks.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::size_t count_of(const std::string& text, char mark) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), mark));
}

/// One mark with one to three figures before it, the first not 0, and exactly three behind it: 1.234, not 0.125.
bool could_be_thousands(const std::string& text, char mark) {
    const std::size_t at = text.find(mark), first = text.find_first_of("0123456789");
    if (first >= at || text[first] == '0' || at - first > 3) return false;
    const std::size_t behind = text.find_first_not_of("0123456789", at + 1);
    return std::min(behind, text.size()) - at - 1 == 3;
}

std::string cannot_tell(const std::string& text) {
    return "'" + text + "' may mean thousands or decimals: write it without thousands marks, with a decimal point";
}

/// Two kinds of marks: the last is the decimal one.
void take_out_thousands(std::string& text) {
    std::erase(text, text.rfind(',') > text.rfind('.') ? '.' : ',');
    std::replace(text.begin(), text.end(), ',', '.');
}

std::string plain_commas(std::string& text, bool other_list, const DecimalMarks& marks) {
    const bool thousands = could_be_thousands(text, ',') && marks.point && !marks.comma;
    const bool told = !could_be_thousands(text, ',') || thousands || (marks.comma && !marks.point);
    const bool usual = other_list && !marks.point;
    if (count_of(text, ',') > 1 || !(told || usual)) return cannot_tell(text);
    if (thousands)
        std::erase(text, ',');
    else
        text[text.find(',')] = '.';
    return {};
}

/// In a list whose decimal mark may be a comma.
std::string plain_points(std::string& text, const DecimalMarks& marks) {
    if (count_of(text, '.') > 1 || !could_be_thousands(text, '.') || (marks.point && !marks.comma)) return {};
    if (!marks.comma || marks.point) return cannot_tell(text);
    std::erase(text, '.');
    return {};
}

} // namespace

void DecimalMarks::look_at(const std::string& number) {
    const std::size_t commas = count_of(number, ','), points = count_of(number, '.');
    if (commas > 0 && points > 0)
        (number.rfind(',') > number.rfind('.') ? comma : point) = true;
    else if (commas == 1 && !could_be_thousands(number, ','))
        comma = true;
    else if (points == 1 && !could_be_thousands(number, '.'))
        point = true;
}

std::string plain_number(std::string& text, bool other_list, const DecimalMarks& marks) {
    const std::size_t commas = count_of(text, ','), points = count_of(text, '.');
    if (commas > 0 && points > 0)
        take_out_thousands(text);
    else if (commas > 0)
        return plain_commas(text, other_list, marks);
    else if (points > 0 && other_list)
        return plain_points(text, marks);
    return {};
}

} // namespace pourbook
