#include "core/workshop/check_entry.hpp"

#include "core/materials/metal_family.hpp"
#include "core/nearest_words.hpp"
#include "core/quantity/ounce.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "core/workshop/signs.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace pourbook {
namespace {

using Kind_ = Problem::Kind;
constexpr std::size_t longest_text = 100000;

Problem wrong(const Field& field, const std::string& text, const std::string& remedy) {
    const std::string shown = text.size() > 60 ? text.substr(0, 57) + "..." : text;
    return {Kind_::unreadable, field.name + " '" + shown + "': " + remedy, 0};
}

std::string trimmed_blanks(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

/// Empty where the text can be kept.
std::string text_fault(const std::string& text) {
    if (text.size() > longest_text) return "longer than " + std::to_string(longest_text) + " bytes: shorten it";
    for (std::string_view rest = text; !rest.empty();) {
        const std::size_t length = utf8_length(rest);
        if (length == 0) return "not UTF-8 text: save the file as UTF-8";
        if (is_control(rest.substr(0, length))) return "a control character stands in it: remove it";
        rest.remove_prefix(length);
    }
    return {};
}

bool digits(const std::string& text, std::size_t from, std::size_t count) {
    for (std::size_t i = from; i < from + count; ++i)
        if (i >= text.size() || !std::isdigit(static_cast<unsigned char>(text[i]))) return false;
    return true;
}

bool is_month(const std::string& text) {
    if (text.size() != 7 || !digits(text, 0, 4) || text[4] != '-' || !digits(text, 5, 2)) return false;
    const int month = std::stoi(text.substr(5));
    return month >= 1 && month <= 12;
}

bool is_date(const std::string& text) {
    static constexpr std::array days = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (text.size() != 10 || !is_month(text.substr(0, 7)) || text[7] != '-' || !digits(text, 8, 2)) return false;
    const int year = std::stoi(text.substr(0, 4)), month = std::stoi(text.substr(5, 2)),
              day = std::stoi(text.substr(8));
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return day >= 1 && day <= days[static_cast<std::size_t>(month - 1)] + (leap && month == 2 ? 1 : 0);
}

bool is_name(const std::string& text) {
    const auto fits = [](char c) {
        return std::islower(static_cast<unsigned char>(c)) || std::isdigit(static_cast<unsigned char>(c)) || c == '-' ||
               c == '.';
    };
    return !text.empty() && text.size() <= 80 && std::all_of(text.begin(), text.end(), fits) && text[0] != '-';
}

Result<std::string> metal_slug(const Field& field, const std::string& text, const Catalogue& catalogue) {
    if (const Metal* metal = catalogue.metal(text)) return metal->slug;
    if (const Metal* element = catalogue.element(text)) return element->slug;
    if (const Metal* usual = usual_grade(catalogue, text)) return usual->slug;
    std::string near;
    for (const std::string& slug : catalogue.nearest_metals(text)) near += (near.empty() ? "" : ", ") + slug;
    Problem p = wrong(field, text, "unknown metal" + (near.empty() ? "" : ": did you mean " + near + "?"));
    p.kind = Kind_::unknown;
    return p;
}

std::string near_property(const Catalogue& catalogue, const std::string& text) {
    std::vector<std::string> ids;
    for (const Property& p : catalogue.properties) ids.push_back(p.id);
    const std::string near = did_you_mean(text, ids);
    return near.empty() ? ": see `pourbook sheet copper --json` for the names" : near;
}

Result<std::string> name_from(const Field& field, const std::string& text) {
    const std::string slug = as_slug(text);
    if (is_name(slug)) return slug;
    return wrong(field, text, "letters a to z, digits, '-' and '.' are expected, at most 80");
}

Result<std::string> choice_from(const Field& field, const std::string& text) {
    const auto& c = field.choices;
    if (text.empty() && !field.required) return c.front();
    if (std::find(c.begin(), c.end(), text) != c.end()) return text;
    std::string names;
    for (const std::string& one : c)
        if (!one.empty()) names += (names.empty() ? "" : ", ") + one;
    return wrong(field, text, "one of " + names + " is expected");
}

template <class R> Result<std::string> kept(const Result<R>& parsed, const std::string& text) {
    if (!parsed) return parsed.problem();
    return text;
}

Result<std::string> one_field(const Field& field, const std::string& text, const Catalogue& catalogue) {
    if (field.type == FieldType::choice) return choice_from(field, text);
    if (text.empty()) {
        if (!field.required) return text;
        return wrong(field, text, "missing" + (field.example.empty() ? "" : ": write for example " + field.example));
    }
    switch (field.type) {
    case FieldType::metal:
        return metal_slug(field, text, catalogue);
    case FieldType::name:
        return name_from(field, text);
    case FieldType::quantity:
        return kept(quantity_si(field, text), text);
    case FieldType::quantities:
        return kept(quantities_si(field, text), text);
    case FieldType::money: {
        const Result<Money> money = money_from(text);
        if (!money) return wrong(field, text, money.problem().text);
        return text;
    }
    case FieldType::currency:
        return is_currency(text) ? Result<std::string>(text)
                                 : wrong(field, text, "three capital letters are expected, such as EUR");
    case FieldType::date:
        return is_date(text) ? Result<std::string>(text) : wrong(field, text, "a date is expected, written 2026-11-25");
    case FieldType::month:
        return is_month(text) ? Result<std::string>(text)
                              : wrong(field, text, "year and month are expected, written 2026-11");
    case FieldType::property:
        if (catalogue.property(text)) return text;
        return wrong(field, text, "unknown property" + near_property(catalogue, text));
    default:
        return text;
    }
}

} // namespace

bool is_currency(std::string_view text) {
    return text.size() == 3 && std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

std::string take_currency(std::string& unit) {
    static const std::vector<std::pair<std::string, std::string>> signs = {{"€", "EUR"}, {"£", "GBP"}, {"¥", "JPY"}};
    for (const auto& [sign, code] : signs)
        if (unit.starts_with(sign)) unit = code + unit.substr(sign.size());
    const std::string code = unit.substr(0, 3);
    if (!is_currency(code) || code == "USD") return {};
    unit = "USD" + unit.substr(3);
    return code;
}

/// "$", "€" ... written in front of the number.
std::string sign_before(std::string_view& text) {
    for (const std::string_view sign : {"$", "€", "£", "¥"})
        if (text.starts_with(sign)) {
            text.remove_prefix(sign.size());
            while (text.starts_with(' ')) text.remove_prefix(1);
            return std::string(sign);
        }
    return {};
}

Result<Money> money_from(const std::string& text) {
    static const Dimension per_mass = base_dimension(Dimension::money) / base_dimension(Dimension::kilogram);
    const Problem bad{Kind_::unreadable, "a price with currency and mass is expected, such as 8.50 EUR/kg", 0};
    std::string_view view = text;
    const std::string sign = sign_before(view);
    const Result<double> number = take_written_number(view);
    if (!number) return Problem{Kind_::unreadable, number.problem().text + ": " + bad.text, 0};
    if (!(*number > 0)) return bad;
    std::string unit(view.substr(std::min(view.find_first_not_of(' '), view.size())));
    if (const std::size_t per = unit.find(" per "); per != std::string::npos) unit.replace(per, 5, "/");
    if (unit.starts_with("per ")) unit.replace(0, 4, "/");
    unit = sign + unit;
    const std::string currency = take_currency(unit);
    const Result<Unit> parsed = unit.empty() ? Result<Unit>(bad) : parse_unit(unit);
    if (!parsed || !(parsed->dimension == per_mass)) return bad;
    return Money{*number * parsed->scale, currency.empty() ? "USD" : currency};
}

Result<double> quantity_si(const Field& field, const std::string& text) {
    const Result<Unit> unit = parse_unit(field.unit.empty() ? "1" : field.unit);
    const Dimension wanted = field.unit == "1" || !unit ? Dimension{} : unit->dimension;
    // What is kept says its unit, whatever the command line allows for its own words.
    const bool unitless = is_bare(text) && bare_numbers_are_si() && !wanted.dimensionless() && field.unit != "1/s";
    const Result<double> si = unitless ? unreadable("a unit is missing") : parse_si(text, wanted, field.name);
    if (!si) return wrong(field, text, si.problem().text + ": such as " + field.example + " is expected");
    if (*si >= field.lowest_si && *si <= field.highest_si) return si;
    const double share = *si / 100;
    const bool percent =
        wanted.dimensionless() && is_bare(text) && share >= field.lowest_si && share <= field.highest_si;
    return wrong(field, text, field.range + " is expected" + (percent ? ": did you mean " + text + " %?" : ""));
}

Result<std::vector<double>> quantities_si(const Field& field, const std::string& text) {
    const Result<std::vector<std::string>> parts = list_parts(text, field.unit == "1");
    if (!parts) return wrong(field, text, parts.problem().text);
    std::vector<double> out;
    for (const std::string& part : *parts) {
        const Result<double> one = quantity_si(field, part);
        if (!one) return one.problem();
        out.push_back(*one);
    }
    return out;
}

/// Silver, gold and platinum metals are bought by another ounce.
std::optional<Problem> ounce_fault(const Kind& kind, const Entry& entry, const Catalogue& catalogue) {
    const std::size_t at = kind.at("metal");
    const Metal* metal = at < kind.fields.size() ? catalogue.metal(entry.values[at]) : nullptr;
    if (!metal) return std::nullopt;
    double troy = 0;
    for (const char* element : troy_elements) troy += metal->content_percent(element);
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const FieldType type = kind.fields[i].type;
        if (type != FieldType::quantity && type != FieldType::money) continue;
        if (auto doubt = doubtful_ounce(entry.values[i], troy)) {
            doubt->text = kind.fields[i].name + " " + doubt->text;
            doubt->column = static_cast<int>(i) + 1;
            return doubt;
        }
    }
    return std::nullopt;
}

Result<Entry> checked(const Kind& kind, Entry entry, const Catalogue& catalogue) {
    entry.values.resize(kind.fields.size());
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const std::string text = trimmed_blanks(entry.values[i]);
        const std::string fault = text_fault(text);
        Result<std::string> sound = fault.empty() ? one_field(kind.fields[i], text, catalogue)
                                                  : Result<std::string>(Problem(wrong(kind.fields[i], "", fault)));
        if (!sound) {
            Problem p = sound.problem();
            p.column = static_cast<int>(i) + 1;
            return p;
        }
        entry.values[i] = std::move(*sound);
    }
    if (const auto doubt = ounce_fault(kind, entry, catalogue)) return *doubt;
    return entry;
}

} // namespace pourbook
