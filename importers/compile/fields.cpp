#include "importers/compile/fields.hpp"

#include <cmath>

namespace pourbook {

bool whole_number(const std::string& text, double& number) {
    std::string_view rest = text;
    return take_number(rest, number) && rest.empty() && std::isfinite(number);
}

Fields::Fields(std::string file, std::string place, const JsonNode& object)
    : file_(std::move(file)), place_(std::move(place)), object_(object) {
    if (object.kind != JsonNode::Kind::object)
        throw InputError(file_, object.line, place_, "an object { } is expected");
}

void Fields::fail_at(const JsonNode& node, const std::string& key, const std::string& problem) const {
    throw InputError(file_, node.line, place_.empty() ? key : key.empty() ? place_ : place_ + "/" + key, problem);
}

void Fields::fail(const std::string& key, const std::string& problem) const {
    const JsonNode* n = object_.find(key);
    fail_at(n ? *n : object_, key, problem);
}

const JsonNode* Fields::node(const std::string& key) {
    asked_.insert(key);
    return object_.find(key);
}

std::string Fields::text(const std::string& key) {
    const JsonNode* n = node(key);
    if (!n) fail(key, "is missing");
    if (n->kind != JsonNode::Kind::text)
        fail(key, "a text in quotation marks is expected (figures are written as printed, in quotation marks)");
    if (n->text.empty()) fail(key, "is empty");
    return n->text;
}

std::string Fields::text_or(const std::string& key, const std::string& otherwise) {
    const JsonNode* n = node(key);
    if (!n) return otherwise;
    if (n->kind != JsonNode::Kind::text) fail(key, "a text in quotation marks is expected");
    return n->text;
}

bool Fields::flag_or(const std::string& key, bool otherwise) {
    const JsonNode* n = node(key);
    if (!n) return otherwise;
    if (n->kind != JsonNode::Kind::boolean) fail(key, "true or false is expected");
    return n->text == "true";
}

double Fields::number_or(const std::string& key, double otherwise) {
    if (!has(key)) {
        asked_.insert(key);
        return otherwise;
    }
    double number = 0;
    if (!whole_number(text(key), number)) fail(key, "'" + text(key) + "' is no number");
    return number;
}

std::vector<std::string> Fields::texts(const std::string& key) {
    std::vector<std::string> out;
    const JsonNode* n = node(key);
    if (!n) return out;
    if (n->kind != JsonNode::Kind::list) fail(key, "a list [ ] is expected");
    for (const JsonNode& item : n->items) {
        if (item.kind != JsonNode::Kind::text) fail_at(item, key, "a text in quotation marks is expected");
        out.push_back(item.text);
    }
    return out;
}

Fields Fields::object(const std::string& key) {
    const JsonNode* n = node(key);
    if (!n) fail(key, "is missing");
    return Fields(file_, place_.empty() ? key : place_ + "/" + key, *n);
}

void Fields::finish() const {
    for (const auto& [key, value] : object_.members)
        if (!asked_.contains(key)) fail_at(value, key, "unknown key: see db/README.md");
}

} // namespace pourbook
