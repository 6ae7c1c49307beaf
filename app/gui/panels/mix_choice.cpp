// What is asked of Mix: stocks or a composition, the treatment, and what else is stated or wanted.
#include "gui/panels/panels.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/quantity_field.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr double mix_label_width = 104, mass_width = 96, paid_width = 110, cross_width = 26;

bool word_field(Ui& ui, const std::string& id, const char* name, std::string& word, const char* hint, float width,
                const std::string& help) {
    const bool committed = text_field(
        ui, id, word, hint, width, [&](const std::string& t) { return mix_word_fault(ui.session.catalogue, name, t); },
        metal_name(ui.session.catalogue, word));
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, help);
    return committed;
}

/// The metal, typed or chosen from the list, in a line of its own: names are long. Then how much of it.
void draw_stock(Ui& ui, MixStockWords& stock, const std::string& id) {
    const float gap = ui.px(4), list = ui.px(40);
    const float metal = ImGui::GetContentRegionAvail().x - list - ui.px(cross_width) - 2 * gap;
    word_field(ui, id + ".metal", "metal", stock.metal, "za-12", metal,
               "Metal\na metal of the reference, a chemical symbol, or a composition in brackets: (Ag 80 Cu 20)");
    ImGui::SameLine(0, gap);
    if (const std::string chosen = metal_field(ui, id + ".metal.list", "", list); !chosen.empty()) stock.metal = chosen;
}

void draw_amount(Ui& ui, MixStockWords& stock, const std::string& id) {
    quantity_field(ui, id + ".mass", stock.mass, {"kg", "", ui.px(mass_width)},
                   [&](const std::string& text) { return mix_word_fault(ui.session.catalogue, "mass", text); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, "Mass\n1.2 kg, 300 g, 1 ozt");
    ImGui::SameLine();
    word_field(ui, id + ".paid", "paid", stock.paid, "paid", ui.px(paid_width),
               "Paid\nwhat all of it cost you, such as " + round_amount(ui.session.catalogue, 800, " ") +
                   "; may be left empty");
    ImGui::Spacing();
}

void draw_stocks(Ui& ui, std::vector<MixStockWords>& stocks) {
    std::size_t removed = stocks.size();
    for (std::size_t i = 0; i < stocks.size(); ++i) {
        const std::string id = "mix.stock." + std::to_string(i);
        draw_stock(ui, stocks[i], id);
        if (stocks.size() > 1) {
            ImGui::SameLine(0, ui.px(4));
            if (ImGui::Button(("×##" + id).c_str(), {ui.px(22), 0})) removed = i;
            ui.probe.item(id + ".remove", "");
        }
        draw_amount(ui, stocks[i], id);
        for (const char* part : {".mass", ".metal", ".paid"}) fault_line(ui, id + part);
    }
    if (removed < stocks.size()) {
        stocks.erase(stocks.begin() + static_cast<std::ptrdiff_t>(removed));
        ui.drafts.clear(); // the fields below move up
    }
    if (ImGui::Button("add a stock")) stocks.push_back({"100 g", "copper", ""});
    ui.probe.item("mix.stock.add", "");
}

void draw_treatment(Ui& ui, std::string& treatment) {
    field_label(ui, "treatment", "what the metal has been through decides how much of each element is dissolved",
                mix_label_width);
    if (begin_combo("mix.treatment", treatment, ImGui::GetContentRegionAvail().x)) {
        for (const char* word : {"as-cast", "annealed", "quenched", "aged"}) {
            if (ImGui::Selectable(word, treatment == word)) treatment = word;
            ui.probe.item(std::string("mix.treatment.") + word, word);
        }
        end_combo();
    }
    ui.probe.item("mix.treatment", treatment);
}

struct AskedOfMix {
    const char* name;
    const char* label;
    const char* hint;
    const char* help;
    std::string MixSheetWords::*word;
    std::string MixSheet::*fault; // found only in the answer
};

constexpr std::array fields = {
    AskedOfMix{"melt-loss", "melt loss", "none", "Melt loss\nshare of the melt that is lost, such as 2 %",
               &MixSheetWords::melt_loss, nullptr},
    AskedOfMix{"target", "bring to", "Sn 10", "Bring to\nan element and its wanted per cent by mass: how much to add",
               &MixSheetWords::target, &MixSheet::target_fault},
    AskedOfMix{"with", "by adding", "the pure element",
               "By adding\nthe metal to add: a metal of the reference, a symbol, or a composition in brackets",
               &MixSheetWords::with, nullptr},
    AskedOfMix{"phases-at", "phases at", "800 degC",
               "Phases at\nwhich phases, and how much of each, at this temperature", &MixSheetWords::phases_at,
               nullptr},
    AskedOfMix{"impurities", "impurities", "P 0.02, Fe 0.01",
               "Impurities\ndissolved in the metal, per cent by mass: they count in every estimate",
               &MixSheetWords::impurities, &MixSheet::impurity_fault},
    AskedOfMix{"measured", "measured", "85 %IACS",
               "Measured\na conductivity or resistivity you measured: which impurity, and how much, would explain it",
               &MixSheetWords::measured, &MixSheet::measured_fault},
};

void draw_pin(Ui& ui) {
    const MixSheet* sheet = ui.session.mix();
    if (!sheet || !sheet->answer) return;
    const bool pinned = is_pinned(ui.view(), sheet->words);
    ImGui::Spacing();
    if (ImGui::Button(pinned ? "Unpin this mix" : "Pin this mix")) toggle_pin(ui.view(), sheet->words);
    ui.probe.item("mix.pin", pinned ? "pinned" : "");
    if (ImGui::IsItemHovered())
        hover_text(ui, sheet->words + "\nas a metal, marked as an estimate, in every view. The same words do on the "
                                      "command line where a metal is asked for.");
}

} // namespace

void draw_mix_choice(Ui& ui) {
    MixSheetWords& made = ui.view().mix.words;
    if (const int c = choice(ui, "mix.kind", {"stocks", "composition"}, made.bare ? 1 : 0); c >= 0) made.bare = c == 1;
    if (made.bare) {
        word_field(ui, "mix.composition", "composition", made.composition, "Ag 92.5 Cu 7.5",
                   ImGui::GetContentRegionAvail().x,
                   "Composition\nper cent by mass: Ag 92.5 Cu 7.5, or Cu 70, Zn balance");
        fault_line(ui, "mix.composition");
    } else {
        draw_stocks(ui, made.stocks);
    }
    ImGui::Spacing();
    draw_treatment(ui, made.treatment);
    const MixSheet* sheet = ui.session.mix();
    for (const AskedOfMix& f : fields) {
        const std::string id = std::string("mix.") + f.name;
        field_label(ui, f.label, f.help, mix_label_width);
        word_field(ui, id, f.name, made.*f.word, f.hint, ImGui::GetContentRegionAvail().x, f.help);
        const std::string& typed = field_fault(ui, id);
        fault_line(ui, id, typed.empty() && sheet && f.fault ? sheet->*f.fault : typed);
    }
    draw_pin(ui);
}

} // namespace pourbook
