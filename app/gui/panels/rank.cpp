#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/work_note.hpp"

#include <algorithm>

namespace pourbook {
namespace {

using PriceOrder = std::pair<std::string, std::vector<std::string>>;
constexpr std::size_t most_listed = 400; // lines a frame can afford

float list_height(const Ui& ui, const std::vector<LeftOut>& list) {
    const float lines = std::clamp(static_cast<float>(list.size()) * 1.5F, 2.0F, 7.0F); // some reasons take two lines
    return lines * ImGui::GetTextLineHeightWithSpacing() + ui.px(4);
}

void draw_left_out(Ui& ui, const char* id, const std::string& title, const std::vector<LeftOut>& list) {
    const bool open = ImGui::CollapsingHeader((title + " (" + std::to_string(list.size()) + ")###" + id).c_str());
    ui.probe.item(id, std::to_string(list.size()));
    if (!open) return;
    ImGui::BeginChild((std::string(id) + ".list").c_str(), {0, list_height(ui, list)});
    for (std::size_t i = 0; i < std::min(most_listed, list.size()); ++i) {
        const LeftOut& l = list[i];
        if (ImGui::Selectable((l.metal->name + "##" + id).c_str(), false, 0, {ui.px(210), 0}))
            show_metal(ui.session, l.metal->slug);
        if (!ui.narrow()) ImGui::SameLine();
        wrapped_text(l.reason, ui.colours().dim);
    }
    if (list.size() > most_listed)
        dim_text(ui, "and " + std::to_string(list.size() - most_listed) + " more, all of them in the saved table");
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

const PriceOrder* used_order(const RankResult& result) {
    const auto& orders = result.order_by_price_form;
    const auto used = std::find_if(orders.begin(), orders.end(),
                                   [&](const PriceOrder& o) { return o.first == result.conditions.price_form; });
    return used == orders.end() ? nullptr : &*used;
}

bool differs(const PriceOrder& order, const PriceOrder* used) {
    return used && order.second != used->second;
}

float price_height(const RankResult& result) {
    if (result.order_by_price_form.empty()) return 0;
    const PriceOrder* used = used_order(result);
    const auto others = std::count_if(result.order_by_price_form.begin(), result.order_by_price_form.end(),
                                      [&](const PriceOrder& o) { return differs(o, used); });
    return ImGui::GetFrameHeightWithSpacing() + static_cast<float>(others) * ImGui::GetTextLineHeightWithSpacing();
}

std::string names_in(const Ui& ui, const PriceOrder& order) {
    std::string names;
    for (const std::string& slug : order.second) {
        const Metal* metal = ui.session.catalogue.metal(slug);
        names += (names.empty() ? "" : ", ") + (metal ? metal->name : slug);
    }
    return names;
}

/// The form of price to use, and the first ten at the other forms where they stand in another order.
void draw_price_orders(Ui& ui, const RankResult& result) {
    if (result.order_by_price_form.empty()) return;
    const PriceOrder* used = used_order(result);
    bool same = true;
    for (const PriceOrder& order : result.order_by_price_form) {
        const std::string& form = order.first;
        if (&order != &result.order_by_price_form.front()) flow(button_width(form + " prices"));
        if (word_button(ui, "price." + form, form + " prices", used == &order))
            ui.view().conditions.set("price-form", form);
        if (ImGui::IsItemHovered()) hover_text(ui, "The first ten at " + form + " prices\n" + names_in(ui, order));
        same = same && !differs(order, used);
    }
    const std::string told =
        same ? "the first ten are the same at all three" : "the first ten are others, or in another order:";
    flow(ImGui::CalcTextSize(told.c_str()).x);
    ImGui::AlignTextToFramePadding();
    dim_text(ui, told);
    for (const PriceOrder& order : result.order_by_price_form) {
        const std::string names = order.first + ": " + names_in(ui, order);
        ui.probe.say("price." + order.first + ".order", names);
        if (!differs(order, used)) continue;
        dim_text(ui, fitted(names, ImGui::GetContentRegionAvail().x));
        if (ImGui::IsItemHovered()) hover_text(ui, "At " + order.first + " prices\n" + names);
    }
}

void draw_answer(Ui& ui, const RankResult& result) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float needed = std::max(ui.px(760), ui.table_needs); // what its columns need, where the chart can spare it
    const float table = split_width(ui, "rank", std::clamp(needed, room * 0.5F, room * 0.68F), 560, 330);
    constexpr ImGuiWindowFlags no_scroll = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
    begin_panel(ui, "order", {table, 0}, no_scroll);
    const std::string& settling = result.settling.sentence;
    float sentences = 0;
    for (const std::string* said : {&settling, &result.price_years})
        if (!said->empty()) sentences += ImGui::CalcTextSize(said->c_str(), nullptr, false, table).y + ui.px(8);
    if (result.ranked.empty())
        dim_text(ui, "No metal is left to rank: loosen the conditions, or see below what each one lacks.");
    else
        draw_rank_table(
            ui, result,
            {0, ImGui::GetContentRegionAvail().y - folded_height(ui, result) - sentences - price_height(result)});
    if (!settling.empty()) wrapped_text(settling, ui.colours().dim);
    ui.probe.say("rank.settling", settling);
    if (!result.price_years.empty()) wrapped_text(result.price_years, ui.colours().dim);
    ui.probe.say("rank.price_years", result.price_years);
    draw_price_orders(ui, result);
    if (!result.excluded.empty()) draw_left_out(ui, "excluded", "Left out, and why", result.excluded);
    if (!result.unrankable.empty())
        draw_left_out(ui, "unrankable", "Can't be ranked, and what is missing", result.unrankable);
    end_panel(ui);
    split_edge(ui, "rank");
    begin_panel(ui, "picture", {0, 0}, no_scroll);
    draw_rank_picture(ui, result);
    end_panel(ui);
}

/// Own prices that could not be used, and where to enter what is missing.
void draw_unused_prices(Ui& ui) {
    for (const std::string& remark : ui.session.remarks()) {
        if (remark.find("rate of exchange") == std::string::npos) continue;
        warning_text(ui, remark);
        ui.probe.item("rank.unused", remark);
        if (ImGui::Button("enter the rate")) {
            ui.view().view = "trials";
            ui.view().shelf = "rate";
        }
        ui.probe.item("rank.enter-rate", "");
        return; // one is enough to act on
    }
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
        dim_text(
            ui,
            "Only the pinned metals are asked for, and none is pinned: ask for all, or pin some in Metals (Ctrl+P).");
        return;
    }
    draw_unused_prices(ui);
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
