#include "help/markdown.hpp"

#include <optional>
#include <sstream>
#include <string_view>

namespace pourbook {
namespace {

using Look = HelpPiece::Look;

struct Mark {
    std::string_view sign;
    Look look;
};
constexpr Mark marks[] = {{"**", Look::strong}, {"`", Look::code}};

/// Puts letters together into words; code keeps its blanks.
class Words {
public:
    void add(std::string_view text, Look look) {
        for (const char c : text) {
            if (c == ' ' && look != Look::code) {
                end_word();
                continue;
            }
            if (word_.empty() || word_.back().look != look) word_.push_back({"", look});
            word_.back().text += c;
        }
    }
    std::vector<HelpWord> done() {
        end_word();
        return std::move(words_);
    }

private:
    void end_word() {
        if (!word_.empty()) words_.push_back(std::move(word_));
        word_.clear();
    }

    std::vector<HelpWord> words_;
    HelpWord word_;
};

/// The mark that opens at `at` and is closed further on.
const Mark* mark_at(std::string_view text, std::size_t at) {
    for (const Mark& m : marks)
        if (text.substr(at).starts_with(m.sign) && text.find(m.sign, at + m.sign.size()) != std::string_view::npos)
            return &m;
    return nullptr;
}

std::vector<HelpWord> words_of(std::string_view text) {
    Words words;
    for (std::size_t at = 0; at < text.size();) {
        const Mark* mark = mark_at(text, at);
        if (!mark) {
            words.add(text.substr(at++, 1), Look::plain);
            continue;
        }
        const std::size_t first = at + mark->sign.size(), end = text.find(mark->sign, first);
        words.add(text.substr(first, end - first), mark->look);
        at = end + mark->sign.size();
    }
    return words.done();
}

struct Line {
    HelpBlock::Kind kind;
    std::string_view text;
};

/// What a line begins, by its first signs; none: it goes on with the block before.
std::optional<Line> opening(std::string_view line) {
    constexpr std::pair<std::string_view, HelpBlock::Kind> signs[] = {{"## ", HelpBlock::Kind::heading},
                                                                      {"# ", HelpBlock::Kind::title},
                                                                      {"- ", HelpBlock::Kind::point},
                                                                      {"> ", HelpBlock::Kind::caution},
                                                                      {"    ", HelpBlock::Kind::set_off}};
    for (const auto& [sign, kind] : signs)
        if (line.starts_with(sign)) return Line{kind, line.substr(sign.size())};
    return std::nullopt;
}

/// Blocks out of lines.
class Page {
public:
    void add(std::string_view line) {
        if (line.find_first_not_of(' ') == std::string_view::npos) return end_block();
        const std::optional<Line> opens = opening(line);
        const bool goes_on = opens && opens->kind == HelpBlock::Kind::caution && kind_ == HelpBlock::Kind::caution;
        if (opens && !goes_on) {
            end_block();
            kind_ = opens->kind;
        }
        if (!kind_) kind_ = HelpBlock::Kind::paragraph;
        text_ += std::string(text_.empty() ? "" : " ") + std::string(opens ? opens->text : line);
    }
    std::vector<HelpBlock> done() {
        end_block();
        return std::move(blocks_);
    }

private:
    void end_block() {
        if (kind_) blocks_.push_back({*kind_, words_of(text_)});
        kind_.reset();
        text_.clear();
    }

    std::vector<HelpBlock> blocks_;
    std::optional<HelpBlock::Kind> kind_;
    std::string text_;
};

} // namespace

std::vector<HelpBlock> help_blocks(const std::string& text) {
    Page page;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) page.add(line);
    return page.done();
}

std::string plain_text(const HelpBlock& block) {
    std::string out;
    for (const HelpWord& word : block.words) {
        if (!out.empty()) out += ' ';
        for (const HelpPiece& piece : word) out += piece.text;
    }
    return out;
}

} // namespace pourbook
