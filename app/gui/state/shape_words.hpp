// A magnet, a tube or a part in words ("tube:22mm:38mm:300mm") taken apart into one length a field, and put together
// again.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct ShapeForm {
    std::string name;  // as it stands in front of the sizes; of a tube, which has no other form, empty
    char between;      // what parts the sizes
    std::string drawn; // the form of a part (questions/pour/part_words.hpp) that looks like it; empty: none does
    std::vector<std::string> sizes; // their names
    std::vector<std::string> usual; // such as
    bool file = false;              // the one size is the name of a file
};

/// The forms of a field of this name: magnet, tube or part. Empty: it is stated in words.
const std::vector<ShapeForm>& shape_forms(const std::string& field);

struct ShapeParts {
    std::size_t form = 0; // of the field's forms
    std::vector<std::string> sizes;
};

/// One without a unit takes the last one's; no words: the first form without sizes. Nothing for words of another form
/// (a stack of magnets), which stay words.
std::optional<ShapeParts> shape_parts(const std::vector<ShapeForm>& forms, const std::string& words);
/// No sizes at all: no words.
std::string shape_words(const ShapeForm& form, const std::vector<std::string>& sizes);

} // namespace pourbook
