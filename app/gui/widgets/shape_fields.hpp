// A magnet, a tube or a part stated by its form and a field for each size, beside a small drawing; never by a string.
#pragma once

#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>

namespace pourbook {

/// `field`: magnet, tube or part (state/shape_words.hpp). True when other words were kept: each size that can be read
/// is, and what is wrong with the whole is said below. Words of a form that has no fields stay one text.
bool shape_fields(Ui& ui, const std::string& id, const std::string& field, std::string& words, float width,
                  const std::function<std::string(const std::string&)>& fault);

} // namespace pourbook
