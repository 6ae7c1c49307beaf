#include "gui/widgets/answer_band.hpp"

#include "gui/state/window_words.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/theme.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double sureness_width = 170, actions_width = 150, least_height = 34, tall_window = 840;

/// Words for a chance, beside the figure itself.
std::string sure_words(double sure) {
    const std::string figure = sure > 0.999 ? "above 99.9 %" : significant(100 * sure, 2) + " %";
    return (sure >= 0.95 ? "firm, " : sure >= 0.75 ? "fair, " : "open, ") + figure;
}

/// Whose figures, and how sure.
void draw_sureness(Ui& ui, const Answer& answer) {
    ui.probe.say("answer.state", answer.state);
    const double sure = answer.sure;
    if (!std::isfinite(sure)) return small_dim_text(ui, answer.state);

    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ui.px(sureness_width), height = ui.px(6);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, {low.x + width, low.y + height}, u32(ui.colours().line), ui.px(3));
    list.AddRectFilled(low, {low.x + width * static_cast<float>(sure), low.y + height}, u32(ui.colours().accent),
                       ui.px(3));
    ImGui::Dummy({width, height});
    small_dim_text(ui, sure_words(sure) + (answer.state.empty() ? "" : " · " + answer.state));
    ui.probe.say("answer.sure", sure_words(sure));
}

/// In the font that is pushed: the words with their end replaced where they need more than two lines.
std::string in_two_lines(const std::string& words, float width) {
    const auto broken = [&](const std::string& shown) { return in_lines(shown, width); };
    const auto fits = [&](const std::string& shown) {
        return ImGui::CalcTextSize(shown.c_str(), nullptr, false, width).y < 2.5F * ImGui::GetTextLineHeight();
    };
    std::string shown = broken(words);
    for (std::size_t end = words.size(); !fits(shown);) {
        end = words.rfind(' ', end - 1);
        if (end == std::string::npos || end == 0) break;
        shown = broken(words.substr(0, end) + " …");
    }
    return shown;
}

/// Of the band as it was drawn last; 0 where none stands.
float& band_height() {
    return *ImGui::GetStateStorage()->GetFloatRef(ImGui::GetID("height of the answer"), 0);
}

/// While an answer is worked out again its band keeps its place, so that nothing moves away under the pointer.
void hold_place(Ui& ui) {
    float& height = band_height();
    if (!ui.session.working()) height = 0;
    if (height > 0) ImGui::Dummy({0, height});
}

} // namespace

std::string first_sentence(const std::string& words) {
    constexpr std::size_t shortest = 20; // "U.S. Geological ..." is no end
    for (std::size_t at = words.find(". "); at != std::string::npos; at = words.find(". ", at + 1))
        if (at > shortest && at + 2 < words.size() && words[at + 2] >= 'A' && words[at + 2] <= 'Z')
            return words.substr(0, at + 1);
    return words;
}

void answer_band(Ui& ui, const Answer& answer) {
    if (answer.sentence.empty()) {
        hold_place(ui);
        return;
    }
    const bool narrow = ui.narrow(), large = !narrow && ImGui::GetIO().DisplaySize.y > ui.px(tall_window),
               sure = std::isfinite(answer.sure) || !answer.state.empty();
    ImFont* font = large ? ui.fonts.large : ui.fonts.strong;
    const float beside = ui.px(actions_width + (sure ? sureness_width + theme::apart : 0)),
                width =
                    ImGui::GetContentRegionAvail().x - (narrow ? 0 : beside) - (narrow ? 2 : 3) * ui.px(theme::apart);
    ImGui::PushFont(font);
    const std::string sentence = in_window(first_sentence(answer.sentence)),
                      words = narrow ? in_lines(sentence, width) : in_two_lines(sentence, width);
    const float lines = ImGui::CalcTextSize(words.c_str(), nullptr, false, width).y;
    ImGui::PopFont();
    ImGui::PushStyleColor(ImGuiCol_ChildBg, u32(ui.colours().raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {ui.px(theme::apart), ui.px(theme::tight)});
    const float below = narrow ? ui.px(theme::tight) + ImGui::GetFrameHeight() : 0; // what else stands beside it
    const float height = std::max(lines + below, ui.px(least_height)) + 2 * ui.px(theme::tight);
    band_height() = height;
    ImGui::BeginChild("answer", {0, height}, false,
                      ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoScrollbar |
                          ImGuiWindowFlags_NoScrollWithMouse);
    const ImVec2 top = ImGui::GetCursorPos();
    {
        const TextLook look(font, ui.colours().ink);
        ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + width);
        text(words);
        ImGui::PopTextWrapPos();
    }
    ui.probe.item("answer", answer.sentence);
    if (ImGui::IsItemHovered()) hover_text(ui, in_window(answer.sentence));
    const float line = narrow ? top.y + lines + ui.px(theme::tight) : top.y;
    ImGui::SetCursorPos({narrow ? top.x : ImGui::GetWindowContentRegionMax().x - beside, line});
    if (sure) {
        ImGui::BeginGroup();
        draw_sureness(ui, answer);
        ImGui::EndGroup();
        ImGui::SetCursorPos({ImGui::GetWindowContentRegionMax().x - ui.px(actions_width), line});
    }
    const bool copied = ui.answer_copied == answer.sentence;
    if (word_button(ui, "answer.copy", copied ? "Copied" : "Copy", false)) {
        ImGui::SetClipboardText(answer.sentence.c_str());
        ui.answer_copied = answer.sentence;
    }
    ImGui::SameLine(0, 0);
    if (word_button(ui, "answer.picture", "Picture", false)) ui.session.passing.leaving = "frame";
    if (ImGui::IsItemHovered()) hover_text(ui, "Picture\nfor a video or a sheet (Ctrl+E)");
    ImGui::EndChild();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
}

} // namespace pourbook
