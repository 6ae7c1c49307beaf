#include "questions/pour/pour_request.hpp"

#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "questions/pour/part_words.hpp"

namespace pourbook {
namespace {

Result<casting::Piece> piece_from(const std::string& words, const MeshReader& read_mesh, PourRequest& request) {
    const Result<PartWords> part = part_from(words);
    if (!part) return part.problem();
    if (part->shape) return casting::Piece{words, part->shape, *casting::measured(*part->shape)};
    if (!read_mesh) return unreadable("--part '" + words + "': this program was built without a reader of meshes");
    const Result<casting::Mesh> mesh = read_mesh(part->file);
    if (!mesh) return mesh.problem();
    const Result<casting::Solid> solid = casting::measured(*mesh, request.stl_unit_m.value_or(1e-3));
    if (!solid) return solid.problem();
    if (!request.stl_unit_m)
        request.part_remarks.push_back("An STL file carries no unit: " + part->file +
                                       " was read in millimetres; if that is wrong, say --stl-unit in (or cm, m).");
    return casting::Piece{words, std::nullopt, *solid};
}

Fault read_switch(bool& to, const std::string& text) {
    if (text != "on" && text != "off") return unreadable("on or off is expected");
    to = text == "on";
    return {};
}

Result<double> length_m(const std::string& text) {
    Result<double> length = parse_si(text, base_dimension(Dimension::metre), "a length");
    if (!length) return unreadable(length.problem().text + ": write 200mm:12mm");
    return length;
}

} // namespace

Fault read_part(PourRequest& request, const std::string& text, const Catalogue&) {
    const Result<PartWords> part = part_from(text);
    if (!part) return part.problem();
    request.parts.push_back(text);
    return {};
}

Fault read_sprue(PourRequest& request, const std::string& text, const Catalogue&) {
    const std::size_t colon = text.find(':');
    std::vector<std::string> written = {text.substr(0, colon)};
    if (colon != std::string::npos) written.push_back(text.substr(colon + 1));
    const auto sizes =
        bare_numbers_are_si() ? Result<std::vector<std::string>>(written) : with_shared_unit(written, ":");
    if (!sizes) return sizes.problem();
    const Result<double> height = length_m(sizes->front());
    if (!height) return height.problem();
    request.sprue_height_m = *height;
    if (sizes->size() == 1) return {};
    const Result<double> foot = length_m(sizes->back());
    if (!foot) return foot.problem();
    request.sprue_foot_m = *foot;
    return {};
}

Fault read_own_trials_of_pour(PourRequest& request, const std::string& text, const Catalogue&) {
    return read_switch(request.own_trials, text);
}

Fault read_own_stock(PourRequest& request, const std::string& text, const Catalogue&) {
    return read_switch(request.own_stock, text);
}

Fault read_stl_unit(PourRequest& request, const std::string& text, const Catalogue&) {
    const Result<Unit> unit = parse_unit(text);
    if (!unit || !(unit->dimension == base_dimension(Dimension::metre)))
        return unreadable("mm, cm, m or in is expected");
    request.stl_unit_m = unit->scale;
    return {};
}

Result<PourRequest> pour_request_from(const Stated& stated, const MeshReader& read_mesh, const Catalogue& catalogue) {
    Result<PourRequest> request = pour_question().read(stated, catalogue);
    if (!request) return request;
    for (const std::string& part : request->parts) {
        Result<casting::Piece> piece = piece_from(part, read_mesh, *request);
        if (!piece) return piece.problem();
        request->pieces.push_back(std::move(*piece));
    }
    return request;
}

} // namespace pourbook
