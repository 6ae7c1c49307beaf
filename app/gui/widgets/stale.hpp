// An answer that is not the answer to what stands in the fields: it stays readable, paler, below words that say so.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

/// Until the end of the block: pale while `stale`, with its head. What is drawn as a chart is paled too.
class Stale {
public:
    Stale(Ui& ui, bool stale);
    ~Stale();
    Stale(const Stale&) = delete;
    Stale& operator=(const Stale&) = delete;

private:
    bool stale_;
};

/// A field with a text that can't be read was drawn in this frame or the last.
bool has_unreadable_field(const Ui& ui);

} // namespace pourbook
