// The metal a person names, by slug, name, alias or designation.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

namespace pourbook {

/// Errors: unknown, with up to three near names.
Result<const Metal*> find_metal(const Catalogue& catalogue, const std::string& word);

/// Errors: unknown, with the list of property ids.
Result<const Property*> find_property(const Catalogue& catalogue, const std::string& id);

/// Metals whose slug, name, symbol, alias or designation contains every word of the text, nearest first
/// (find_words.hpp), else in catalogue order; all for an empty text.
std::vector<const Metal*> search_metals(const Catalogue& catalogue, const std::string& text);

} // namespace pourbook
