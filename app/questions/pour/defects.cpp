#include "questions/pour/defects.hpp"

#include "core/casting/makeable.hpp"
#include "core/quantity/format.hpp"
#include "questions/metals/find_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

constexpr std::array small_words = {"a",       "an",       "and",     "at",    "by",   "did",  "during", "for",  "from",
                                    "has",     "in",       "is",      "it",    "my",   "of",   "off",    "on",   "or",
                                    "s",       "so",       "the",     "to",    "too",  "was",  "were",   "with", "full",
                                    "casting", "castings", "surface", "looks", "like", "metal"};

/// "cracks", "leaking" and "Holes" as one finds them in a list of words.
std::string stem(std::string word) {
    for (const char* ending : {"ing", "ed", "es", "s", "e"}) {
        const std::string e = ending;
        if (word.size() > e.size() + 2 && word.ends_with(e)) return word.substr(0, word.size() - e.size());
    }
    return word;
}

std::vector<std::string> stems(const std::string& text) {
    std::string spaced = lower_case(text);
    for (char& c : spaced)
        if (!std::isalnum(static_cast<unsigned char>(c))) c = ' ';
    std::istringstream words(spaced);
    std::vector<std::string> out;
    for (std::string w; words >> w;)
        if (std::find(small_words.begin(), small_words.end(), w) == small_words.end()) out.push_back(stem(w));
    return out;
}

bool holds(const std::vector<std::string>& all, const std::string& word) {
    return std::find(all.begin(), all.end(), word) != all.end();
}

struct Ranked {
    Defect defect;
    std::size_t found = 0, score = 0;
};

/// How many of the words the entry holds, and how near: name before the people's words before the description.
Ranked ranked(const Defect& d, const std::vector<std::string>& asked) {
    const auto name = stems(d.name), words = stems(d.words), seen = stems(d.seen);
    Ranked r{d};
    for (const std::string& w : asked) {
        const std::size_t near = holds(name, w) ? 4 : holds(words, w) ? 3 : holds(seen, w) ? 1 : 0;
        r.found += near ? 1 : 0;
        r.score += near;
    }
    r.score = 10 * r.score + (name.size() == r.found ? 3 : 0); // the whole name first
    return r;
}

std::string seconds(double s) {
    return significant(s, 2) + " s";
}

} // namespace

Defect defect_from(const Practice& entry) {
    std::array<std::string, 5> parts;
    std::size_t from = 0;
    for (std::string& part : parts) {
        const std::size_t bar = entry.text.find(" | ", from);
        part = entry.text.substr(from, bar == std::string::npos ? bar : bar - from);
        if (bar == std::string::npos) break;
        from = bar + 3;
    }
    return {entry.grade, entry.material, parts[0], parts[1], parts[2], parts[3], parts[4], &entry};
}

Result<std::vector<Defect>> defects(const Catalogue& catalogue, const std::string& words) {
    const auto asked = stems(words);
    std::vector<Ranked> all;
    std::string names;
    for (const Practice& p : catalogue.practices) {
        if (p.quantity != "defect") continue;
        all.push_back(ranked(defect_from(p), asked));
        names += (names.empty() ? "" : ", ") + all.back().defect.name;
    }
    std::size_t most = 0;
    for (const Ranked& r : all) most = std::max(most, r.found);
    if (!words.empty() && most == 0) // nothing known looks like it
        return Problem{Problem::Kind::unknown, "no defect looks like '" + words + "': ask for one of " + names, 0};
    std::stable_sort(all.begin(), all.end(), [](const Ranked& a, const Ranked& b) { return a.score > b.score; });
    std::vector<Defect> found;
    for (const Ranked& r : all)
        if (r.found == most) found.push_back(r.defect);
    return found;
}

std::vector<std::string> bearing_on(const std::string& kind, const PourResult& p) {
    std::vector<std::string> out;
    const auto& f = p.feeding;
    if (kind == "shrinkage") {
        if (!std::isnan(f.hole_m3))
            out.push_back(significant(f.hole_m3 * 1e6, 2) + " cm3 are missing if nothing feeds it, at " +
                          p.freezes_last + ", which is solid last" +
                          (p.freezing ? ", after " + seconds(p.freezing->time_s.value_si) : ""));
        if (f.too_thin)
            out.push_back("no feeder serves a wall of " + significant(f.thickness_m * 1000, 2) +
                          " mm: fine pores are to be expected");
        else if (!std::isnan(f.feeder_freezing_s))
            out.push_back("the planned feeder is solid after " + seconds(f.feeder_freezing_s));
    }
    if (kind == "filling") {
        const auto& g = p.fill.gating;
        if (!std::isnan(p.thinnest_s))
            out.push_back("the thinnest wall is solid after " + seconds(p.thinnest_s) + "; the plan fills in " +
                          seconds(g.fill_s));
        out.push_back("the least that fills is about " + trimmed(std::round(p.heat.least_K - 273.15), 4) +
                      " degC, planned are " + trimmed(std::round(p.heat.pour.value_si - 273.15), 4) + " degC");
    }
    if (kind == "gas" && !std::isnan(p.heat.zinc_atm))
        out.push_back("zinc stands at " + significant(p.heat.zinc_atm, 2) + " atm over this melt at the pour");
    if (kind == "gas")
        for (const Practice* g : p.gas) out.push_back(g->text);
    if (kind == "crack" && p.freezing) {
        const auto& m = p.freezing->reckoned.metal;
        const double range_K = m.liquidus_K - m.solidus_K;
        out.push_back(
            "this metal freezes over " + trimmed(std::round(range_K), 3) + " K" +
            (range_K > casting::wide_freezing_K ? ": a wide range, tears easily where a core or mould holds it" : ""));
    }
    if (kind == "size" && p.contraction)
        out.push_back("free contraction " + significant(100 * p.contraction->strain.value_si, 3) +
                      " %; the right pattern lies between " + significant(1 + p.span.low, 5) + " and " +
                      significant(1 + p.span.high, 5) + " times the casting");
    return out;
}

} // namespace pourbook
