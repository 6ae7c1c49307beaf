#include "answers/parts/json_difference.hpp"

#include "answers/parts/json_parts.hpp"

namespace pourbook {
namespace {

constexpr std::size_t lines_shown = 40;

std::string leaf(const Json& json) {
    return json.is_string() ? json.get<std::string>() : json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Items of a list of metals are compared by metal, not by place, so that one that moved is one difference.
std::string name_of_item(const Json& item, std::size_t index) {
    if (item.is_object())
        for (const char* key : {"metal", "slug", "key"})
            if (item.contains(key) && item[key].is_string()) return item[key].get<std::string>();
    return std::to_string(index);
}

Json by_name(const Json& list) {
    Json out = Json::object();
    for (std::size_t i = 0; i < list.size(); ++i) {
        std::string name = name_of_item(list[i], i);
        if (out.contains(name)) name += "#" + std::to_string(i);
        out[name] = list[i];
    }
    return out;
}

void compare(const Json& before, const Json& after, const std::string& at, std::vector<JsonDifference>& out) {
    if (before == after) return;
    if (before.is_array() && after.is_array()) return compare(by_name(before), by_name(after), at, out);
    if (!before.is_object() || !after.is_object()) {
        out.push_back({at, leaf(before), leaf(after)});
        return;
    }
    const auto place = [&](const std::string& key) { return at.empty() ? key : at + "." + key; };
    for (const auto& [key, value] : before.items()) {
        if (after.contains(key))
            compare(value, after[key], place(key), out);
        else
            out.push_back({place(key), leaf(value), ""});
    }
    for (const auto& [key, value] : after.items())
        if (!before.contains(key)) out.push_back({place(key), "", leaf(value)});
}

std::string shortened(const std::string& text) {
    constexpr std::size_t widest = 60;
    return text.size() <= widest ? text : text.substr(0, widest) + "...";
}

} // namespace

std::vector<JsonDifference> json_differences(const std::string& before, const std::string& after) {
    std::vector<JsonDifference> out;
    const Json a = Json::parse(before, nullptr, false), b = Json::parse(after, nullptr, false);
    if (!a.is_discarded() && !b.is_discarded())
        compare(a, b, "", out);
    else if (before != after)
        out.push_back({"answer", before, after});
    std::erase_if(out, [](const JsonDifference& d) { return d.at == "data_version"; }); // said by itself
    return out;
}

std::string json_of(const AnswerAgain& again) {
    Json changes = Json::array();
    for (const JsonDifference& d : again.differences)
        changes.push_back({{"at", d.at}, {"before", d.before}, {"after", d.after}});
    return json_text(Json{{"name", again.name},
                          {"question", again.question},
                          {"command", again.command},
                          {"answered", again.date},
                          {"data_version_then", again.data_version_then},
                          {"data_version_now", again.data_version_now},
                          {"same", again.differences.empty()},
                          {"changes", changes}});
}

std::string text_of(const AnswerAgain& again) {
    std::string out = again.question + "\n  " + again.command + "\nAnswered " + again.date + " with data " +
                      again.data_version_then + ", now with data " + again.data_version_now + ": ";
    if (again.differences.empty()) return out + "the answer is the same.\n";
    out += std::to_string(again.differences.size()) + " differences\n";
    for (std::size_t i = 0; i < again.differences.size() && i < lines_shown; ++i) {
        const JsonDifference& d = again.differences[i];
        out += "  " + d.at + ": " + (d.before.empty() ? "nothing" : shortened(d.before)) + " -> " +
               (d.after.empty() ? "nothing" : shortened(d.after)) + "\n";
    }
    if (again.differences.size() > lines_shown) out += "  ... all of them with --json\n";
    return out;
}

} // namespace pourbook
