#include "gui/state/view_link.hpp"

#include "core/quantity/format.hpp"
#include "gui/state/view_json.hpp"
#include "questions/views.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <vector>

namespace pourbook {
namespace {

using Json = nlohmann::json;
using Leaves = std::map<std::string, Json>;

constexpr std::size_t longest_link = 8000; // what browsers surely keep of an address
constexpr std::array<std::pair<const char*, const char*>, 1> short_names = {{{"goal", "rank.goal"}}};
constexpr const char* versus_view = "compare";

/// Every field that holds no others, by its dotted name.
void add_leaves(const Json& from, const std::string& name, Leaves& out) {
    if (!from.is_object()) {
        out[name] = from;
        return;
    }
    for (const auto& [key, value] : from.items()) add_leaves(value, name.empty() ? key : name + "." + key, out);
}

Leaves leaves_of(const ViewState& view) {
    Json all = json_of(view);
    for (const char* own : {"marks", "splits"}) all.erase(own); // of this person's window, not of what is shown
    Leaves out;
    add_leaves(all, "", out);
    return out;
}

std::string encoded(const std::string& text) {
    constexpr const char* plain = "-._~,:/()*";
    constexpr const char* sixteen = "0123456789ABCDEF";
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (letter || std::string_view(plain).find(c) != std::string_view::npos)
            out += c;
        else
            out += {'%', sixteen[byte >> 4], sixteen[byte & 15]};
    }
    return out;
}

int sixteenth(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/// Empty where a percent sign is not followed by two figures.
std::optional<std::string> decoded(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '%') {
            out += text[i];
            continue;
        }
        const int high = i + 2 < text.size() ? sixteenth(text[i + 1]) : -1,
                  low = i + 2 < text.size() ? sixteenth(text[i + 2]) : -1;
        if (high < 0 || low < 0) return std::nullopt;
        out += static_cast<char>(16 * high + low);
        i += 2;
    }
    return out;
}

std::vector<std::string> parts_of(const std::string& text, char between) {
    std::vector<std::string> out;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(between, from), text.size());
        out.push_back(text.substr(from, to - from));
        from = to + 1;
    }
    return out;
}

/// A list of plain words is joined by commas; everything that is no text or list of words is JSON.
std::string value_words(const Json& value) {
    if (value.is_string()) return value.get<std::string>();
    const auto plain = [](const Json& one) {
        return one.is_string() && !one.get_ref<const std::string&>().empty() &&
               one.get_ref<const std::string&>().find_first_of(",[") == std::string::npos;
    };
    if (value.is_array() && std::all_of(value.begin(), value.end(), plain))
        return joined(value.get<std::vector<std::string>>(), ",");
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Of the kind that the field has; null where it can't be read so.
Json value_from(const std::string& words, const Json& kind) {
    if (kind.is_string()) return words;
    if (kind.is_array() && !words.starts_with('[')) return words.empty() ? Json::array() : Json(parts_of(words, ','));
    const Json read = Json::parse(words, nullptr, false);
    const bool same = read.type() == kind.type() || (read.is_number() && kind.is_number());
    return same && !read.is_discarded() ? read : Json();
}

/// A field whose last part is no name of the state: a metal, a panel; with a value of its kind.
struct OpenField {
    const char* front;
    Json kind;
};
const std::array<OpenField, 2> open_fields = {OpenField{"marks.of.", std::size_t{0}}, OpenField{"splits.", 0.0}};

const OpenField* open_field(const std::string& name) {
    const auto at = std::find_if(open_fields.begin(), open_fields.end(),
                                 [&](const OpenField& f) { return name.starts_with(f.front); });
    return at == open_fields.end() ? nullptr : &*at;
}

void put(Json& into, const std::string& name, const Json& value) {
    const OpenField* open = open_field(name);
    const std::string front = open ? open->front : name;
    Json* at = &into;
    for (const std::string& part : parts_of(open ? front.substr(0, front.size() - 1) : front, '.')) at = &(*at)[part];
    (open ? (*at)[name.substr(front.size())] : *at) = value;
}

class LinkReader {
public:
    explicit LinkReader(const ViewState& first) : first_(first), known_(leaves_of(first)) {}

    KeptView read(std::string_view words) {
        if (words.starts_with('#')) words.remove_prefix(1);
        if (words.size() > longest_link) return damaged("it is longer than " + std::to_string(longest_link) + " signs");
        for (const std::string& pair : parts_of(std::string(words), '&'))
            if (!pair.empty() && !take(pair)) return damaged("'" + pair.substr(0, 80) + "'");
        const ReadView read = view_from(from_, first_);
        if (!read.odd.empty()) return damaged(read.odd);
        return is_view(read.view.view) ? KeptView{read.view, ""} : damaged("no view '" + read.view.view + "'");
    }

private:
    KeptView damaged(const std::string& what) const {
        return {first_, "the link can't be read (" + what + "): this is the first view"};
    }

    bool take(const std::string& pair) {
        const std::size_t equals = pair.find('=');
        if (equals == std::string::npos) return false;
        const std::optional<std::string> name = decoded(std::string_view(pair).substr(0, equals)),
                                         value = decoded(std::string_view(pair).substr(equals + 1));
        if (!name || !value) return false;
        return *name == "versus" ? take_versus(*value) : take_field(*name, *value);
    }

    bool take_versus(const std::string& value) {
        const std::vector<std::string> two = parts_of(value, ',');
        if (two.size() != 2) return false;
        put(from_, "versus.first", two[0]);
        put(from_, "versus.second", two[1]);
        if (!from_.contains("pins")) put(from_, "pins", two);
        if (!from_.contains("view")) put(from_, "view", versus_view);
        return true;
    }

    bool take_field(std::string name, const std::string& value) {
        for (const auto& [brief, whole] : short_names)
            if (name == brief) name = whole;
        const auto known = known_.find(name);
        const OpenField* open = open_field(name);
        if (!open && known == known_.end()) return false;
        const Json read = value_from(value, open ? open->kind : known->second);
        if (read.is_null() || (open && open->kind.is_number_unsigned() && !read.is_number_unsigned())) return false;
        put(from_, name, read);
        return true;
    }

    const ViewState& first_;
    Leaves known_;
    Json from_ = Json::object();
};

} // namespace

std::string link_words(const ViewState& view, const ViewState& first) {
    const Leaves usual = leaves_of(first);
    std::string out = "view=" + encoded(view.view) + "&pins=" + encoded(value_words(Json(view.pins)));
    for (const auto& [name, value] : leaves_of(view)) {
        if (name == "view" || name == "pins" || (usual.contains(name) && usual.at(name) == value)) continue;
        std::string shown = name;
        for (const auto& [brief, whole] : short_names)
            if (name == whole) shown = brief;
        out += "&" + shown + "=" + encoded(value_words(value));
    }
    return out;
}

KeptView read_link(const std::string& words, const ViewState& first) {
    return LinkReader(first).read(words);
}

} // namespace pourbook
