// A view with its set-up as words for an address, so that a link opens it: what differs from the first view, as
// "view=rank&pins=copper,silver&goal=strongest-brake&conditions.at=77%20K"; `versus=a,b` sets two metals against each
// other, `goal=` is that of Rank, every other name is a field of the state file. Percent-encoded as in RFC 3986.
#pragma once

#include "gui/state/view_file.hpp"

#include <string>

namespace pourbook {

/// Without the mark "#" before it.
std::string link_words(const ViewState& view, const ViewState& first);

/// With or without the mark. Where anything can't be read the first view, and one line that says what.
KeptView read_link(const std::string& words, const ViewState& first);

} // namespace pourbook
