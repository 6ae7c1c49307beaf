// ImGui draws a sign without a glyph as '?' and says nothing: here it fails.
#include "gui/actions/actions.hpp"
#include "help/pages.hpp"
#include "tests/gui/desk.hpp"

#include <imgui_internal.h>

#include <catch2/catch.hpp>

#include <set>
#include <sstream>

using namespace pourbook;
using testing::Desk;

namespace {

class Glyphs {
public:
    explicit Glyphs(const Fonts& fonts) : fonts_{fonts.body, fonts.italic, fonts.strong, fonts.heading, fonts.small} {}

    void look(const std::string& text) {
        for (const char* at = text.c_str(); *at;) {
            unsigned sign = 0;
            at += ImTextCharFromUtf8(&sign, at, nullptr);
            if (sign < 32) continue;
            for (const ImFont* font : fonts_)
                if (sign > 0xFFFF || !font->FindGlyphNoFallback(static_cast<ImWchar>(sign))) missing.insert(text);
        }
    }

    std::set<std::string> missing;

private:
    const ImFont* fonts_[5];
};

} // namespace

TEST_CASE("every text of the reference has its letters") {
    Desk desk(testing::real_catalogue());
    Glyphs glyphs(desk.ui.fonts);
    const Catalogue& c = testing::real_catalogue();
    for (const Metal& m : c.metals) {
        for (const std::string& s : {m.name, m.note, m.family}) glyphs.look(s);
        for (const auto* list : {&m.aliases, &m.designations})
            for (const std::string& s : *list) glyphs.look(s);
        for (const Record& r : m.records)
            for (const std::string& s :
                 {r.note, r.why, r.citation.locator, r.citation.through, pretty_unit(r.unit), r.none, r.purity})
                glyphs.look(s);
    }
    for (const Property& p : c.properties)
        for (const std::string& s :
             {p.label, p.symbol, p.meaning, shown_unit(p, UnitSystem::shown), shown_unit(p, UnitSystem::workshop)})
            glyphs.look(s);
    for (const Reference& r : c.references)
        for (const std::string& s : {r.full(), r.note, r.reuse, r.read_in}) glyphs.look(s);
    for (const Goal& g : c.goals)
        for (const std::string& s : {g.label, g.sentence}) glyphs.look(s);
    for (const Caution& k : c.cautions) glyphs.look(k.text);
    for (const Action& a : actions())
        for (const char* s : {a.label, a.help}) glyphs.look(s);
    for (const HelpPage& page : help_pages()) {
        if (page.name.ends_with("-in-full")) continue; // not shown in the window
        std::istringstream lines(page.text);
        for (std::string line; std::getline(lines, line);) glyphs.look(line);
    }
    CHECK(glyphs.missing == std::set<std::string>{});
}

TEST_CASE("every text on screen has its letters") {
    Desk desk(testing::real_catalogue());
    Glyphs glyphs(desk.ui.fonts);
    for (const bool workshop : {false, true})
        for (const char* view : {"metals", "rank", "curves", "compare", "sources"}) {
            desk.session.view.view = view;
            desk.session.view.workshop_units = workshop;
            desk.settle();
            for (const auto& [id, item] : desk.ui.probe.items()) glyphs.look(item.text);
            for (const auto& [id, cached] : desk.ui.scenes)
                for (const Primitive& p : cached.scene.parts)
                    if (const Text* t = std::get_if<Text>(&p)) glyphs.look(t->text);
        }
    CHECK(glyphs.missing == std::set<std::string>{});
}
