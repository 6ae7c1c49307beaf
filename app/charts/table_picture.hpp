// A table as a picture: as many columns and rows as the frame has room for, and how many more there are.
#pragma once

#include "charts/canvas.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct TablePicture {
    std::string title;
    std::vector<std::string> columns;
    std::vector<bool> right; // figures, by column
    std::vector<std::vector<std::string>> rows;
    Origin origin;
};

Scene layout(const TablePicture& table, const Canvas& canvas);

/// The same where there is little width; `layout` takes it there.
Scene narrow_layout(const TablePicture& table, const Canvas& canvas);

} // namespace pourbook
