#include "tests/gui/desk.hpp"

#include "gui/shell/fonts.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <thread>

namespace pourbook::testing {
namespace {

/// Codes as the window library counts them; the backend does this in the real window.
constexpr std::pair<ImGuiKey, int> codes[] = {
    {ImGuiKey_Tab, 258},       {ImGuiKey_LeftArrow, 263}, {ImGuiKey_RightArrow, 262}, {ImGuiKey_UpArrow, 265},
    {ImGuiKey_DownArrow, 264}, {ImGuiKey_PageUp, 266},    {ImGuiKey_PageDown, 267},   {ImGuiKey_Backspace, 259},
    {ImGuiKey_Space, 32},      {ImGuiKey_Enter, 257},     {ImGuiKey_Escape, 256},     {ImGuiKey_A, 'A'}};

#if IMGUI_VERSION_NUM >= 18900 // keys are events with names of their own
void map_keys(ImGuiIO&) {}

ImGuiKey key_of(int code) {
    constexpr int f1 = 290;
    if (code >= 'A' && code <= 'Z') return static_cast<ImGuiKey>(ImGuiKey_A + (code - 'A'));
    if (code >= f1 && code < f1 + 12) return static_cast<ImGuiKey>(ImGuiKey_F1 + (code - f1));
    for (const auto& [key, known] : codes)
        if (code == known) return key;
    return static_cast<ImGuiKey>(code); // named already
}

void hold(ImGuiIO& io, int code, bool ctrl, bool down) {
    const ImGuiKey key = key_of(code);
    io.AddKeyEvent(ImGuiMod_Ctrl, ctrl && down);
    io.AddKeyEvent(key, down);
    if (key != code) io.SetKeyEventNativeData(key, code, code);
}
#else
void map_keys(ImGuiIO& io) {
    for (const auto& [key, code] : codes) io.KeyMap[key] = code;
}

void hold(ImGuiIO& io, int code, bool ctrl, bool down) {
    io.KeyCtrl = ctrl && down;
    io.KeysDown[code] = down;
}
#endif

/// The metals and the set-up that these tests speak of; what the first start shows has tests of its own.
ViewState usual_view(const Catalogue& catalogue) {
    ViewState view = first_view(catalogue);
    view.view = "rank";
    view.curves.celsius = false;
    view.pins.clear();
    for (const char* slug : {"copper", "sterling-silver", "aluminium-6061", "brass-cartridge"})
        if (catalogue.metal(slug)) view.pins.emplace_back(slug);
    view.selected = view.pins.empty() ? "" : view.pins.front();
    view.drop_setup = {"cylinder:15mmx15mm", "N42", "", "", "", "", "", "18mm:24mm:400mm"};
    view.drop.second = view.drop_setup;
    view.drop.second.tube = "18mm:30mm:400mm";
    view.drop.second_metal = "aluminium-6061";
    view.drop.face = "charts";
    view.pour = Stated(pour_question());
    view.pour.set("metal", "copper").set("part", "tube:18mm:24mm:400mm").set("clear", "15mm");
    view.pour_face = "sheet";
    view.mix.words = {};
    view.mix.words.stocks = {{"1.2 kg", "sterling-silver", ""}, {"300 g", "silver", ""}};
    view.mix.words.composition = "Ag 92.5 Cu 7.5";
    view.mix.words.melt_loss = "1 %";
    view.mix.words.target = "Ag 95.8";
    view.mix.words.with = "silver";
    view.mix.words.phases_at = "870 degC";
    return fitted(view, catalogue);
}

} // namespace

Desk::Desk(const Catalogue& catalogue, double width, double height, float scale, Workshop* workshop)
    : session(catalogue, usual_view(catalogue), {}, workshop), ui{session, {}, scale} {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {static_cast<float>(width), static_cast<float>(height)};
    map_keys(io);
    const Result<Fonts> fonts = build_fonts(scale);
    REQUIRE(fonts);
    ui.fonts = *fonts;
    ui.probe.on = true;
    apply_style(ui.colours(), scale);
}

Desk::~Desk() {
    ImGui::DestroyContext();
}

void Desk::frames(int count) {
    for (int i = 0; i < count; ++i) {
        ImGui::GetIO().DeltaTime = 1.0F / 60;
        let_return_press();
        ImGui::NewFrame();
        draw_desk(ui);
        ImGui::Render();
        session.history.note(session.view);
    }
}

void Desk::settle() {
    frames();
    for (int i = 0; i < 2000 && session.working(); ++i) {
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
        frames(1);
    }
    REQUIRE_FALSE(session.working());
    frames(4);
}

std::string Desk::text(const std::string& id) const {
    const auto at = ui.probe.items().find(id);
    INFO("on screen: " << id);
    REQUIRE(at != ui.probe.items().end());
    return at->second.text;
}

void Desk::point_at(const std::string& id) {
    const auto at = ui.probe.items().find(id);
    INFO("on screen: " << id);
    REQUIRE(at != ui.probe.items().end());
    const Probe::Item& i = at->second;
    ImGui::GetIO().MousePos = {static_cast<float>(i.x + i.width / 2), static_cast<float>(i.y + i.height / 2)};
    frames(2);
}

void Desk::click(const std::string& id) {
    point_at(id);
    ImGui::GetIO().MouseDown[0] = true;
    frames(2);
    ImGui::GetIO().MouseDown[0] = false;
    frames(2);
}

void Desk::type(const std::string& words) {
    for (const char c : words) {
        ImGui::GetIO().AddInputCharacter(static_cast<unsigned>(static_cast<unsigned char>(c)));
        frames(1);
    }
}

void Desk::fill(const std::string& field, const std::string& words) {
    click(field);
    press('A', true);
    type(words);
    tap(ImGuiKey_Enter);
    settle();
}

void Desk::press(int key, bool ctrl) {
    hold(ImGui::GetIO(), key, ctrl, true);
    frames(2);
    hold(ImGui::GetIO(), key, ctrl, false);
    frames(2);
}

} // namespace pourbook::testing
