// What every page of a view promises its reader.
#include "help/pages.hpp"
#include "questions/views.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

using namespace pourbook;
namespace {

bool has(const HelpPage& page, HelpBlock::Kind kind, const std::string& words) {
    return std::any_of(page.blocks.begin(), page.blocks.end(), [&](const HelpBlock& b) {
        return b.kind == kind && plain_text(b).find(words) != std::string::npos;
    });
}

} // namespace

TEST_CASE("each view has a page: title, how to use it, an equation, its limits") {
    for (const ViewName& named : view_names) {
        const char* view = named.name;
        CAPTURE(view);
        const HelpPage* page = help_page(view);
        REQUIRE(page);
        CHECK(page->blocks.front().kind == HelpBlock::Kind::title);
        CHECK(has(*page, HelpBlock::Kind::heading, "How to use it"));
        CHECK(has(*page, HelpBlock::Kind::set_off, "="));
        CHECK((has(*page, HelpBlock::Kind::heading, "What it does not do") ||
               has(*page, HelpBlock::Kind::heading, "Where it holds")));
        CHECK(page->text.size() < 3600); // two screens or so
    }
    CHECK_FALSE(help_page("nothing"));
}

TEST_CASE("where something can hurt, the page says so") {
    for (const char* view : {"metals", "rank", "drop", "mix", "pour", "trials"}) {
        CAPTURE(view);
        CHECK(has(*help_page(view), HelpBlock::Kind::caution, ""));
    }
    for (const char* view : {"metals", "mix", "pour"})
        CHECK(has(*help_page(view), HelpBlock::Kind::caution, "ocal codes"));
}

TEST_CASE("the pages keep to the part of Markdown that is drawn") {
    for (const ViewName& named : view_names)
        for (const HelpBlock& block : help_page(named.name)->blocks) {
            const char* view = named.name;
            const std::string words = plain_text(block);
            CAPTURE(view, words);
            for (const char* undrawn : {"**", "`", "](", "<!--", "### "})
                CHECK(words.find(undrawn) == std::string::npos);
            CHECK_FALSE(words.starts_with("|"));
            CHECK_FALSE(words.starts_with("1. "));
            for (const HelpWord& word : block.words)
                for (const HelpPiece& piece : word)
                    CHECK(
                        (piece.look == HelpPiece::Look::code || piece.text.find_first_of("*\\") == std::string::npos));
        }
}

TEST_CASE("a page that is referred to is there") {
    const std::string call = "pourbook help ";
    std::size_t referred = 0;
    for (const HelpPage& page : help_pages())
        for (std::size_t at = page.text.find(call); at != std::string::npos; at = page.text.find(call, at + 1)) {
            const std::size_t first = at + call.size();
            const std::string name = page.text.substr(first, page.text.find('`', first) - first);
            CAPTURE(page.name, name);
            CHECK(help_page(name));
            ++referred;
        }
    CHECK(referred >= 3);
}

TEST_CASE("the page on Mix states the median errors of the generated table") {
    const std::string& page = help_page("mix-in-full")->text;
    const std::string table = page.substr(page.find("<!-- predicted against measured"));
    for (const char* quantity : {"resistivity", "density", "linear expansion", "liquidus", "solidus"}) {
        const std::string row = table.substr(table.find(std::string("\n| ") + quantity + " | "));
        std::istringstream cells(row);
        std::string cell;
        for (int i = 0; i < 5; ++i) std::getline(cells, cell, '|'); // quantity, estimated, no rule, median error
        std::istringstream median(cell);
        double number = 0;
        std::string unit;
        REQUIRE(median >> number >> unit);
        const double step = std::pow(10, std::floor(std::log10(number)));
        std::ostringstream words; // one figure
        words << std::round(number / step) * step << " " << unit << " in " << quantity;
        CAPTURE(words.str());
        CHECK(has(*help_page("mix"), HelpBlock::Kind::paragraph, words.str()));
    }
}
