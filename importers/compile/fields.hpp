// Typed reading of one JSON object: every field is asked for once, and what nobody asked for is a fault.
#pragma once

#include "importers/common/located_json.hpp"

#include "core/quantity/unit.hpp"

#include <set>
#include <string>
#include <vector>

namespace pourbook {

class Fields {
public:
    /// Throws InputError if the node is no object.
    Fields(std::string file, std::string place, const JsonNode& object);

    bool has(const std::string& key) const { return object_.find(key) != nullptr; }
    std::string text(const std::string& key);                                  // required, not empty
    std::string text_or(const std::string& key, const std::string& otherwise); // optional
    bool flag_or(const std::string& key, bool otherwise);
    double number_or(const std::string& key, double otherwise); // a number written as text
    std::vector<std::string> texts(const std::string& key);     // optional list of texts
    const JsonNode* node(const std::string& key);               // optional, any kind
    Fields object(const std::string& key);                      // required object
    /// Throws for the first key that was never asked for.
    void finish() const;

    [[noreturn]] void fail(const std::string& key, const std::string& problem) const;
    [[noreturn]] void fail_at(const JsonNode& node, const std::string& key, const std::string& problem) const;
    int line() const { return object_.line; }
    const std::string& place() const { return place_; }
    const std::string& file() const { return file_; }

private:
    std::string file_, place_;
    const JsonNode& object_;
    std::set<std::string> asked_;
};

/// "60 %" or a plain number. Locale-independent; false if anything is left over.
bool whole_number(const std::string& text, double& number);

} // namespace pourbook
