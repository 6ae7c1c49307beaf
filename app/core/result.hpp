// A value, or a problem with its reason. Expected absence ("no value", "outside the cited range", "can't be read")
// travels as a Problem, never as an exception and never as a silent default.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace pourbook {

struct Problem {
    enum class Kind {
        unreadable,   // the words can't be read, or a name inside an expression is unknown
        unknown,      // no such metal, property, goal or source
        no_value,     // nothing citable was found
        out_of_range, // values exist, but not at this temperature
        refused,      // physics, hazard or a limit of the workshop
        file          // damaged, locked, of a newer version, or it can't be written
    };
    Kind kind = Kind::no_value;
    std::string text;
    int column = 0; // 1-based place in the user's text, 0 where it does not apply
};

/// Words that can't be read, and what to write instead.
inline Problem unreadable(std::string text, int column = 0) {
    return {Problem::Kind::unreadable, std::move(text), column};
}
/// Physics, hazard or a limit of the workshop forbids it.
inline Problem refused(std::string text) {
    return {Problem::Kind::refused, std::move(text), 0};
}
/// Nothing citable was found.
inline Problem no_value(std::string text) {
    return {Problem::Kind::no_value, std::move(text), 0};
}

template <class T> class Result {
public:
    Result(T value) : content_(std::move(value)) {}
    Result(Problem problem) : content_(std::move(problem)) {}

    explicit operator bool() const { return content_.index() == 0; }
    const T& operator*() const { return std::get<0>(content_); }
    T& operator*() { return std::get<0>(content_); }
    T* operator->() { return &std::get<0>(content_); }
    const T* operator->() const { return &std::get<0>(content_); }
    const Problem& problem() const { return std::get<1>(content_); }

private:
    std::variant<T, Problem> content_;
};

} // namespace pourbook
