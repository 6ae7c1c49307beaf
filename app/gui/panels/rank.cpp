#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/work_note.hpp"

#include <algorithm>

namespace pourbook {
namespace {

float list_height(const Ui& ui, const std::vector<LeftOut>& list) {
    const float lines = std::clamp(static_cast<float>(list.size()) * 1.5F, 2.0F, 7.0F); // some reasons take two lines
    return lines * ImGui::GetTextLineHeightWithSpacing() + ui.px(4);
}

void draw_left_out(Ui& ui, const char* id, const std::string& title, const std::vector<LeftOut>& list) {
    const bool open = ImGui::CollapsingHeader((title + " (" + std::to_string(list.size()) + ")###" + id).c_str());
    ui.probe.item(id, std::to_string(list.size()));
    if (!open) return;
    ImGui::BeginChild((std::string(id) + ".list").c_str(), {0, list_height(ui, list)});
    for (const LeftOut& l : list) {
        if (ImGui::Selectable((l.metal->name + "##" + id).c_str(), false, 0, {ui.px(210), 0}))
            show_metal(ui.session, l.metal->slug);
        ImGui::SameLine();
        wrapped_text(l.reason, ui.colours().dim);
    }
    ImGui::EndChild();
}

/// Height the two folded lists take now, so that the table gets the rest.
float folded_height(const Ui& ui, const RankResult& result) {
    const ImGuiStorage* open = ImGui::GetStateStorage();
    float height = 0;
    const auto add = [&](const char* id, const std::vector<LeftOut>& list) {
        if (list.empty()) return;
        height += ImGui::GetFrameHeightWithSpacing();
        if (open->GetInt(ImGui::GetID((std::string("###") + id).c_str()))) height += list_height(ui, list) + ui.px(6);
    };
    add("excluded", result.excluded);
    add("unrankable", result.unrankable);
    return height;
}

/// "exchange: aluminium, aluminium-1350, ..." a line for each form of price; the word chooses it.
void draw_price_orders(Ui& ui, const RankResult& result) {
    for (const auto& [form, slugs] : result.order_by_price_form) {
        const bool used = form == result.conditions.price_form;
        if (word_button(ui, "price." + form, form + " prices", used)) ui.view().rank.price_form = form;
        ImGui::SameLine();
        std::string names;
        for (const std::string& slug : slugs) {
            const Metal* metal = ui.session.catalogue.metal(slug);
            names += (names.empty() ? "" : ", ") + (metal ? metal->name : slug);
        }
        ImGui::AlignTextToFramePadding();
        const std::string shown = fitted(names, ImGui::GetContentRegionAvail().x);
        dim_text(ui, shown);
        ui.probe.item("price." + form + ".order", names);
        if (ImGui::IsItemHovered()) hover_text(ui, "The first ten at " + form + " prices\n" + names);
    }
}

void draw_answer(Ui& ui, const RankResult& result) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float table =
        std::clamp(ui.px(840), room * 0.5F, room * 0.63F); // what its columns need, where the chart can spare it
    ImGui::BeginChild("order", {table, 0}, false, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    const std::string& settling = result.settling.sentence;
    const float sentence =
        settling.empty() ? 0 : ImGui::CalcTextSize(settling.c_str(), nullptr, false, table).y + ui.px(8);
    const float prices = static_cast<float>(result.order_by_price_form.size()) * ImGui::GetFrameHeightWithSpacing();
    if (result.ranked.empty())
        dim_text(ui, "No metal is left to rank: loosen the conditions, or see below what each one lacks.");
    else
        draw_rank_table(ui, result,
                        {0, ImGui::GetContentRegionAvail().y - folded_height(ui, result) - sentence - prices});
    if (!settling.empty()) wrapped_text(settling, ui.colours().dim);
    ui.probe.say("rank.settling", settling);
    draw_price_orders(ui, result);
    if (!result.excluded.empty()) draw_left_out(ui, "excluded", "Left out, and why", result.excluded);
    if (!result.unrankable.empty())
        draw_left_out(ui, "unrankable", "Can't be ranked, and what is missing", result.unrankable);
    ImGui::EndChild();
    ImGui::SameLine(0, ui.px(14));
    ImGui::BeginChild("picture", {0, 0}, false, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    draw_rank_picture(ui, result);
    ImGui::EndChild();
}

} // namespace

void draw_rank(Ui& ui) {
    draw_rank_choice(ui);
    if (ui.view().rank.on_shelf && ui.session.workshop.data().stock.empty()) {
        dim_text(ui, "Only what is on the shelf is asked for, and nothing is: add your stock in Trials (F8).");
        return;
    }
    const bool nothing_pinned = ui.view().rank.only_pinned && ui.view().pins.empty();
    if (nothing_pinned) {
        dim_text(ui, "Only the pinned metals are asked for, and none is pinned.");
        return;
    }
    const Result<RankResult>* result = ui.session.ranking();
    ui.probe.say("rank.working", ui.session.ranking_is_current() ? "" : "working");
    work_note(ui, "rank.work", ui.session.ranking_work());
    if (!result)
        dim_text(ui, ui.session.ranking_work().working() ? "Working it out …" : "");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else
        draw_answer(ui, **result);
}

} // namespace pourbook
