// "Save" and "Copy" of a picture or table: small words in a line; saving turns the line into a field for the file's
// name, and what came of it is told in the same line. Nothing waits for an answer.
#pragma once

#include "answers/writers/documents.hpp"
#include "core/result.hpp"
#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>

namespace pourbook {

/// What can leave the window. Called only in the frame in which it is asked for.
struct Leaving {
    const char* what = "table";  // or "picture", or "sheet": saved and copied by the shortcuts of either
    std::string name;            // of a file, without folder and ending
    const char* ending = ".csv"; // offered first
    const char* endings = ".csv, .md, .html, .json, .xlsx or .txt";   // those that can be written
    std::function<Result<std::string>(const std::string& file)> made; // the file's bytes, by its ending
    std::function<std::string()> words;                               // for the clipboard
    std::function<void()> frame = {};                                 // opens the picture room; empty: no picture
};

/// Draws the line at the cursor.
void leave_row(Ui& ui, const std::string& id, const Leaving& leaving);

/// The line for a table: a file of any format, or tab-separated on the clipboard.
void table_row(Ui& ui, const std::string& id, const std::function<Document(const DocumentSetting&)>& make);

/// Lower-case letters, figures and hyphens: "Braking for the money" -> "braking-for-the-money".
std::string file_name_of(const std::string& title);

} // namespace pourbook
