#include "questions/mix/mix_words.hpp"

#include "core/quantity/ounce.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/mix/mix_scrap.hpp"

#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

Problem unreadable_at(const std::string& text, std::size_t column) {
    return unreadable(text, static_cast<int>(column) + 1);
}

bool is_letter(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

std::string trimmed_words(const std::string& text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string::npos) return "";
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Reads "Ag 92.5 Cu 7.5" left to right.
class CompositionReader {
public:
    explicit CompositionReader(const std::string& words) : words_(words) {}

    Result<std::vector<Share>> run() {
        while (skip()) {
            if (!is_letter(words_[at_]))
                return unreadable_at("column " + std::to_string(at_ + 1) + " of '" + words_ +
                                         "': a chemical symbol is expected, such as Ag 92.5 Cu 7.5",
                                     at_);
            const std::string symbol = word();
            skip();
            if (const auto fault = amount(symbol)) return *fault;
        }
        if (balance_ < shares_.size()) fill_balance();
        return shares_;
    }

private:
    bool skip() {
        while (at_ < words_.size() && std::string(" \t,;%").find(words_[at_]) != std::string::npos) ++at_;
        return at_ < words_.size();
    }

    std::string word() {
        const std::size_t from = at_;
        while (at_ < words_.size() && is_letter(words_[at_])) ++at_;
        return words_.substr(from, at_ - from);
    }

    std::optional<Problem> amount(const std::string& symbol) {
        shares_.push_back({symbol, 0, 0});
        if (at_ >= words_.size()) return std::nullopt;
        const std::size_t back = at_;
        if (is_letter(words_[at_])) {
            const std::string next = word();
            if (next != "balance" && next != "bal" && next != "rest") {
                at_ = back;
                return unreadable_at("'" + symbol + "' in '" + words_ + "': its per cent is missing", at_);
            }
            if (balance_ < shares_.size() - 1) return unreadable_at("'" + words_ + "': one balance is enough", back);
            balance_ = shares_.size() - 1;
            return std::nullopt;
        }
        std::string_view rest = std::string_view(words_).substr(at_);
        const std::size_t before = rest.size();
        if (!take_number(rest, shares_.back().wt_percent))
            return unreadable_at("column " + std::to_string(at_ + 1) + " of '" + words_ + "': a per cent is expected",
                                 at_);
        at_ += before - rest.size();
        return std::nullopt;
    }

    void fill_balance() {
        double sum = 0;
        for (const Share& s : shares_) sum += s.wt_percent;
        shares_[balance_].wt_percent = 100 - sum;
    }

    const std::string& words_;
    std::size_t at_ = 0;
    std::vector<Share> shares_;
    std::size_t balance_ = static_cast<std::size_t>(-1);
};

/// Parts of the text between '+' signs outside brackets, with their place.
std::vector<std::pair<std::size_t, std::string>> summands(const std::string& words) {
    std::vector<std::pair<std::size_t, std::string>> out;
    int depth = 0;
    std::size_t from = 0;
    for (std::size_t i = 0; i <= words.size(); ++i) {
        if (i < words.size()) depth += words[i] == '(' ? 1 : words[i] == ')' ? -1 : 0;
        const bool exponent = i > 0 && i < words.size() && (words[i - 1] == 'e' || words[i - 1] == 'E') && i > 1 &&
                              std::isdigit(static_cast<unsigned char>(words[i - 2]));
        if (i < words.size() && (words[i] != '+' || depth > 0 || exponent)) continue;
        out.emplace_back(from, words.substr(from, i - from));
        from = i + 1;
    }
    return out;
}

/// Splits "1.2kg sterling-silver" or "300 g silver" behind the mass.
Result<Stock> stock_from(const Catalogue& catalogue, const std::string& text, std::size_t column) {
    static const Dimension mass = base_dimension(Dimension::kilogram);
    const std::string words = trimmed_words(text);
    std::string_view rest = words;
    const Result<double> number = take_written_number(rest);
    if (!number)
        return unreadable_at("'" + words + "': " + number.problem().text + ": a mass and a metal, such as 1.2kg za-12",
                             column);
    const std::string figure = words.substr(0, words.size() - rest.size());
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    const std::size_t end = rest.find_first_of(" (");
    const std::string unit_word(rest.substr(0, end));
    const Result<Unit> unit = parse_unit(unit_word);
    Stock s;
    const bool has_unit = !unit_word.empty() && unit && unit->dimension == mass;
    s.mass_kg = has_unit ? unit->to_si(*number) : *number;
    if (has_unit) rest.remove_prefix(unit_word.size());
    s.name = trimmed_words(std::string(rest));
    if (!has_unit && !bare_numbers_are_si())
        return unreadable_at("'" + words + "': " + figure + " what? " + figure + "kg " + s.name + " or " + figure +
                                 "g " + s.name,
                             column);
    if (s.name.empty()) return unreadable_at("'" + words + "': the metal is missing behind the mass", column);
    if (!(s.mass_kg > 0) || !std::isfinite(s.mass_kg))
        return unreadable_at("'" + words + "': a stock needs a positive mass", column);
    const Result<Composition> c = metal_composition(catalogue, s.name);
    if (!c) return c.problem();
    s.composition = *c;
    double troy = 0;
    for (const char* element : troy_elements) troy += c->wt(element);
    if (const auto doubt = doubtful_ounce(figure + unit_word, troy)) return *doubt;
    return s;
}

} // namespace

Result<Composition> composition_from(const Catalogue& catalogue, const std::string& words, bool atomic) {
    const Result<std::vector<Share>> shares = CompositionReader(words).run();
    if (!shares) return shares.problem();
    return composition_of(catalogue.alloys, *shares, atomic);
}

Result<Composition> metal_composition(const Catalogue& catalogue, const std::string& word) {
    if (word.size() >= 2 && word.front() == '(' && word.back() == ')')
        return composition_from(catalogue, word.substr(1, word.size() - 2));
    if (const auto scrap = scrap_named(catalogue, word))
        return *scrap ? scrap_composition(catalogue.alloys, **scrap) : Result<Composition>(scrap->problem());
    if (catalogue.alloys.mass(word)) return composition_of(catalogue.alloys, {{word, 100, 0}});
    const Result<const Metal*> metal = find_metal(catalogue, word);
    if (!metal) return metal.problem();
    std::vector<Share> shares;
    for (const Portion& p : (*metal)->composition)
        if (p.wt_percent > 0) shares.push_back({p.element, p.wt_percent, 0});
    if (shares.empty())
        return Problem{Problem::Kind::no_value, "composition of " + (*metal)->slug + ": write it out in brackets", 0};
    return composition_of(catalogue.alloys, shares);
}

Result<std::vector<Stock>> stocks_from(const Catalogue& catalogue, const std::string& words) {
    std::vector<Stock> stocks;
    for (const auto& [column, text] : summands(words)) {
        if (trimmed_words(text).empty())
            return unreadable_at("'" + words + "': a stock is missing at column " + std::to_string(column + 1), column);
        const Result<Stock> s = stock_from(catalogue, text, column);
        if (!s) return s.problem();
        stocks.push_back(*s);
    }
    return stocks;
}

Result<std::vector<Share>> shares_from(const Catalogue& catalogue, const std::string& words) {
    const Result<std::vector<Share>> shares = CompositionReader(words).run();
    if (!shares) return shares.problem();
    for (const Share& s : *shares) {
        if (!catalogue.alloys.mass(s.element))
            return Problem{Problem::Kind::unknown, "unknown element '" + s.element + "': write a chemical symbol", 0};
        if (!(s.wt_percent >= 0) || s.wt_percent > 100)
            return unreadable_at("'" + words + "': a per cent between 0 and 100 is expected", 0);
    }
    return shares;
}

Result<Share> share_from(const Catalogue& catalogue, const std::string& words) {
    const Result<std::vector<Share>> shares = shares_from(catalogue, words);
    if (!shares) return shares.problem();
    if (shares->size() != 1)
        return unreadable_at("'" + words + "': one element and its per cent are expected, such as Ag 95.8", 0);
    return shares->front();
}

} // namespace pourbook
