// What the browser's side does for the program: functions of app/web/page_library.js. Texts that are returned are
// malloc'ed.
#pragma once

extern "C" {
void page_closed(); // the window has been left
void page_give_file(const char* name, const void* bytes, int size);
char* page_address();
int page_offer_png(const void* bytes, int size);
void page_copy_text(const char* text);
char* page_pasted_text();
double page_pixel_ratio();
char* page_words(const char* name); // what page.js has set in Module
int page_test_question();
void page_test_answer(const char* line);

// Emscripten's own: calls back at each frame of the browser, from then on.
void emscripten_set_main_loop_arg(void (*frame)(void*), void* with, int frames_a_second, int never_return);
void emscripten_cancel_main_loop();
}

#include <cstdlib>
#include <string>

namespace pourbook::platform {

inline std::string taken(char* text) {
    const std::string words = text;
    std::free(text);
    return words;
}

} // namespace pourbook::platform
