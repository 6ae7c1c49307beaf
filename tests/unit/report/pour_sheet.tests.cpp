#include "answers/picture/letters.hpp"
#include "answers/picture/page_layout.hpp"
#include "answers/picture/page_pdf.hpp"
#include "answers/pour/pour_report.hpp"
#include "support/small_catalogue.hpp"

#include "charts/place_text.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

Page sheet_of(const std::string& metal) {
    Stated stated(pour_question());
    stated.set("metal", metal).set("part", "tube:18mm:24mm:400mm").set("clear", "15mm");
    stated.set_flag("acknowledge-hazard", true);
    const Result<PourRequest> request = pour_request_from(stated, {}, testing::real_catalogue());
    REQUIRE(request);
    const Result<PourResult> plan = pour(testing::real_catalogue(), *request);
    REQUIRE(plan);
    return in_print(pour_page(*plan, testing::real_catalogue(), UnitSystem::shown));
}

const Letters& measure() {
    const Result<const Letters*> found = letters();
    REQUIRE(found);
    return **found;
}

void check_inside(const PageLayer& layer) {
    for (const Primitive& part : layer.scene.parts) {
        const Text* text = std::get_if<Text>(&part);
        if (!text) continue;
        CAPTURE(text->text);
        const Box box = text_box(*text, measure());
        CHECK(box.x * layer.scale >= 0);
        CHECK(box.right() * layer.scale <= paper_width_pt);
        CHECK(box.bottom() * layer.scale <= paper_height_pt);
    }
}

} // namespace

TEST_CASE("a pour sheet is one page for the plan and one for the notes, with everything on the paper") {
    for (const char* metal :
         {"copper", "sterling-silver", "bronze-tin-cast", "aluminium-a356-cast", "za-8", "tin", "lead"}) {
        CAPTURE(metal);
        const auto sides = lay_out(sheet_of(metal), measure());
        CHECK(sides.size() == 2);
        for (const PageSide& side : sides)
            for (const PageLayer& layer : side) check_inside(layer);
    }
}

TEST_CASE("a sheet too long for its side goes on overleaf, nothing lost") {
    Page page = sheet_of("copper");
    const std::size_t wanted = page.sections.size();
    for (int i = 0; i < 40; ++i) page.sections.front().add(std::string(300, 'x') + " word");
    std::size_t sections = 0;
    for (const PageSide& side : lay_out(page, measure()))
        for (const PageLayer& layer : side)
            for (const Primitive& part : layer.scene.parts)
                if (const Text* t = std::get_if<Text>(&part);
                    t && t->style == TextStyle::title && t->anchor == Anchor::start)
                    for (const PageSection& s : page.sections) sections += s.title == t->text;
    CHECK(sections == wanted);
}

TEST_CASE("the PDF of a sheet is the same for the same day") {
    const Page page = sheet_of("copper");
    const auto one = page_pdf(page, "2026-11-25"), two = page_pdf(page, "2026-11-25");
    REQUIRE(one);
    REQUIRE(two);
    CHECK(one->substr(0, 5) == "%PDF-");
    CHECK(*one == *two);
    CHECK(one->size() > 10000);
}

TEST_CASE("what a sheet says is escaped in HTML and Markdown") {
    Page page;
    page.title = "<b>a & b</b>";
    page.sections.push_back({"s", "", {}, {}, ""});
    page.sections.back().add("1 < 2 | *x*", PageBlock::Kind::bullet);
    CHECK(page_html(page).find("<b>a") == std::string::npos);
    CHECK(page_html(page).find("&lt;b&gt;a &amp; b") != std::string::npos);
    CHECK(page_markdown(page).find("\\*x\\*") != std::string::npos);
    CHECK(page_markdown(page).find("1 \\< 2 \\|") != std::string::npos);
}
