// JSON with the line of every value, so that a message can say where. Duplicate keys are refused. UTF-8 only.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

/// "file:line: field: problem" - a fault in an input file.
class InputError : public std::runtime_error {
public:
    InputError(const std::string& file, int line, const std::string& field, const std::string& problem)
        : std::runtime_error(file + ":" + std::to_string(line) + ": " + (field.empty() ? "" : field + ": ") + problem) {
    }
};

struct JsonMember;

struct JsonNode {
    enum class Kind { null, boolean, number, text, list, object };
    Kind kind = Kind::null;
    int line = 0;
    std::string text; // of texts and numbers, as written; "true" or "false"
    std::vector<JsonNode> items;
    std::vector<JsonMember> members;

    const JsonNode* find(std::string_view key) const;
};

struct JsonMember {
    std::string key;
    JsonNode value;
};

/// Throws InputError with the line and column of the first fault.
JsonNode parse_located_json(const std::string& file_name, const std::string& content);

/// Reads the file whole. Throws InputError.
std::string read_text_file(const std::string& path);

} // namespace pourbook
