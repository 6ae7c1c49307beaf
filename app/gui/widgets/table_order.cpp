#include "gui/widgets/table_order.hpp"

#include "gui/widgets/text.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

void turn(TableOrder& order, int column) {
    if (order.column != column)
        order.column = column, order.falling = true;
    else if (order.falling)
        order.falling = false;
    else
        order.column = -1;
}

/// Figures before words, what holds nothing last.
bool comes_before(const SortCell& a, const SortCell& b, bool falling) {
    const bool x = std::isfinite(a.number), y = std::isfinite(b.number);
    if (x != y) return x;
    if (x) return falling ? a.number > b.number : a.number < b.number;
    if (a.words.empty() != b.words.empty()) return b.words.empty();
    return falling ? a.words < b.words : a.words > b.words; // words begin at a
}

} // namespace

void sorted_header_row(Ui& ui, const std::string& id, int left) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    TableOrder& order = ui.orders[id];
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    for (int i = 0; i < ImGui::TableGetColumnCount(); ++i) {
        ImGui::TableSetColumnIndex(i);
        const std::string name = ImGui::TableGetColumnName(i);
        if (name.starts_with("##")) continue;
        const float at = ImGui::GetCursorPosX();
        const std::string head = id + ".head." + std::to_string(i);
        if (ImGui::Selectable(("##" + head).c_str(), order.column == i, ImGuiSelectableFlags_AllowItemOverlap))
            turn(order, i);
        ui.probe.item(head, order.column != i ? "" : order.falling ? "highest first" : "lowest first");
        if (ImGui::IsItemHovered()) hover_text(ui, name + "\nclick: highest first, lowest first, as ranked");
        ImGui::SameLine(0, 0);
        ImGui::SetCursorPosX(at); // SameLine would count from the column
        i < left ? text(name) : text_right(name);
    }
}

const std::vector<std::size_t>& sorted_rows(Ui& ui, const std::string& id, const std::string& key, std::size_t rows,
                                            const std::function<SortCell(std::size_t, int)>& cell) {
    TableOrder& order = ui.orders[id];
    const std::string full = key + "|" + std::to_string(order.column) + (order.falling ? "f" : "r");
    if (order.key == full && order.rows.size() == rows) return order.rows;
    order.key = full;
    order.rows.resize(rows);
    std::iota(order.rows.begin(), order.rows.end(), std::size_t{0});
    if (order.column < 0) return order.rows;
    std::vector<SortCell> cells;
    for (std::size_t i = 0; i < rows; ++i) cells.push_back(cell(i, order.column));
    std::stable_sort(order.rows.begin(), order.rows.end(),
                     [&](std::size_t a, std::size_t b) { return comes_before(cells[a], cells[b], order.falling); });
    return order.rows;
}

} // namespace pourbook
