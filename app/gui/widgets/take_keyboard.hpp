#pragma once

#include <imgui.h>

namespace pourbook {

/// The widget drawn next (offset -1: the one before) takes the keyboard. Newer versions of the toolkit look for it only
/// in the window that has the focus, which a panel need not have.
inline void take_keyboard(int offset = 0) {
#if IMGUI_VERSION_NUM >= 18700
    ImGui::SetWindowFocus();
#endif
    ImGui::SetKeyboardFocusHere(offset);
}

} // namespace pourbook
