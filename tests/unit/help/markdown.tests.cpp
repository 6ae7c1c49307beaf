#include "help/markdown.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using Look = HelpPiece::Look;

TEST_CASE("a page is read block by block") {
    const auto blocks = help_blocks("# Title\n\nOne line\nand its rest.\n\n## Part\n- a point\n  goes on\n- another\n\n"
                                    "    F = k v\n    m = Br V\n\n> Take care\n> always.\n");
    const std::pair<HelpBlock::Kind, const char*> wanted[] = {
        {HelpBlock::Kind::title, "Title"},      {HelpBlock::Kind::paragraph, "One line and its rest."},
        {HelpBlock::Kind::heading, "Part"},     {HelpBlock::Kind::point, "a point goes on"},
        {HelpBlock::Kind::point, "another"},    {HelpBlock::Kind::set_off, "F = k v"},
        {HelpBlock::Kind::set_off, "m = Br V"}, {HelpBlock::Kind::caution, "Take care always."}};
    REQUIRE(blocks.size() == std::size(wanted));
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        CHECK(blocks[i].kind == wanted[i].first);
        CHECK(plain_text(blocks[i]) == wanted[i].second);
    }
}

TEST_CASE("two cautions with a blank line between them are two") {
    CHECK(help_blocks("> one\n\n> two\n").size() == 2);
}

TEST_CASE("marks make strong words and code, and stick to what stands beside them") {
    const auto words = help_blocks("Type `77 K`, **twice over**.").at(0).words;
    REQUIRE(words.size() == 4);
    REQUIRE(words[1].size() == 2);
    CHECK((words[1][0].text == "77 K" && words[1][0].look == Look::code));
    CHECK((words[1][1].text == "," && words[1][1].look == Look::plain));
    CHECK((words[2][0].text == "twice" && words[2][0].look == Look::strong));
    CHECK((words[3][0].text == "over" && words[3][0].look == Look::strong && words[3][1].text == "."));
}

TEST_CASE("a mark that is not closed stays as it stands") {
    CHECK(plain_text(help_blocks("a * b ** c ` d").at(0)) == "a * b ** c ` d");
    CHECK(help_blocks("").empty());
    CHECK(help_blocks("\n   \n\n").empty());
}
