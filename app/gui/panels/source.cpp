#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {
namespace {

void fact(const Ui& ui, const char* name, const std::string& words) {
    if (words.empty()) return;
    dim_text(ui, name);
    ImGui::SameLine(ui.px(110));
    wrapped_text(words, ui.colours().ink);
}

std::string marks_of(const Taken& t) {
    std::string out = t.how_known == HowKnown::read ? "" : how_known_text(t.how_known);
    if (t.use == Use::alternate) return out;
    return (out.empty() ? "" : out + ", ") + name_of(t.use);
}

void draw_taken(Ui& ui, const Taken& t, int number) {
    ImGui::PushID(number);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (t.slug.empty())
        fitted_text(t.metal);
    else if (ImGui::Selectable(fitted(t.metal, ImGui::GetContentRegionAvail().x).c_str(), false,
                               ImGuiSelectableFlags_SpanAllColumns))
        show_metal(ui.session, t.slug);
    ui.probe.item("taken." + std::to_string(number), t.metal);
    if (ImGui::IsItemHovered())
        hover_text(ui, t.metal + ", " + t.what + "\n" + t.printed + "\n" + t.locator +
                           (t.through.empty() ? "" : "\nread through " + t.through));
    if (ui.narrow()) {
        ImGui::TableNextColumn();
        fitted_text(t.what + ": " + t.printed);
        return ImGui::PopID();
    }
    for (const std::string& words : {t.what, t.printed}) {
        ImGui::TableNextColumn();
        fitted_text(words);
    }
    ImGui::TableNextColumn();
    small_fitted_text(ui, t.locator + (t.through.empty() ? "" : ", through " + t.through));
    ImGui::TableNextColumn();
    small_dim_text(ui, marks_of(t));
    ImGui::PopID();
}

} // namespace

void draw_source(Ui& ui, const Reference& r) {
    heading(ui, r.key);
    ui.probe.say("source.shown", r.key);
    wrapped_text(r.full(), ui.colours().ink);
    ImGui::Spacing();
    fact(ui, "kind", r.kind);
    fact(ui, "grade", reliability_text(r.reliability));
    fact(ui, "read in", r.read_in);
    fact(ui, "reuse", r.reuse);
    fact(ui, "address", r.address);
    fact(ui, "note", r.note);
    ImGui::Spacing();
    const std::vector<Taken>& taken = ui.session.sources().taken_from(r.key);
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text(taken.empty() ? "Nothing is taken from it." : "Taken from it");
    }
    if (taken.empty()) return;
    table_row(ui, "taken", [&](const DocumentSetting& setting) { return taken_document(r, taken, setting); });
    if (!ImGui::BeginTable("taken", ui.narrow() ? 2 : 5, ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch, 1.75F);
    ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch, 1.6F);
    if (!ui.narrow()) {
        ImGui::TableSetupColumn("printed", ImGuiTableColumnFlags_WidthStretch, 2);
        ImGui::TableSetupColumn("locator", ImGuiTableColumnFlags_WidthStretch, 1.8F);
        ImGui::TableSetupColumn("marks", ImGuiTableColumnFlags_WidthStretch, 0.8F);
    }
    int number = 0;
    for (const Taken& t : taken) draw_taken(ui, t, number++);
    ImGui::EndTable();
}

} // namespace pourbook
