// The window: one model (a strip of pinned metals) that feeds every view. This header knows neither ImGui nor GLFW.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/workshop/workshop.hpp"
#include "questions/pour/pour_request.hpp"

#include <string>

namespace pourbook {

struct WindowOptions {
    int width = 1440;
    int height = 900;
    double scale = 0; // 0: the display's own
    bool dark = true;
    std::string view;             // start in this view; empty: as the state file says
    std::string link;             // start with what these words of a link say, in place of the state file's
    std::string part_file;        // start in Pour with this part, an STL file in mm
    std::string state_file;       // what is pinned and chosen comes back from here; empty: nothing is kept
    std::string test_socket;      // answer a test script on this UNIX socket; empty: none
    MeshReader read_mesh;         // of STL files
    std::string date;             // of today, "2026-11-25", for what is saved
    std::string screenshot;       // draw a few frames, write this PNG and end; empty: run until closed
    Workshop* workshop = nullptr; // the person's own file: trials, stock, goals ...; null: none
};

/// Opens the window and runs until it is closed. Returns the exit code; failures (no display, no OpenGL 3.3, no font)
/// are one line on standard error and a non-zero code.
int run_window(const Catalogue& catalogue, const WindowOptions& options);

/// Whether a display can be reached at all.
bool display_available();

} // namespace pourbook
