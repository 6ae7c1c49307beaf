#include "importers/shop/read_rows.hpp"

#include "importers/common/csv.hpp"
#include "importers/shop/columns.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <sstream>

namespace pourbook {
namespace {

/// An apostrophe that the export put before a cell that a spreadsheet would run.
void take_guard_off(std::string& cell) {
    const std::size_t first = cell.find_first_not_of('\'');
    const bool guarded =
        first != std::string::npos && first > 0 && std::string("=+-@\t\r").find(cell[first]) != std::string::npos;
    if (guarded) cell.erase(0, 1);
}

class CsvRows final : public RowSource {
public:
    CsvRows(std::unique_ptr<std::istream> in, std::size_t size, const std::string& name)
        : in_(std::move(in)), name_(name), size_(size) {
        reader_.emplace(*in_, name_);
    }

    Result<bool> start(const Kind& kind, const ColumnWords& words) {
        if (!reader_->next(row_)) return unreadable("there is no row in it: the first row must name the columns");
        Result<Columns> columns = Columns::from(kind, row_.cells, words);
        if (!columns) return columns.problem();
        columns_.emplace(std::move(*columns));
        if (reader_->separator() != ',') look_through();
        return true;
    }

    Result<bool> next(SourceRow& row) override {
        try {
            if (!reader_->next(row_)) return false;
        } catch (const InputError& e) {
            return unreadable(e.what());
        }
        row.line = row_.line;
        for (std::string& cell : row_.cells) take_guard_off(cell);
        columns_->read(row_.cells, reader_->separator() != ',', row);
        return true;
    }
    std::string column_of(std::size_t field) const override { return columns_->column_of(field); }
    std::vector<std::string> ignored_columns() const override { return columns_->ignored(); }
    double share_read() const override {
        return size_ ? static_cast<double>(reader_->bytes_read()) / static_cast<double>(size_) : 0;
    }

private:
    /// All rows once, for the decimal marks of the columns; then again from behind the header.
    void look_through() {
        try {
            while (reader_->next(row_)) columns_->look_at(row_.cells);
        } catch (const InputError&) { // is told when that row is read
        }
        in_->clear();
        in_->seekg(0);
        reader_.emplace(*in_, name_);
        reader_->next(row_);
    }

    std::unique_ptr<std::istream> in_;
    std::string name_;
    std::optional<CsvReader> reader_;
    std::size_t size_;
    CsvRow row_;
    std::optional<Columns> columns_;
};

/// What the export writes beside the fields.
bool is_added_by_export(const std::string& key) {
    return key == "number" || key == "si" || key == "shows";
}

class JsonRows final : public RowSource {
public:
    JsonRows(JsonNode root, const Kind& kind, ColumnWords words)
        : root_(std::move(root)), kind_(kind), words_(std::move(words)), list_(&root_) {
        for (const JsonMember& member : root_.members)
            if (!member.value.items.empty() && member.value.items[0].kind == JsonNode::Kind::object) {
                list_ = &member.value;
                ++lists_;
            }
        // An object without a list in it is one entry.
        one_ = list_ == &root_ && root_.kind == JsonNode::Kind::object;
    }

    bool has_several_lists() const { return lists_ > 1; }
    bool is_list() const { return one_ || list_->kind == JsonNode::Kind::list; }

    Result<bool> next(SourceRow& row) override {
        if (at_ == count()) return false;
        const JsonNode& node = one_ ? root_ : list_->items[at_];
        ++at_;
        row.line = node.line;
        row.fault.clear();
        if (node.kind != JsonNode::Kind::object) return rejected(row, "-", "an object with named fields is expected");
        return read(node, row);
    }
    std::string column_of(std::size_t field) const override { return kind_.fields[field].name; }
    std::vector<std::string> ignored_columns() const override { return ignored_; }
    double share_read() const override { return count() ? static_cast<double>(at_) / static_cast<double>(count()) : 1; }

private:
    std::size_t count() const { return one_ ? 1 : list_->items.size(); }

    static Result<bool> rejected(SourceRow& row, const std::string& column, const std::string& fault) {
        row.fault_column = column;
        row.fault = fault;
        return true;
    }

    /// A number, a text, or a list of these joined by commas.
    static bool text_of_node(const JsonNode& node, std::string& text) {
        if (node.kind == JsonNode::Kind::object) return false;
        if (node.kind != JsonNode::Kind::list) {
            text = node.kind == JsonNode::Kind::null ? "" : node.text;
            return true;
        }
        for (const JsonNode& item : node.items) {
            if (item.kind == JsonNode::Kind::list || item.kind == JsonNode::Kind::object) return false;
            text += (text.empty() ? "" : ", ") + item.text;
        }
        return true;
    }

    Result<bool> read(const JsonNode& node, SourceRow& row) {
        std::vector<std::string> keys, cells;
        for (const auto& [key, value] : node.members) {
            if (is_added_by_export(key)) continue;
            keys.push_back(key);
            cells.emplace_back();
            if (!text_of_node(value, cells.back())) return rejected(row, key, "a text or a number is expected");
        }
        const Result<Columns> columns = Columns::from(kind_, keys, words_);
        if (!columns) return rejected(row, "-", columns.problem().text);
        columns->read(cells, false, row);
        for (const std::string& key : columns->ignored())
            if (std::find(ignored_.begin(), ignored_.end(), key) == ignored_.end()) ignored_.push_back(key);
        return true;
    }

    JsonNode root_;
    const Kind& kind_;
    ColumnWords words_;
    const JsonNode* list_;
    bool one_ = false;
    int lists_ = 0;
    std::size_t at_ = 0;
    std::vector<std::string> ignored_;
};

bool begins_as_json(std::istream& in) {
    std::string start(64, '\0');
    in.read(start.data(), 64);
    start.resize(static_cast<std::size_t>(in.gcount()));
    in.clear();
    in.seekg(0);
    const std::size_t first = start.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    return first != std::string::npos && (start[first] == '[' || start[first] == '{');
}

Result<std::unique_ptr<RowSource>> json_rows(std::istream& in, const std::string& name, const Kind& kind,
                                             const ColumnWords& words) {
    std::string content((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    if (content.starts_with("\xEF\xBB\xBF")) content.erase(0, 3);
    auto rows = std::make_unique<JsonRows>(parse_located_json(name, content), kind, words);
    if (rows->has_several_lists())
        return unreadable("'" + name + "': several lists stand in it: keep the one that is meant");
    if (!rows->is_list()) return unreadable("'" + name + "': a list of objects is expected");
    return std::unique_ptr<RowSource>(std::move(rows));
}

} // namespace

Result<std::unique_ptr<RowSource>> read_rows(std::unique_ptr<std::istream> in, std::size_t size,
                                             const std::string& name, const Kind& kind, const ColumnWords& words) {
    try {
        if (begins_as_json(*in)) return json_rows(*in, name, kind, words);
        auto rows = std::make_unique<CsvRows>(std::move(in), size, name);
        const Result<bool> started = rows->start(kind, words);
        if (!started) return unreadable("'" + name + "': " + started.problem().text);
        return std::unique_ptr<RowSource>(std::move(rows));
    } catch (const InputError& e) {
        return unreadable(e.what());
    }
}

Result<std::unique_ptr<RowSource>> open_rows(const std::string& path, const Kind& kind, const ColumnWords& words) {
    std::error_code error;
    auto in = std::make_unique<std::ifstream>(path, std::ios::binary);
    if (!*in || std::filesystem::is_directory(path, error))
        return unreadable("'" + path + "': no such file, or it can't be read");
    if (!std::filesystem::is_regular_file(path, error)) { // a pipe can be read once only
        std::string all((std::istreambuf_iterator<char>(*in)), std::istreambuf_iterator<char>());
        const std::size_t bytes = all.size();
        return read_rows(std::make_unique<std::istringstream>(std::move(all)), bytes, path, kind, words);
    }
    const std::uintmax_t size = std::filesystem::file_size(path, error);
    return read_rows(std::move(in), static_cast<std::size_t>(size), path, kind, words);
}

} // namespace pourbook
