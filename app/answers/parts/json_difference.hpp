// What differs between two answers in JSON, figure by figure.
#pragma once

#include <string>
#include <vector>

namespace pourbook {

struct JsonDifference {
    std::string at;            // "results[3].median"
    std::string before, after; // empty: not there
};

/// Texts that are no JSON are compared as a whole.
std::vector<JsonDifference> json_differences(const std::string& before, const std::string& after);

struct AnswerAgain {
    std::string name, question, command, date, data_version_then, data_version_now;
    std::vector<JsonDifference> differences;
};
std::string json_of(const AnswerAgain& again);
std::string text_of(const AnswerAgain& again);

} // namespace pourbook
