#include "core/ranking/formula_text.hpp"

#include "core/quantity/unit.hpp"

#include <cctype>

namespace pourbook {
namespace {

constexpr std::size_t longest = 2000;

bool is_name_part(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_';
}

} // namespace

bool is_name_start(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) || c == '_';
}

bool is_digit(char c) {
    return std::isdigit(static_cast<unsigned char>(c));
}

FormulaText::FormulaText(std::string_view text) : text_(text) {
    if (text_.size() > longest) stop("too long: at most 2000 characters", static_cast<int>(longest) + 1);
}

void FormulaText::stop(const std::string& what, int column) const {
    throw FormulaFault{{Problem::Kind::unreadable, what, column ? column : static_cast<int>(at_) + 1}};
}

void FormulaText::blanks() {
    while (!ended() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
}

int FormulaText::here() {
    blanks();
    return static_cast<int>(at_) + 1;
}

std::string FormulaText::peek_word() {
    blanks();
    std::size_t end = at_;
    if (end < text_.size() && is_name_start(text_[end]))
        while (end < text_.size() && is_name_part(text_[end])) ++end;
    return std::string(text_.substr(at_, end - at_));
}

std::string FormulaText::comparison_sign() {
    blanks();
    for (const char* sign : {"<=", ">=", "==", "!=", "<", ">", "="})
        if (ahead(sign)) return sign;
    return {};
}

double FormulaText::number() {
    std::string_view rest = text_.substr(at_);
    double number = 0;
    if (!take_number(rest, number)) stop("can't read this number");
    at_ = text_.size() - rest.size();
    return number;
}

std::string FormulaText::unit_ahead() {
    const std::size_t behind_number = at_;
    blanks();
    std::string unit = unit_run();
    if (!unit.empty() && unit != "and" && unit != "or") return unit;
    at_ = behind_number;
    return {};
}

/// Characters that can belong to a unit, brackets only in balance.
std::string FormulaText::unit_run() const {
    std::size_t end = at_;
    int open = 0;
    if (end >= text_.size() ||
        !(std::isalpha(static_cast<unsigned char>(text_[end])) || text_[end] == '%' || (text_[end] & 0x80)))
        return {};
    for (; end < text_.size(); ++end) {
        const char c = text_[end];
        if (c == '(') ++open;
        if (c == ')' && --open < 0) break;
        const bool fits = std::isalnum(static_cast<unsigned char>(c)) || (c & 0x80) ||
                          std::string_view("%./^()").find(c) != std::string_view::npos;
        if (!fits) break;
    }
    return std::string(text_.substr(at_, end - at_));
}

std::string FormulaText::quoted_or_plain_word() {
    blanks();
    if (peek() == '"' || peek() == '\'') {
        const char mark = text_[at_++];
        const std::size_t end = text_.find(mark, at_);
        if (end == std::string_view::npos) stop("the closing quotation mark is missing");
        std::string word(text_.substr(at_, end - at_));
        at_ = end + 1;
        return word;
    }
    const std::size_t start = at_;
    while (is_name_part(peek()) || peek() == '-') ++at_;
    if (at_ == start) stop("a word is expected");
    return std::string(text_.substr(start, at_ - start));
}

} // namespace pourbook
