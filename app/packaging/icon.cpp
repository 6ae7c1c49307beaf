// Writes the program's icon for a package: pourbook-icon FILE.svg|FILE.png PIXELS
#include "charts/icon.hpp"
#include "answers/picture/picture.hpp"
#include "platform/files.hpp"

#include <cstdlib>
#include <iostream>

int main(int argc, char** argv) {
    using namespace pourbook;
    if (argc != 3) {
        std::cerr << "pourbook-icon: FILE.svg|FILE.png PIXELS are expected\n";
        return 2;
    }
    const auto format = picture_format(argv[1]);
    if (!format) return std::cerr << "pourbook-icon: " << format.problem().text << "\n", 2;
    PictureLook look;
    look.ground = {0, 0, 0, 0};
    const auto picture = picture_of(icon(std::atof(argv[2])), *format, look);
    if (!picture) return std::cerr << "pourbook-icon: " << picture.problem().text << "\n", 4;
    if (const auto problem = platform::write_file(argv[1], *picture))
        return std::cerr << "pourbook-icon: " << problem->text << "\n", 4;
    return 0;
}
