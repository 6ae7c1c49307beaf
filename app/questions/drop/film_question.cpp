#include "questions/drop/film_question.hpp"

#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <cstdio>

namespace pourbook {
namespace {

constexpr const char* each_its_own[] = {"magnet", "tube", "metal", "at"};
constexpr const char* for_all_falls[] = {
    "grade",   "br",   "surface-field", "recoil-permeability", "magnet-mass", "magnet-at", "slits",    "off-axis",
    "release", "stop", "condition",     "purity-rrr",          "as",          "feedstock", "porosity", "treatment"};

std::vector<std::string> for_all() {
    std::vector<std::string> out(std::begin(for_all_falls), std::end(for_all_falls));
    out.insert(out.end(), wall_fields().begin(), wall_fields().end());
    return out;
}
constexpr std::size_t most_falls = 4;

/// A field of drop, kept as it is written; whether each text can be read is asked of drop.
void add_kept(QuestionOf<FilmAsked>& q, const char* name, bool several) {
    const QuestionOf<DropRequest>& drop = drop_question();
    const std::size_t at = drop.at(name);
    QuestionField field = drop.fields[at];
    field.excludes.clear();
    if (several) {
        field.many = field.commas = true;
        field.meaning += "; several for several falls";
    }
    q.add_way(field,
              [way = drop.way(at)](FilmAsked&, const QuestionField& f, const Texts& texts, const Catalogue& catalogue) {
                  for (const std::string& text : texts) {
                      DropRequest unused;
                      if (const Fault fault = way(unused, f, {text}, catalogue)) return fault;
                  }
                  return Fault();
              });
}

Fault read_size(FilmAsked& asked, const std::string& text, const Catalogue&) {
    char rest = 0;
    const auto fits = [](int pixels) { return pixels >= 320 && pixels <= 7680; };
    if (std::sscanf(text.c_str(), "%dx%d%c", &asked.width, &asked.height, &rest) != 2 || !fits(asked.width) ||
        !fits(asked.height))
        return unreadable("WIDTHxHEIGHT of 320 to 7680 pixels is expected, such as 1920x1080");
    return {};
}

} // namespace

const QuestionOf<FilmAsked>& film_question() {
    using namespace input;
    static const QuestionOf<FilmAsked> question = [] {
        QuestionOf<FilmAsked> q("film", "numbered pictures of one to four falls side by side, for a video");
        for (const char* name : each_its_own) {
            add_kept(q, name, true);
            q.last().required = std::string(name) != "at";
        }
        for (const std::string& name : for_all()) add_kept(q, name.c_str(), false);
        q.place("Film");
        q.add_read(words("size", "WIDTHxHEIGHT of the video in pixels", "1080x1920", "1920x1080"), read_size);
        const auto within = [](QuestionField field, double low, double high) {
            field.low = low;
            field.high = high;
            return field;
        };
        q.add(within(quantity("rate", "1", "frames a second of the video", "60", "60"), 1, 1000), &FilmAsked::rate_1_s);
        q.add(within(quantity("slow", "1", "times slower than life; below 1: faster", "4", "1"), 1e-6, 1e6),
              &FilmAsked::slow);
        q.add(choice("ground", "behind the tubes; clear: see-through, to lay over a film", {"dark", "light", "clear"}),
              &FilmAsked::ground);
        return q;
    }();
    return question;
}

Result<std::vector<DropOfMetal>> film_falls(const Stated& stated, const Catalogue& catalogue) {
    std::size_t count = 1;
    for (const char* name : each_its_own) count = std::max(count, stated.texts(name).size());
    if (count > most_falls) return unreadable("film: up to four falls side by side");
    for (const char* name : each_its_own)
        if (const std::size_t n = stated.texts(name).size(); n > 1 && n != count)
            return unreadable(std::string("--") + name + ": " + std::to_string(n) + " are stated for " +
                              std::to_string(count) + " falls: state one for all, or one for each");
    std::vector<DropOfMetal> out;
    for (std::size_t i = 0; i < count; ++i) {
        Stated one(drop_question());
        for (const std::string& name : for_all())
            if (stated.states(name)) one.set_all(name, stated.texts(name));
        for (const char* name : each_its_own)
            if (const Texts& texts = stated.texts(name); !texts.empty())
                one.set(name, texts.size() > 1 ? texts[i] : texts[0]);
        const Result<DropRequest> request = drop_question().read(one, catalogue);
        if (!request) return request.problem();
        const Result<const Metal*> metal = find_metal(catalogue, request->metal);
        if (!metal) return metal.problem();
        Result<DropResult> result = drop(catalogue, *request);
        if (!result && count == 1) return result.problem();
        out.push_back({*metal, std::move(result)});
    }
    if (std::none_of(out.begin(), out.end(), [](const DropOfMetal& d) { return bool(d.result); }))
        return out.front().result.problem();
    return out;
}

} // namespace pourbook
