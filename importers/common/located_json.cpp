#include "importers/common/located_json.hpp"

#include <nlohmann/json.hpp>

#include <fstream>
#include <iterator>
#include <sstream>

namespace pourbook {
namespace {

constexpr std::size_t deepest = 64;

/// Input iterator that counts the lines the parser has consumed.
class CountingIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* at, int* line) : at_(at), line_(line) {}
    const char& operator*() const { return *at_; }
    CountingIterator& operator++() {
        if (*at_ == '\n') ++*line_;
        ++at_;
        return *this;
    }
    bool operator==(const CountingIterator& other) const { return at_ == other.at_; }
    bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

private:
    const char* at_;
    int* line_;
};

class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
public:
    TreeBuilder(std::string file, const int& line) : file_(std::move(file)), line_(line) {}

    bool null() override { return leaf(JsonNode::Kind::null, "null"); }
    bool boolean(bool value) override { return leaf(JsonNode::Kind::boolean, value ? "true" : "false"); }
    bool number_integer(number_integer_t value) override { return leaf(JsonNode::Kind::number, std::to_string(value)); }
    bool number_unsigned(number_unsigned_t value) override {
        return leaf(JsonNode::Kind::number, std::to_string(value));
    }
    bool number_float(number_float_t, const string_t& written) override {
        return leaf(JsonNode::Kind::number, written);
    }
    bool string(string_t& value) override { return leaf(JsonNode::Kind::text, value); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(JsonNode::Kind::object); }
    bool start_array(std::size_t) override { return open(JsonNode::Kind::list); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& name) override {
        JsonNode& object = *open_.back();
        if (object.find(name)) throw InputError(file_, line_, name, "this key stands twice in the object");
        object.members.push_back({name, JsonNode{}});
        return true;
    }
    bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception& e) override {
        if (dynamic_cast<const nlohmann::json::out_of_range*>(&e))
            throw InputError(file_, line_, "", "a number is larger than any this program can hold");
        const std::string what = std::string(e.what()).substr(0, 300);
        const std::size_t start = what.find("column ");
        throw InputError(file_, line_, "",
                         "not valid JSON at " + (start == std::string::npos ? what : what.substr(start)));
    }

    JsonNode root;

private:
    /// The node for the next value: the last member's, a new item, or the root.
    JsonNode& slot() {
        if (open_.empty()) return root;
        JsonNode& parent = *open_.back();
        if (parent.kind == JsonNode::Kind::object) return parent.members.back().value;
        return parent.items.emplace_back();
    }
    bool leaf(JsonNode::Kind kind, std::string text) {
        JsonNode& n = slot();
        n.kind = kind;
        n.line = line_;
        n.text = std::move(text);
        return true;
    }
    bool open(JsonNode::Kind kind) {
        if (open_.size() >= deepest) throw InputError(file_, line_, "", "nested too deeply");
        JsonNode& n = slot();
        n.kind = kind;
        n.line = line_;
        open_.push_back(&n);
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    std::string file_;
    const int& line_;
    std::vector<JsonNode*> open_;
};

} // namespace

const JsonNode* JsonNode::find(std::string_view key) const {
    for (const auto& [name, node] : members)
        if (name == key) return &node;
    return nullptr;
}

JsonNode parse_located_json(const std::string& file_name, const std::string& content) {
    int line = 1;
    TreeBuilder builder(file_name, line);
    const char* begin = content.data();
    nlohmann::json::sax_parse(CountingIterator(begin, &line), CountingIterator(begin + content.size(), &line),
                              &builder);
    return std::move(builder.root);
}

std::string read_text_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw InputError(path, 1, "", "the file can't be read");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

} // namespace pourbook
