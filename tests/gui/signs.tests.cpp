// What the window says stands in signs of print: ±, m³, µΩ·cm. (What a person types, such as 20 degC, stays as typed.)
#include "gui/actions/actions.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/screen_text.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

TEST_CASE("no view writes a sign as it is typed") {
    Desk desk(testing::real_catalogue(), 2560, 1440, 1);
    for (const bool workshop : {false, true}) {
        desk.session.view.workshop_units = workshop;
        for (const Action& a : actions()) {
            if (!std::string(a.id).starts_with("view.")) continue;
            a.run(desk.session);
            desk.settle();
            const auto texts = testing::texts_on_screen();
            CHECK(texts.size() > 10);
            for (const auto& text : texts) {
                const std::string words = testing::words_of(text);
                CAPTURE(a.id, words);
                for (const char* typed : {"+-", "/m3", "cm3", "/in3", "uohm"})
                    CHECK(words.find(typed) == std::string::npos);
            }
        }
    }
}
