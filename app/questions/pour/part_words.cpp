#include "questions/pour/part_words.hpp"

#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace pourbook {
std::vector<std::string> split_sizes(const std::string& text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
        if (c == ':' || c == 'x' || c == 'X')
            out.emplace_back();
        else
            out.back() += c;
    }
    return out;
}

namespace {

using casting::Form;

struct Known {
    const char* name;
    Form form;
    const char* pattern;
};

constexpr std::array forms = {Known{"tube", Form::tube, "tube:BORE:OUTSIDE:LENGTH"},
                              Known{"bar", Form::bar, "bar:DIAMETERxLENGTH"},
                              Known{"plate", Form::plate, "plate:LENGTHxWIDTHxTHICKNESS"},
                              Known{"cone", Form::cone, "cone:D1:D2:LENGTH"},
                              Known{"sphere", Form::sphere, "sphere:DIAMETER"},
                              Known{"ring", Form::ring, "ring:OUTSIDE:BORE:LENGTH"}};

Problem wrong(const std::string& words, const std::string& what) {
    return {Problem::Kind::unreadable, "--part '" + words + "': " + what, 0};
}

Result<casting::Shape> shape_from(const Known& known, const std::string& words, const std::string& sizes) {
    const std::vector<std::string> names = casting::size_names(known.form);
    const std::vector<std::string> written = split_sizes(sizes);
    if (written.size() != names.size())
        return wrong(words, std::string(known.pattern) + " is expected, such as lengths in mm");
    const Result<std::vector<std::string>> parts =
        bare_numbers_are_si() ? written : with_shared_unit(written, sizes.find(':') == std::string::npos ? "x" : ":");
    if (!parts) return wrong(words, parts.problem().text);
    casting::Shape shape;
    shape.form = known.form;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const Result<double> size = parse_si((*parts)[i], base_dimension(Dimension::metre), "a length");
        if (!size) return wrong(words, "the " + names[i] + " '" + (*parts)[i] + "': " + size.problem().text);
        shape.size_m[i] = *size;
    }
    return shape;
}

} // namespace

Result<PartWords> part_from(const std::string& words) {
    const std::size_t colon = words.find(':');
    const std::string kind = words.substr(0, colon);
    const std::string rest = colon == std::string::npos ? "" : words.substr(colon + 1);
    PartWords out;
    if (kind == "stl") {
        if (rest.empty()) return wrong(words, "the name of a file is expected behind stl:");
        out.file = rest;
        return out;
    }
    const auto known = std::find_if(forms.begin(), forms.end(), [&](const Known& k) { return kind == k.name; });
    if (known == forms.end())
        return wrong(words, "tube, bar, plate, cone, sphere, ring or stl is expected, such as tube:12mm:16mm:100mm");
    Result<casting::Shape> shape = shape_from(*known, words, rest);
    if (!shape) return shape.problem();
    if (const auto solid = casting::measured(*shape); !solid) return wrong(words, solid.problem().text);
    out.shape = *shape;
    return out;
}

} // namespace pourbook
