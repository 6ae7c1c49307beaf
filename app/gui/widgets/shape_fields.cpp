#include "gui/widgets/shape_fields.hpp"

#include "charts/part_sketch.hpp"
#include "gui/state/shape_words.hpp"
#include "gui/widgets/quantity_field.hpp"
#include "gui/widgets/scene_painter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/drop/setup_parts.hpp"
#include "questions/pour/part_words.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double size_label = 70, size_field = 92, least_sketch = 36;
using SizeFault = std::function<std::string(const std::string&)>;

/// True where another form was chosen; the sizes whose names it shares stay.
bool draw_forms(Ui& ui, const std::string& id, const std::vector<ShapeForm>& forms, ShapeParts& parts, float width) {
    if (forms.size() < 2) return false;
    const ShapeForm& now = forms[parts.form];
    std::size_t chosen = parts.form;
    if (begin_combo(id + ".form", now.file ? "a drawing (STL)" : now.name, width)) {
        for (std::size_t i = 0; i < forms.size(); ++i) {
            if (ImGui::Selectable(forms[i].file ? "a drawing (STL)" : forms[i].name.c_str(), i == parts.form))
                chosen = i;
            ui.probe.item(id + ".form." + forms[i].name, forms[i].name);
        }
        end_combo();
    }
    ui.probe.item(id + ".form", now.name);
    if (chosen == parts.form) return false;
    std::vector<std::string> sizes = forms[chosen].usual;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const auto same = std::find(now.sizes.begin(), now.sizes.end(), forms[chosen].sizes[i]);
        const auto at = static_cast<std::size_t>(same - now.sizes.begin());
        if (same != now.sizes.end() && !parts.sizes[at].empty()) sizes[i] = parts.sizes[at];
    }
    parts = {chosen, sizes};
    return true;
}

bool draw_size(Ui& ui, const std::string& id, const ShapeForm& form, std::size_t i, std::string& size, float width) {
    const std::string name = form.sizes[i], field = id + "." + name;
    if (form.file)
        return text_field(ui, field, size, "name of a file", width, [](const std::string&) { return std::string(); });
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    dim_text(ui, name);
    ImGui::SameLine(0, 0);
    ImGui::SetCursorPosX(left + ui.px(size_label)); // inside a group SameLine counts from the group
    const float field_width = std::min(ui.px(size_field), width - ui.px(size_label));
    const bool kept =
        quantity_field(ui, field, size, {"mm", form.usual[i], field_width}, [&](const std::string& typed) {
            const std::string why = typed.empty() ? "a length is expected" : length_fault(typed);
            return why.empty() ? why : name + ": " + why;
        });
    fault_line(ui, field);
    return kept;
}

void draw_sketch(Ui& ui, const ShapeForm& form, const std::string& words, bool poles, ImVec2 low, ImVec2 size) {
    if (words.empty()) return;
    const std::string sizes = words.substr(form.name.empty() ? 0 : form.name.size() + 1);
    const Result<PartWords> part = part_from(form.drawn + ":" + sizes);
    if (!part || !part->shape || size.x < ui.px(least_sketch)) return;
    const FontMeasure measure(ui);
    const Canvas canvas{static_cast<double>(size.x / ui.scale), static_cast<double>(size.y / ui.scale), ui.colours(),
                        measure};
    paint(ui, part_sketch(*part->shape, poles, canvas), *ImGui::GetWindowDrawList(), low);
}

} // namespace

bool shape_fields(Ui& ui, const std::string& id, const std::string& field, std::string& words, float width,
                  const SizeFault& fault) {
    const std::vector<ShapeForm>& forms = shape_forms(field);
    std::optional<ShapeParts> parts = shape_parts(forms, words);
    if (!parts) return text_field(ui, id, words, forms.front().drawn.c_str(), width, fault);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImGui::BeginGroup();
    bool changed = draw_forms(ui, id, forms, *parts, width);
    const float top = ImGui::GetCursorScreenPos().y;
    const ShapeForm& form = forms[parts->form];
    for (std::size_t i = 0; i < form.sizes.size(); ++i) changed |= draw_size(ui, id, form, i, parts->sizes[i], width);
    ImGui::EndGroup();
    const std::string now = shape_words(form, parts->sizes);
    const float beside = ui.px(size_label + size_field + 10);
    if (!form.file)
        draw_sketch(ui, form, now, field == "magnet", {low.x + beside, top},
                    {std::min(width - beside, ui.px(2 * size_field)), ImGui::GetItemRectMax().y - top});
    ui.probe.say(id, words);
    const std::string whole = words.empty() && !changed ? "" : fault(now);
    if (!whole.empty()) {
        ui.faulty_frame = ImGui::GetFrameCount();
        fault_line(ui, id, whole);
    }
    if (!changed || now == words) return false;
    words = now;
    return true;
}

} // namespace pourbook
