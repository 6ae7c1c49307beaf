#include "gui/state/question_key.hpp"

namespace pourbook {

std::string key_of(const Conditions& c) {
    return std::to_string(c.temperature_K) + "|" + c.condition + "|" + c.price_form + "|";
}

std::string key_of_words(const std::vector<std::string>& words) {
    std::string key;
    for (const std::string& w : words) key += w + "|";
    return key;
}

} // namespace pourbook
