#include "questions/ask/question_reader.hpp"

#include "core/materials/metal_family.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "core/quantity/unit.hpp"
#include "questions/ask/ask_words.hpp"
#include "questions/metals/find_words.hpp"
#include "questions/pour/defects.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <regex>
#include <sstream>

namespace pourbook {
namespace {

const char* const number_pattern = R"((\d+(?:[.,]\d+)?(?: \d+/\d+|/\d+)?))";
const char* const length_pattern = R"((mm|cm|m|inches|inch|in|"))";

/// Small letters, single blanks, no signs at the ends of words.
std::string tidy(const std::string& words) {
    std::istringstream in(lower_case(words));
    std::string out;
    for (std::string word; in >> word;) {
        while (!word.empty() && std::string("?!,.;").find(word.back()) != std::string::npos) word.pop_back();
        if (!word.empty()) out += (out.empty() ? "" : " ") + word;
    }
    return out;
}

class QuestionReader {
public:
    QuestionReader(const Catalogue& catalogue, const std::string& words) : catalogue_(catalogue), text_(tidy(words)) {}

    QuestionRead run() {
        read_mixture();
        read_temperature();
        read_setup();
        read_metals();
        const bool element = out_.metals.size() == 1 && catalogue_.metal(out_.metals[0])->is_element();
        out_.property = property_asked(catalogue_, text_, element);
        out_.goal = goal_asked(catalogue_, text_);
        out_.least = asks_for_least(text_);
        out_.from_shelf = speaks_of(text_, "shelf") || speaks_of(text_, "stock");
        decide();
        read_leftovers();
        echo();
        return out_;
    }

private:
    /// Takes the match out of the text, so that no word is read twice.
    std::optional<std::smatch> take(const std::string& pattern) {
        std::smatch m;
        before_ = text_;
        if (!std::regex_search(before_, m, std::regex(pattern))) return std::nullopt;
        text_ = tidy(m.prefix().str() + " " + m.suffix().str());
        return m;
    }

    void read_mixture() {
        if (text_.find('+') == std::string::npos || text_.find("+-") != std::string::npos) return;
        if (const auto m = take(R"(\d[^+]*\+.*$)")) out_.mix = tidy(m->str());
    }

    void read_temperature() {
        if (const auto m = take(
                R"((?:at |in )?(-?\d+(?:[.,]\d+)?) ?(?:°|deg|degrees)? ?(celsius|fahrenheit|kelvin|c|f|k)\b(?! (?:gold|white|yellow)))")) {
            out_.at = (*m)[1].str() + static_cast<char>(std::toupper(static_cast<unsigned char>((*m)[2].str()[0])));
            return;
        }
        for (const char* bath : {"room temperature", "liquid nitrogen", "liquid helium", "liquid oxygen",
                                 "boiling water", "dry ice", "ice water", "ice"})
            if (speaks_of(text_, bath)) {
                out_.at = bath;
                take(std::string("(?:at |in )?\\b") + bath + "\\b");
                return;
            }
    }

    std::string sized(const std::smatch& m, std::size_t value, std::size_t unit) const {
        const std::string u = m[unit].str() == "\"" || m[unit].str().starts_with("inch") ? "in" : m[unit].str();
        return m[value].str() + u;
    }

    /// A length with its role before or behind it: "bore of 22 mm", "22 mm bore".
    std::string length_of(const std::string& role) {
        if (const auto m = take(std::string(number_pattern) + " ?" + length_pattern + " (?:" + role + R"()(?![a-z]))"))
            return sized(*m, 1, 2);
        if (const auto m =
                take("\\b(?:" + role + ")(?: is| of|:)? " + number_pattern + " ?" + length_pattern + R"((?![a-z]))"))
            return sized(*m, 1, 2);
        return {};
    }

    void read_setup() {
        if (const auto m = take(R"(\b(n\d\d(?:m|h|sh|uh|eh|ah)?)\b)")) out_.grade = (*m)[1].str();
        std::transform(out_.grade.begin(), out_.grade.end(), out_.grade.begin(),
                       [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
        if (const auto m = take(R"(\b((?:tube|bar|plate|cone|ring):\S+))")) out_.part = (*m)[1].str();
        if (const auto m = take(R"((\d+(?:[.,]\d+)?)(?:mm)? ?(?:x|by) ?(\d+(?:[.,]\d+)?) ?(mm|cm|in))"))
            out_.magnet = "cylinder:" + (*m)[1].str() + (*m)[3].str() + "x" + (*m)[2].str() + (*m)[3].str();
        else if (const auto ball = take(std::string(number_pattern) + " ?" + length_pattern +
                                        " (?:magnet )?(?:ball|sphere|sphere magnet|ball magnet)"))
            out_.magnet = "sphere:" + sized(*ball, 1, 2);
        else if (const auto round =
                     take(std::string(number_pattern) + " ?" + length_pattern + " (?:magnet|(?=through|down|in ))")) {
            out_.magnet = "cylinder:" + sized(*round, 1, 2) + "x" + sized(*round, 1, 2);
            remarks_.push_back("the magnet taken as long as it is wide");
        }
        if (const auto m = take(R"(\bthrough (?:a |an )?(\d+(?:[.,]\d+)?)/(\d+(?:[.,]\d+)?)(?: ?mm)?\b)")) {
            bore_ = (*m)[1].str() + "mm";
            outside_ = (*m)[2].str() + "mm";
        }
        if (const auto m = take(
                R"((\d+(?:[.,]\d+)?(?:mm|cm|in|m)?):(\d+(?:[.,]\d+)?(?:mm|cm|in|m)?):(\d+(?:[.,]\d+)?(?:mm|cm|in|m)))")) {
            const std::string unit = (*m)[3].str().substr((*m)[3].str().find_last_of("0123456789") + 1);
            for (std::size_t i = 1; i <= 3; ++i) {
                const std::string part = (*m)[i].str();
                const bool bare = std::isdigit(static_cast<unsigned char>(part.back())) != 0;
                out_.tube += (i > 1 ? ":" : "") + part + (bare ? unit : "");
            }
            return;
        }
        if (bore_.empty()) bore_ = length_of("bore|inside|inner diameter|id|hole");
        if (outside_.empty()) outside_ = length_of("outside|outer diameter|od|outer");
        wall_ = length_of("wall|thick");
        length_ = length_of("long|length|tall|high|tube|pipe|sleeve");
        if (length_.empty()) length_ = length_before_the_tube();
        if (!bore_.empty() && outside_.empty() && !wall_.empty()) outside_ = bore_and_two_walls();
        if (!bore_.empty() && !outside_.empty() && !length_.empty()) out_.tube = bore_ + ":" + outside_ + ":" + length_;
    }

    /// "a 300 mm copper pipe": the words between are read later.
    std::string length_before_the_tube() {
        const auto m = take(std::string(number_pattern) + " ?" + length_pattern +
                            R"((?= (?:[a-z0-9-]+ ){1,3}(?:tube|pipe|sleeve)\b))");
        return m ? sized(*m, 1, 2) : "";
    }

    std::string bore_and_two_walls() const {
        static const Dimension metre = base_dimension(Dimension::metre);
        const Result<double> bore = parse_si(bore_, metre, "a bore"), wall = parse_si(wall_, metre, "a wall");
        return bore && wall ? trimmed(1000 * (*bore + 2 * *wall), 6) + "mm" : "";
    }

    const Metal* metal_named(const std::string& words) const {
        static const std::array<const char*, 13> never = {"in", "as", "at",     "no", "i",  "he", "of copper",
                                                          "a2", "a4", "wheels", "be", "po", "am"};
        if (std::find(never.begin(), never.end(), words) != never.end()) return nullptr;
        if (const Metal* metal = catalogue_.metal(words)) return metal;
        return usual_grade(catalogue_, words);
    }

    void read_metals() {
        std::vector<std::string> words;
        std::istringstream in(text_);
        for (std::string word; in >> word;) words.push_back(word);
        std::string rest;
        bool rest_since = true; // the last metal named
        for (std::size_t i = 0; i < words.size();) {
            std::size_t taken = 0;
            for (std::size_t n = std::min<std::size_t>(4, words.size() - i); n > 0 && taken == 0; --n) {
                std::string name = words[i];
                for (std::size_t k = 1; k < n; ++k) name += " " + words[i + k];
                if (const Metal* metal = metal_named(name)) {
                    const bool narrower = !rest_since && !out_.metals.empty() && // "aluminium a356" is one metal
                                          metal->slug.starts_with(out_.metals.back() + "-");
                    if (narrower) out_.metals.pop_back();
                    if (std::find(out_.metals.begin(), out_.metals.end(), metal->slug) == out_.metals.end())
                        out_.metals.push_back(metal->slug);
                    if (const std::string remark = family_remark(catalogue_, name); !remark.empty())
                        remarks_.push_back(remark);
                    taken = n;
                }
            }
            if (taken == 0) rest += (rest.empty() ? "" : " ") + words[i];
            rest_since = taken == 0;
            i += std::max<std::size_t>(taken, 1);
        }
        text_ = rest;
    }

    bool any_word(std::initializer_list<const char*> words) const {
        return std::any_of(words.begin(), words.end(), [&](const char* w) { return speaks_of(text_, w); });
    }

    void decide() {
        const bool falls =
            any_word({"fall", "falls", "drop", "drops", "magnet", "fallen", "falling", "through"}) || !bore_.empty();
        if (!out_.mix.empty()) {
            out_.asked = Asked::mix;
        } else if (!out_.metals.empty() && (!out_.magnet.empty() || !out_.tube.empty()) && falls) {
            out_.asked = Asked::drop;
            ask_for_setup();
        } else if (!out_.metals.empty() && falls && any_word({"how long", "time", "seconds"}) &&
                   out_.metals.size() == 1) {
            out_.asked = Asked::drop;
            ask_for_setup();
        } else if (!out_.part.empty() && out_.metals.size() == 1) {
            out_.asked = Asked::pour;
        } else if (out_.metals.size() >= 2 &&
                   (out_.property.empty() || any_word({"better", "beat", "beats", "best", "vs", "versus"}) ||
                    !out_.goal.empty())) {
            out_.asked = Asked::versus;
        } else if (!out_.metals.empty() && !out_.property.empty()) {
            out_.asked = Asked::value;
        } else if (out_.metals.empty() && (!out_.goal.empty() || (out_.from_shelf && speaks_of(text_, "rank")))) {
            out_.asked = Asked::rank;
        } else if (out_.metals.size() == 1) {
            out_.asked = Asked::sheet;
        } else if (!out_.property.empty() &&
                   any_word({"best", "most", "which", "highest", "lowest", "least", "lightest", "heaviest", "densest",
                             "cheapest", "dearest", "stiffest", "strongest", "hardest", "softest"})) {
            out_.asked = Asked::rank;
        } else {
            read_defect();
        }
    }

    void ask_for_setup() {
        if (out_.magnet.empty()) out_.missing.push_back("the magnet's size, such as 12x10 mm or a 12 mm ball");
        if (out_.grade.empty()) out_.missing.push_back("its grade, such as N42");
        if (out_.tube.empty())
            out_.missing.push_back("bore, outside and length of the tube, such as 13 mm bore, 15 mm outside, 1 m long");
    }

    /// The words that a defect is known by.
    void read_defect() {
        std::istringstream in(text_);
        for (std::string word; in >> word;)
            if (word.size() >= 4 && defects(catalogue_, word)) out_.defect += (out_.defect.empty() ? "" : " ") + word;
        if (!out_.defect.empty()) out_.asked = Asked::defect;
    }

    /// What no part of the question took: a mass of a metal whose price is asked, or a number that nobody can place.
    void read_leftovers() {
        const bool reads_numbers = out_.asked == Asked::value || out_.asked == Asked::sheet ||
                                   out_.asked == Asked::versus || out_.asked == Asked::rank ||
                                   out_.asked == Asked::drop;
        if (!reads_numbers) return;
        if (const auto m = take(R"((?:^| )(\d+(?:[.,]\d+)? ?(?:kg|g|lb|oz|ozt))(?![a-z]))")) {
            const Result<double> kg = parse_si((*m)[1].str(), base_dimension(Dimension::kilogram), "a mass");
            if (kg && out_.asked == Asked::value && out_.property == "price")
                out_.amount_kg = *kg;
            else
                remarks_.push_back("not used: " + (*m)[1].str());
        }
        if (const auto m = take(
                R"((?:^| )(-?\d+(?:[.,]\d+)?(?: ?(?:%|[a-z]?m|inch|inches|in|s|seconds|min|minutes|h|hours|days|years|litres|l|ml|usd|eur))?)(?= |$))")) {
            const std::string number = (*m)[1].str();
            const bool bare = std::isdigit(static_cast<unsigned char>(number.back())) != 0;
            if (bare)
                out_.missing.push_back("what '" + number + "' is: write it with its unit, such as " + number +
                                       (out_.asked == Asked::drop ? "mm" : "degC"));
            else
                remarks_.push_back("not used: " + number);
        }
    }

    void echo() {
        for (const std::string& slug : out_.metals) out_.taken.push_back(catalogue_.metal(slug)->name);
        if (const Property* p = catalogue_.property(out_.property); p && out_.asked == Asked::value)
            out_.taken.push_back(p->label);
        else if (p && out_.asked == Asked::rank && out_.goal.empty())
            out_.taken.push_back((out_.least ? "lowest " : "highest ") + p->label);
        if (out_.amount_kg > 0) out_.taken.push_back(trimmed(out_.amount_kg, 6) + " kg");
        const bool by_goal = out_.asked == Asked::rank || out_.asked == Asked::versus;
        if (const Goal* g = catalogue_.goal(out_.goal); g && by_goal) out_.taken.push_back("goal: " + g->label);
        if (!out_.magnet.empty()) out_.taken.push_back("magnet " + out_.magnet);
        if (!out_.grade.empty()) out_.taken.push_back("grade " + out_.grade);
        if (!bore_.empty()) out_.taken.push_back(bore_ + " bore");
        if (!outside_.empty()) out_.taken.push_back(outside_ + " outside");
        if (!length_.empty()) out_.taken.push_back(length_ + " long");
        if (bore_.empty() && !out_.tube.empty()) out_.taken.push_back("tube " + out_.tube);
        if (!out_.part.empty()) out_.taken.push_back("part " + out_.part);
        if (!out_.mix.empty()) out_.taken.push_back("mix " + out_.mix);
        if (!out_.at.empty())
            if (const auto t = parse_si(out_.at, base_dimension(Dimension::kelvin), "a temperature"))
                out_.taken.push_back(celsius_text(*t) == out_.at ? out_.at : out_.at + " (" + celsius_text(*t) + ")");
        if (!out_.defect.empty()) out_.taken.push_back("what was seen: " + out_.defect);
        if (out_.from_shelf) out_.taken.push_back("only what is on the shelf");
        out_.taken.insert(out_.taken.end(), remarks_.begin(), remarks_.end());
    }

    const Catalogue& catalogue_;
    std::string text_, before_, bore_, outside_, wall_, length_;
    std::vector<std::string> remarks_;
    QuestionRead out_;
};

} // namespace

std::vector<std::string> QuestionRead::command() const {
    std::vector<std::string> out;
    const auto add = [&](const std::string& option, const std::string& text) {
        if (!text.empty()) out.insert(out.end(), {option, text});
    };
    switch (asked) {
    case Asked::value:
        out = metals.size() == 1 ? std::vector<std::string>{"value", metals[0], property}
                                 : std::vector<std::string>{"compare"};
        if (metals.size() > 1) {
            out.insert(out.end(), metals.begin(), metals.end());
            add("--show", property);
        }
        break;
    case Asked::sheet:
        return {"sheet", metals[0]};
    case Asked::versus:
        out = {"versus", metals[0], metals[1]};
        add("--goal", goal);
        if (goal.empty()) add("--formula", property);
        if (goal.empty() && least) add("--best", "low");
        break;
    case Asked::rank:
        out = {"rank"};
        add("--goal", goal);
        if (goal.empty()) add("--formula", property);
        if (goal.empty() && least) add("--best", "low");
        if (from_shelf) add("--from", "stock");
        break;
    case Asked::drop:
        out = {"drop"};
        add("--magnet", magnet);
        add("--grade", grade);
        add("--tube", tube);
        add("--metal", metals[0]);
        break;
    case Asked::pour:
        return {"pour", metals[0], "--part", part};
    case Asked::mix:
        return {"mix", mix};
    case Asked::defect:
        return {"defect", defect};
    case Asked::nothing:
        return {};
    }
    add("--at", at);
    return out;
}

QuestionRead read_question(const Catalogue& catalogue, const std::string& words) {
    return QuestionReader(catalogue, words).run();
}

std::string command_line(const QuestionRead& read) {
    std::string out = "pourbook";
    for (const std::string& word : read.command())
        out += word.find_first_of(" \"'$&;()<>|") == std::string::npos ? " " + word : " \"" + word + "\"";
    return out;
}

} // namespace pourbook
