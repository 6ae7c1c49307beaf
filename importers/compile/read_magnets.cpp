#include "importers/compile/read_magnets.hpp"

#include "importers/compile/fields.hpp"
#include "importers/compile/figure.hpp"
#include "importers/compile/read_record.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

struct MagnetQuantity {
    const char* quantity;
    const char* unit; // of the same dimension as every unit allowed
};
constexpr std::array magnet_quantities = {MagnetQuantity{"remanence", "T"},
                                          MagnetQuantity{"density", "kg/m3"},
                                          MagnetQuantity{"temperature_coefficient", "1/K"},
                                          MagnetQuantity{"recoil_permeability", "1"},
                                          MagnetQuantity{"highest_temperature", "K"},
                                          MagnetQuantity{"lowest_temperature", "K"},
                                          MagnetQuantity{"superconducting_below", "K"}};

Unit unit_named(const std::string& text) {
    if (text == "1") return {};
    const Result<Unit> unit = parse_unit(text);
    return unit ? *unit : Unit{{}, 0, 0};
}

void read_number(MagnetFigure& m, Fields& f) {
    const auto kind = std::find_if(magnet_quantities.begin(), magnet_quantities.end(),
                                   [&](const MagnetQuantity& k) { return m.quantity == k.quantity; });
    if (kind == magnet_quantities.end())
        f.fail("quantity", "'" + m.quantity + "' is not one of the quantities of db/README.md");
    m.unit = f.text("unit");
    const Unit unit = unit_named(m.unit);
    if (unit.scale == 0 || !(unit.dimension == unit_named(kind->unit).dimension))
        f.fail("unit", "'" + m.unit + "' is no unit of " + m.quantity);
    m.printed = f.text("value");
    const Result<Point> figure = read_figure(m.printed, unit);
    if (!figure) f.fail("value", figure.problem().text);
    if (figure->is_bound()) f.fail("value", "a figure or a range is expected");
    m.value_si = figure->value_si;
    m.low_si = figure->low_si;
    m.high_si = figure->high_si;
}

MagnetFigure read_one(Fields& f, const Catalogue& catalogue) {
    MagnetFigure m;
    m.subject = f.text("subject");
    m.material = f.text_or("material", "");
    m.quantity = f.text("quantity");
    m.note = f.text_or("note", "");
    if (m.quantity == "caution")
        m.text = f.text("text");
    else
        read_number(m, f);
    m.citation = read_citation(f, catalogue);
    f.finish();
    return m;
}

} // namespace

void read_magnets(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields top(path, "", root);
    const JsonNode* list = top.node("figures");
    if (!list || list->kind != JsonNode::Kind::list) top.fail("figures", "a list is expected");
    top.finish();
    for (std::size_t i = 0; i < list->items.size(); ++i) {
        try {
            Fields f(path, "figures/" + std::to_string(i), list->items[i]);
            catalogue.magnet_figures.push_back(read_one(f, catalogue));
        } catch (const InputError& e) {
            faults.push_back(e.what());
        }
    }
}

} // namespace pourbook
