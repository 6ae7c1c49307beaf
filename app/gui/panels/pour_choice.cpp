// What is asked of Pour: metal, part, process, and what else a founder states.
#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr double pour_label_width = 118;

void draw_metal(Ui& ui) {
    PourWords& made = ui.view().pour;
    const Metal* metal = ui.session.catalogue.metal(made.metal);
    field_label(ui, "metal", "one of the pinned metals, or the one selected in Metals", pour_label_width);
    if (begin_combo("pour.metal", metal ? metal->name : "choose", ImGui::GetContentRegionAvail().x)) {
        std::vector<std::string> offered = ui.view().pins;
        if (!is_pinned(ui.view(), ui.view().selected)) offered.push_back(ui.view().selected);
        for (const std::string& slug : offered) {
            const Metal* m = ui.session.catalogue.metal(slug);
            if (m && ImGui::Selectable(m->name.c_str(), slug == made.metal)) made.metal = slug;
            ui.probe.item("pour.metal." + slug, slug);
        }
        ImGui::EndCombo();
    }
    ui.probe.item("pour.metal", made.metal);
}

std::string part_fault(const std::string& words) {
    const Result<PartWords> part = part_from(words);
    return part ? "" : part.problem().text;
}

void draw_parts(Ui& ui) {
    std::vector<std::string>& parts = ui.view().pour.parts;
    constexpr const char* help = "tube:BORE:OUTSIDE:LENGTH, bar:DxL, plate:LxWxT, cone:D1:D2:L, sphere:D, "
                                 "ring:OUTSIDE:BORE:L, stl:FILE; sizes with their unit, as 12mm or 1in";
    std::size_t removed = parts.size();
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string id = "pour.part." + std::to_string(i);
        field_label(ui, i ? "and" : "part", help, pour_label_width);
        const float cross = parts.size() > 1 ? ui.px(30) : 0;
        text_field(ui, id, parts[i], "tube:18mm:24mm:400mm", ImGui::GetContentRegionAvail().x - cross, part_fault);
        if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, std::string("Part\n") + help);
        if (parts.size() > 1) {
            ImGui::SameLine(0, ui.px(4));
            if (ImGui::Button(("×##" + id).c_str())) removed = i;
            ui.probe.item(id + ".remove", "");
        }
        fault_line(ui, id);
    }
    if (removed < parts.size()) {
        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(removed));
        ui.drafts.clear(); // the fields below move up
    }
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + ui.px(pour_label_width));
    if (ImGui::Button("add a piece")) parts.emplace_back("bar:20mmx50mm");
    ui.probe.item("pour.part.add", "");
}

void draw_process(Ui& ui) {
    std::string& process = ui.view().pour.process;
    field_label(ui, "mould", "ceramic shell, sand, plaster investment, or a permanent metal mould", pour_label_width);
    if (begin_combo("pour.process", process, ImGui::GetContentRegionAvail().x)) {
        for (const char* word : {"shell", "sand", "plaster", "permanent"}) {
            if (ImGui::Selectable(word, process == word)) process = word;
            ui.probe.item(std::string("pour.process.") + word, word);
        }
        ImGui::EndCombo();
    }
    ui.probe.item("pour.process", process);
}

struct AskedOfPour {
    const char* name; // in faults and on the command line
    std::string PourWords::*word;
    const char* label;
    const char* hint;
    const char* help;
};

constexpr std::array casting_fields = {
    AskedOfPour{"stock", &PourWords::stock, "machining stock", "none",
                "metal to be machined off each face, such as 1mm"},
    AskedOfPour{"clear", &PourWords::clear, "must clear", "nothing",
                "what has to pass the finished bore, such as the magnet's 15mm"},
    AskedOfPour{"superheat", &PourWords::superheat, "superheat", "as printed",
                "above the liquidus, such as 80K; without it, printed practice"},
    AskedOfPour{"mould-temperature", &PourWords::mould_temperature, "mould at", "as printed",
                "temperature of the mould at the pour, such as 750degC"},
    AskedOfPour{"shell-wall", &PourWords::shell_wall, "shell wall", "as printed",
                "thickness of a ceramic shell, such as 9mm"},
    AskedOfPour{"sprue", &PourWords::sprue, "sprue", "not given",
                "HEIGHT:FOOT, such as 200mm:12mm, for the time of filling"},
    AskedOfPour{"gating", &PourWords::gating, "sprue and cup", "as printed",
                "metal in sprue, runner and cup, such as 150g"},
    AskedOfPour{"melt-loss", &PourWords::melt_loss, "melt loss", "as printed",
                "share of the charge lost in melting, such as 2%"},
    AskedOfPour{"heel", &PourWords::heel, "heel", "none", "metal that stays in the crucible, such as 50g"},
};
constexpr std::array shop_fields = {
    AskedOfPour{"power", &PourWords::power, "furnace power", "not given", "of an electric furnace, such as 2kW"},
    AskedOfPour{"efficiency", &PourWords::efficiency, "efficiency", "as printed",
                "share of the furnace's heat that ends in the charge, such as 30%"},
    AskedOfPour{"furnace-max", &PourWords::furnace_max, "furnace up to", "no limit",
                "the highest temperature your furnace reaches"},
    AskedOfPour{"crucible", &PourWords::crucible_material, "crucible", "not said",
                "graphite, clay-graphite, silicon carbide, alumina, fused silica …"},
    AskedOfPour{"crucible-volume", &PourWords::crucible_volume, "crucible holds", "not said",
                "melt it holds, such as 500cm3"},
    AskedOfPour{"mould", &PourWords::mould_material, "mould material", "not said", "fused silica, gypsum investment …"},
    AskedOfPour{"mould-max", &PourWords::mould_max, "mould up to", "no limit",
                "the highest temperature your mould stands"},
    AskedOfPour{"lift-max", &PourWords::lift_max, "one person lifts", "no limit", "crucible and metal, such as 8kg"},
};

void draw_field(Ui& ui, const AskedOfPour& field) {
    const std::string id = std::string("pour.") + field.name;
    field_label(ui, field.label, field.help, pour_label_width);
    text_field(ui, id, ui.view().pour.*field.word, field.hint, ImGui::GetContentRegionAvail().x,
               [&](const std::string& t) { return pour_word_fault(field.name, t); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, std::string(field.label) + "\n" + field.help);
    fault_line(ui, id);
}

} // namespace

void draw_pour_choice(Ui& ui) {
    PourWords& made = ui.view().pour;
    draw_metal(ui);
    draw_parts(ui);
    draw_process(ui);
    ImGui::Spacing();
    for (const AskedOfPour& field : casting_fields) draw_field(ui, field);
    bool feeder = !made.no_feeder;
    ImGui::Checkbox("with a feeder", &feeder);
    made.no_feeder = !feeder;
    ui.probe.item("pour.feeder", feeder ? "on" : "off");
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Your workshop");
    }
    for (const AskedOfPour& field : shop_fields) draw_field(ui, field);
    ImGui::Checkbox("lead or magnesium: I am equipped", &made.acknowledge_hazard);
    ui.probe.item("pour.acknowledge", made.acknowledge_hazard ? "on" : "off");
}

} // namespace pourbook
