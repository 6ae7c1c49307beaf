// The metal a person names, by slug, name, alias or designation.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"
#include "questions/metals/find_words.hpp"

namespace pourbook {

/// Errors: unknown, with what a known name means, or up to three near names.
Result<const Metal*> find_metal(const Catalogue& catalogue, const std::string& word);

/// Errors: unknown, with the list of property ids.
Result<const Property*> find_property(const Catalogue& catalogue, const std::string& id);

/// What a name means that people type and that is kept under no record ("near aluminium-a356-cast (...)"); empty for
/// any other word.
std::string not_kept(const Catalogue& catalogue, const std::string& word);

/// Slug, name, symbol, aliases, designations and the near names that people type.
Findable names_of(const Catalogue& catalogue, const Metal& metal);

/// Metals whose slug, name, symbol, alias, designation or near name has words that begin as every word of the text
/// does, nearest first (find_words.hpp), else in catalogue order; all for an empty text.
std::vector<const Metal*> search_metals(const Catalogue& catalogue, const std::string& text);

} // namespace pourbook
