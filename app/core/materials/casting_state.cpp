#include "core/materials/casting_state.hpp"

#include "core/materials/names.hpp"
#include "core/quantity/number_text.hpp"

#include <sstream>

namespace pourbook {
namespace {

constexpr double most_porosity = 0.3, most_content_wt = 10;

std::optional<double> plain_number(const std::string& text) {
    double value = 0;
    std::string_view left = text;
    if (!take_decimal(left, value) || !left.empty()) return std::nullopt;
    return value;
}

/// "0.02", "0:0.02" or "0-0.02", a per cent sign behind it.
std::optional<PorosityRange> number_range(std::string text) {
    if (!text.empty() && text.back() == '%') text.pop_back();
    const std::size_t colon = text.find_first_of(":-");
    const auto low = plain_number(text.substr(0, colon));
    const auto high = colon == std::string::npos ? low : plain_number(text.substr(colon + 1));
    if (!low || !high || *low < 0 || *high < *low) return std::nullopt;
    return PorosityRange{*low, *high};
}

bool is_symbol(const std::string& word) {
    return (word.size() == 1 || word.size() == 2) && word[0] >= 'A' && word[0] <= 'Z' &&
           (word.size() == 1 || (word[1] >= 'a' && word[1] <= 'z'));
}

constexpr const char* feedstock_hint = "ingot, wire, pipe, scrap or jewellery is expected, or the foreign contents of "
                                       "the metal in per cent, such as \"P 0.02 Fe 0:0.01\"";

} // namespace

std::string read_feedstock(CastingState& state, const std::string& words) {
    if (is_among(words, feedstock_names)) {
        state.feedstock = words;
        return {};
    }
    std::istringstream in(words);
    std::vector<ContentRange> contents;
    for (std::string element, amount; in >> element;) {
        in >> amount;
        const auto range = number_range(amount);
        if (!is_symbol(element) || !range) return feedstock_hint;
        if (range->high > most_content_wt) return "more than 10 % is an alloy: give it as a mix";
        contents.push_back({element, range->low, range->high});
        amount.clear();
    }
    if (contents.empty()) return feedstock_hint;
    state.contents = std::move(contents);
    return {};
}

std::string read_porosity(CastingState& state, const std::string& words) {
    const auto range = number_range(words);
    if (!range || words.back() != '%') return "a share of the volume such as 2% or 0:3% is expected";
    if (range->high / 100 > most_porosity) return "at most 30 %: beyond, it is a sponge and no casting";
    state.porosity = PorosityRange{range->low / 100, range->high / 100};
    return {};
}

std::string read_treatment(CastingState& state, const std::string& words) {
    if (!is_among(words, treatment_names)) return "as-cast, annealed, quenched or aged is expected";
    state.treatment = words;
    return {};
}

} // namespace pourbook
