#include "gui/state/shape_words.hpp"

#include "gui/state/typed_quantity.hpp"

#include "questions/pour/part_words.hpp"

#include <algorithm>

namespace pourbook {
namespace {

/// "22:38:300mm": one unit at the end serves them all.
void share_unit(std::vector<std::string>& sizes) {
    const std::string unit = split_quantity(sizes.back()).unit;
    for (std::string& size : sizes)
        if (!size.empty() && split_quantity(size).unit.empty()) size += unit;
}

} // namespace

const std::vector<ShapeForm>& shape_forms(const std::string& field) {
    using Names = std::vector<std::string>;
    const Names hollow = {"bore", "outside", "length"}, solid = {"diameter", "length"}, round = {"diameter"};
    static const std::vector<ShapeForm> none;
    static const std::vector<ShapeForm> magnets = {
        {"cylinder", 'x', "bar", solid, {"15mm", "15mm"}},
        {"sphere", 'x', "sphere", round, {"15mm"}},
        {"ring", 'x', "ring", {"diameter", "hole", "length"}, {"15mm", "5mm", "15mm"}},
        {"cube", 'x', "", {"side"}, {"12mm"}}};
    static const std::vector<ShapeForm> tubes = {{"", ':', "tube", hollow, {"18mm", "24mm", "400mm"}}};
    static const std::vector<ShapeForm> parts = {
        {"tube", ':', "tube", hollow, {"18mm", "24mm", "400mm"}},
        {"bar", 'x', "bar", solid, {"20mm", "200mm"}},
        {"plate", 'x', "plate", {"length", "width", "thickness"}, {"100mm", "60mm", "6mm"}},
        {"cone", ':', "cone", {"diameter", "other end", "length"}, {"40mm", "20mm", "80mm"}},
        {"sphere", 'x', "sphere", round, {"40mm"}},
        {"ring", ':', "ring", {"outside", "bore", "length"}, {"40mm", "20mm", "15mm"}},
        {"stl", ':', "", {"file"}, {""}, true}};
    if (field == "magnet") return magnets;
    if (field == "tube") return tubes;
    return field == "part" ? parts : none;
}

std::optional<ShapeParts> shape_parts(const std::vector<ShapeForm>& forms, const std::string& words) {
    if (words.empty()) return ShapeParts{0, std::vector<std::string>(forms.front().sizes.size())};
    const std::size_t colon = words.find(':');
    if (colon == std::string::npos) return std::nullopt;
    for (std::size_t i = 0; i < forms.size(); ++i) {
        const ShapeForm& form = forms[i];
        if (!form.name.empty() && form.name != words.substr(0, colon)) continue;
        const std::string sizes = form.name.empty() ? words : words.substr(colon + 1);
        if (form.file) return ShapeParts{i, {sizes}};
        ShapeParts out{i, split_sizes(sizes)};
        if (out.sizes.size() != form.sizes.size()) return std::nullopt;
        share_unit(out.sizes);
        return out;
    }
    return std::nullopt;
}

std::string shape_words(const ShapeForm& form, const std::vector<std::string>& sizes) {
    const auto empty = [](const std::string& size) { return size.empty(); };
    if (std::all_of(sizes.begin(), sizes.end(), empty)) return {};
    std::string out = form.name.empty() ? "" : form.name + ":";
    for (std::size_t i = 0; i < sizes.size(); ++i) out += (i ? std::string(1, form.between) : "") + sizes[i];
    return out;
}

} // namespace pourbook
