#include "questions/drop/setup_parts.hpp"

#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

namespace pourbook {
namespace {

std::vector<std::string> split(const std::string& text, char sign) {
    std::vector<std::string> out;
    std::size_t from = 0;
    for (std::size_t at; (at = text.find(sign, from)) != std::string::npos; from = at + 1)
        out.push_back(text.substr(from, at - from));
    out.push_back(text.substr(from));
    return out;
}

std::string piece(const std::vector<std::string>& pieces, std::size_t i) {
    return i < pieces.size() ? pieces[i] : std::string();
}

std::string quantity_fault(const std::string& text, const Dimension& dimension, const char* example) {
    if (is_bare(text)) return std::string("give it a unit: ") + example;
    const Result<eddy::Uncertain> value = uncertain_from(text, dimension, "it");
    if (!value) return value.problem().text;
    return value->value > 0 ? "" : "above zero is expected";
}

} // namespace

MagnetParts parts_of_magnet(const std::string& words) {
    MagnetParts out;
    const std::size_t colon = words.find(':');
    if (colon == std::string::npos) return out;
    out.shape = words.substr(0, colon);
    const auto pieces = split(words.substr(colon + 1), 'x');
    out.diameter = piece(pieces, 0);
    if (out.shape == "ring") out.hole = piece(pieces, 1);
    if (out.shape != "sphere") out.length = pieces.back();
    return out;
}

std::string magnet_words(const MagnetParts& p) {
    std::string out = p.shape + ":" + p.diameter;
    if (p.shape == "ring") out += "x" + p.hole;
    return p.shape == "sphere" ? out : out + "x" + p.length;
}

TubeParts parts_of_tube(const std::string& words) {
    const auto pieces = split(words, ':');
    return {piece(pieces, 0), piece(pieces, 1), piece(pieces, 2)};
}

std::string tube_words(const TubeParts& p) {
    return p.bore + ":" + p.outside + ":" + p.length;
}

std::string length_fault(const std::string& text) {
    if (text.find_first_of(":x") != std::string::npos) return "one length is expected, such as 15mm";
    return quantity_fault(text, base_dimension(Dimension::metre), "15mm or 0.6in");
}

std::string mass_fault(const std::string& text) {
    return text.empty() ? "" : quantity_fault(text, base_dimension(Dimension::kilogram), "8.5g or 0.3oz");
}

std::string kelvin_fault(const std::string& text) {
    if (text.empty()) return "";
    const Result<double> t = parse_si(text, base_dimension(Dimension::kelvin), "temperature");
    if (!t) return t.problem().text + (is_bare(text) ? "" : " (write 20C, 77K or 68F)");
    return *t > 0 ? "" : "above absolute zero is expected";
}

} // namespace pourbook
