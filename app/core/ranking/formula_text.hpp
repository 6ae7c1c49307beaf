// The text of a formula, read from left to right.
#pragma once

#include "core/result.hpp"

#include <string>
#include <string_view>

namespace pourbook {

/// Thrown by the readers of a formula at the first thing that is wrong; caught where reading began.
struct FormulaFault {
    Problem problem;
};

class FormulaText {
public:
    /// The text must outlive this. FormulaFault when it is longer than 2000 characters.
    explicit FormulaText(std::string_view text);

    /// FormulaFault at the column, else where reading stands.
    [[noreturn]] void stop(const std::string& what, int column = 0) const;

    bool ended() const { return at_ == text_.size(); }
    char peek() const { return ended() ? '\0' : text_[at_]; }
    bool ahead(std::string_view what) const { return text_.substr(at_).starts_with(what); }
    void skip(std::size_t characters) { at_ += characters; }
    void blanks();
    int here(); // column behind blanks, from 1

    // Left unread; "" where there is none.
    std::string peek_word();
    std::string comparison_sign();
    std::string unit_ahead(); // of the number just read

    double number();
    std::string quoted_or_plain_word();

private:
    std::string unit_run() const;

    std::string_view text_;
    std::size_t at_ = 0;
};

bool is_name_start(char c);
bool is_digit(char c);

} // namespace pourbook
