#include "questions/drop/wall_words.hpp"

#include "core/eddy/thin_wall.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

using eddy::Bore;
using eddy::Uncertain;
using eddy::WallPart;

constexpr double least_wall = 0.05; // of a part's wall, where its limits leave none

/// "13mm:14mm" between colons; one unit at the end serves all.
Result<std::vector<Uncertain>> wall_sizes(const std::string& text, const std::string& option) {
    std::vector<std::string> written;
    for (std::size_t from = 0; from != std::string::npos;) {
        const std::size_t colon = text.find(':', from);
        written.push_back(text.substr(from, colon - from));
        from = colon == std::string::npos ? colon : colon + 1;
    }
    const auto pieces =
        bare_numbers_are_si() ? Result<std::vector<std::string>>(written) : with_shared_unit(written, ":");
    if (!pieces) return unreadable(option + " '" + text + "': " + pieces.problem().text);
    std::vector<Uncertain> out;
    for (const std::string& piece : *pieces) {
        Result<Uncertain> size = uncertain_from(piece, base_dimension(Dimension::metre), option);
        if (!size) return size.problem();
        if (!(size->value > 0)) return unreadable(option + " '" + text + "': lengths above zero are expected");
        if (size->spread == 0) size->spread = caliper_m;
        out.push_back(*size);
    }
    return out;
}

/// A resistivity where it can be read as one, else a metal; nothing: the tube's own.
Result<TubeMetal> metal_of_part(const std::string& text, const std::string& what, const TubeMetal& tube,
                                const Catalogue& catalogue, const Conditions& conditions) {
    if (text.empty()) return tube;
    const bool stated = bool(uncertain_from(text, parse_unit("ohm.m")->dimension, "it"));
    Result<TubeMetal> out = tube_metal(catalogue, stated ? "" : text, stated ? text : "", conditions);
    if (!out) return Problem{out.problem().kind, "--" + what + "-metal: " + out.problem().text, 0};
    if (stated) out->causes.front().key = what + ".resistivity";
    return out;
}

class WallReader {
public:
    WallReader(DropSetup setup, const WallWords& words, const TubeMetal& tube, const Catalogue& catalogue,
               const Conditions& conditions, std::vector<WallPiece>& pieces)
        : setup_(std::move(setup)), words_(words), tube_(tube), catalogue_(catalogue), conditions_(conditions),
          pieces_(pieces), i_(setup_.inputs), length_(i_.tube_length_m.value) {}

    Result<DropSetup> run() {
        if (const Fault lonely = metal_alone()) return *lonely;
        if (const Fault fault = read_slits()) return *fault;
        const bool several =
            !(words_.liner.empty() && words_.sleeve.empty() && words_.below.empty() && words_.lower_end.empty());
        if (!several) return std::move(setup_);
        if (const Fault fault = read_own()) return *fault;
        if (const Fault fault = read_coat("liner", words_.liner, words_.liner_metal)) return *fault;
        if (const Fault fault = read_coat("sleeve", words_.sleeve, words_.sleeve_metal)) return *fault;
        if (const Fault fault = read_below()) return *fault;
        return std::move(setup_);
    }

private:
    using Fault = std::optional<Problem>;

    Fault metal_alone() const {
        const auto alone = [](const std::string& metal, const std::string& part, const char* option) -> Fault {
            if (metal.empty() || !part.empty()) return {};
            return unreadable(std::string("--") + option + "-metal needs the sizes: --" + option);
        };
        if (const Fault f = alone(words_.liner_metal, words_.liner, "liner")) return f;
        if (const Fault f = alone(words_.sleeve_metal, words_.sleeve, "sleeve")) return f;
        return alone(words_.below_metal, words_.below, "below");
    }

    /// The tube itself, even or tapered.
    Fault read_own() {
        if (words_.lower_end.empty()) {
            i_.wall = {{i_.bore(), 0, length_}};
            return {};
        }
        const auto sizes = wall_sizes(words_.lower_end, "--lower-end");
        if (!sizes) return sizes.problem();
        if (sizes->size() != 2)
            return unreadable("--lower-end '" + words_.lower_end + "': ID:OD of the lower end, such as 12mm:15mm");
        lower_ = {(*sizes)[0].value / 2, (*sizes)[1].value / 2};
        const Result<Bore> fits = eddy::checked(*lower_, i_.magnet());
        if (!fits) return Problem{fits.problem().kind, "--lower-end: " + fits.problem().text, 0};
        i_.wall = eddy::tapered(i_.magnet(), i_.bore(), *lower_, length_);
        return {};
    }

    /// A liner or a sleeve: ID:OD, or its wall alone where it fits closely.
    Fault read_coat(const std::string& what, const std::string& text, const std::string& metal) {
        if (text.empty()) return {};
        const auto sizes = wall_sizes(text, "--" + what);
        if (!sizes) return sizes.problem();
        if (sizes->size() > 2)
            return unreadable("--" + what + " '" + text + "': ID:OD or the thickness of its wall, such as 0.5mm");
        const Bore own = i_.bore();
        const bool inside = what == "liner";
        Bore bore;
        Uncertain wall = sizes->front();
        if (sizes->size() == 1) {
            bore = inside ? Bore{own.inner_radius_m - wall.value, own.inner_radius_m}
                          : Bore{own.outer_radius_m, own.outer_radius_m + wall.value};
        } else {
            bore = {(*sizes)[0].value / 2, (*sizes)[1].value / 2};
            wall = {bore.outer_radius_m - bore.inner_radius_m, std::hypot((*sizes)[0].spread, (*sizes)[1].spread) / 2,
                    true};
        }
        const bool close = sizes->size() == 1; // then it follows the taper
        constexpr double rounding_m = 1e-9;
        const Bore end = lower_.value_or(own);
        if (!close && (inside ? bore.outer_radius_m > std::min(own.inner_radius_m, end.inner_radius_m) + rounding_m
                              : bore.inner_radius_m < std::max(own.outer_radius_m, end.outer_radius_m) - rounding_m))
            return refused("--" + what + " '" + text + "': it does not fit " +
                           (inside ? "into the bore" : "over the tube"));
        return add_piece(what, close ? beside_own(inside, wall.value) : std::vector<WallPart>{{bore, 0, length_}}, wall,
                         metal);
    }

    /// A coat of one thickness, close to the tube's own parts.
    std::vector<WallPart> beside_own(bool inside, double wall_m) const {
        std::vector<WallPart> out;
        for (WallPart p : i_.wall) {
            if (p.piece > 0) continue;
            const auto [inner, outer] = p.bore;
            p.bore = inside ? Bore{inner - wall_m, inner} : Bore{outer, outer + wall_m};
            out.push_back(p);
        }
        return out;
    }

    Fault read_below() {
        if (words_.below.empty()) return {};
        const auto sizes = wall_sizes(words_.below, "--below");
        if (!sizes) return sizes.problem();
        if (sizes->size() != 3)
            return unreadable("--below '" + words_.below + "': ID:OD:LENGTH is expected, such as 13mm:15mm:500mm");
        const Bore bore{(*sizes)[0].value / 2, (*sizes)[1].value / 2};
        const Uncertain wall{bore.outer_radius_m - bore.inner_radius_m,
                             std::hypot((*sizes)[0].spread, (*sizes)[1].spread) / 2, true};
        i_.tube_length_m.value += (*sizes)[2].value;
        i_.tube_length_m.spread += (*sizes)[2].spread;
        return add_piece("below", {{bore, length_, i_.tube_length_m.value}}, wall, words_.below_metal);
    }

    Fault add_piece(const std::string& what, const std::vector<WallPart>& parts, Uncertain wall,
                    const std::string& metal) {
        if (!(wall.value > 0)) return unreadable("--" + what + ": the outside must be larger than the inside");
        Result<TubeMetal> made = metal_of_part(metal, what, tube_, catalogue_, conditions_);
        if (!made) return made.problem();
        const std::size_t piece = pieces_.size() + 1;
        for (WallPart part : parts) {
            part.conductivity = made->conductivity_S_m() / tube_.conductivity_S_m();
            part.piece = piece;
            i_.wall.push_back(part);
        }
        pieces_.push_back(
            {what == "below" ? "tube below" : what, eddy::outlines(parts).front(), wall, std::move(*made)});
        pieces_.back().outline.piece = piece;
        return {};
    }

    // ---- slits

    Result<Uncertain> slit_length(const std::string& text, const char* option) {
        Result<Uncertain> out = uncertain_from(text, base_dimension(Dimension::metre), option);
        if (out && !(out->value > 0))
            return unreadable(std::string(option) + " '" + text + "': a length above zero is expected");
        if (out && out->spread == 0) out->spread = std::min(caliper_m, out->value / 2);
        return out;
    }

    Fault read_slits() {
        if (words_.slit_width.empty() && words_.slit_length.empty() && words_.seam.empty()) return {};
        i_.slits.count = std::max(i_.slits.count, 1);
        Uncertain width{0, 0, true};
        if (!words_.slit_width.empty()) {
            const Result<Uncertain> read = slit_length(words_.slit_width, "--slit-width");
            if (!read) return read.problem();
            width = *read;
            i_.slits.width_m = width.value;
        }
        double seam_doubt = 0; // of ln of its length in the wall's metal
        if (!words_.seam.empty())
            if (const Fault fault = read_seam(seam_doubt)) return fault;
        if (!words_.slit_length.empty()) {
            const Result<Uncertain> read = slit_length(words_.slit_length, "--slit-length");
            if (!read) return read.problem();
            i_.slit_length_m = read->value;
        }
        if (i_.bore_radius_m.value < i_.outside_radius_m.value) doubt_slits(width, seam_doubt);
        return {};
    }

    /// As the length of the wall's metal that resists as much.
    Fault read_seam(double& doubt) {
        const std::string &text = words_.seam, option = "--seam '" + text + "'";
        const std::size_t at = text.find('@');
        Uncertain across;
        if (at == std::string::npos) {
            const Result<Uncertain> filling = uncertain_from(text, parse_unit("ohm.m")->dimension, "--seam");
            if (!filling) return filling.problem();
            if (i_.slits.width_m == 0) return unreadable(option + " needs --slit-width, how wide the joint is");
            across = *filling;
            i_.slits.seam_m = across.value / tube_.resistivity_si * i_.slits.width_m;
        } else {
            const Result<Uncertain> measured =
                uncertain_from(text.substr(0, at), parse_unit("ohm")->dimension, "--seam");
            const Result<Uncertain> over = slit_length(text.substr(at + 1), "--seam");
            if (!measured) return measured.problem();
            if (!over) return over.problem();
            across = *measured;
            const double wall = i_.outside_radius_m.value - i_.bore_radius_m.value;
            i_.slits.seam_m = across.value * over->value * wall / tube_.resistivity_si;
        }
        if (!(across.value > 0)) return unreadable(option + ": above zero is expected");
        if (i_.slits.seam_m < i_.slits.width_m)
            return refused(option + ": it conducts better than the tube's metal, and is no seam");
        constexpr double assumed = 0.1;
        double relative = across.standard() / across.value;
        if (relative == 0) {
            relative = assumed;
            setup_.assumptions.push_back("seam given without a tolerance: 10 % assumed");
        }
        doubt = std::hypot(relative, tube_.log_uncertainty());
        return {};
    }

    /// What width, seam and the slit's end leave open, as a factor on the drag summed over the way.
    void doubt_slits(const Uncertain& width, double seam_doubt) {
        const eddy::Magnet magnet = i_.magnet();
        const double radius = (i_.bore_radius_m.value + i_.outside_radius_m.value) / 2;
        const auto left = [&](double width_m, double seam_factor) {
            eddy::Slits s = i_.slits;
            s.width_m = width_m;
            s.seam_m *= seam_factor;
            return eddy::slit_drag(s, magnet, radius);
        };
        const double here = left(width.value, 1);
        double standard = 0;
        if (width.spread > 0)
            standard = (left(width.value - width.standard(), 1) - left(width.value + width.standard(), 1)) / 2 / here;
        if (seam_doubt > 0)
            standard = std::hypot(standard,
                                  (left(width.value, std::exp(-seam_doubt)) - left(width.value, std::exp(seam_doubt))) /
                                      2 / here);
        if (i_.slit_length_m > 0) {
            const double summed = here * i_.slit_length_m + length_ - i_.slit_length_m;
            const double end = (eddy::slit_end_high - eddy::slit_end_low) / 2 * radius / std::sqrt(3.0);
            standard = std::hypot(standard * here * i_.slit_length_m, (1 - here) * end) / summed;
        }
        i_.path_doubt = {1, standard, false};
    }

    DropSetup setup_;
    const WallWords& words_;
    const TubeMetal& tube_;
    const Catalogue& catalogue_;
    const Conditions& conditions_;
    std::vector<WallPiece>& pieces_;
    eddy::DropInputs& i_;
    double length_;             // of the tube itself
    std::optional<Bore> lower_; // its lower end where it is tapered
};

} // namespace

Result<DropSetup> with_wall(DropSetup setup, const WallWords& words, const TubeMetal& tube, const Catalogue& catalogue,
                            const Conditions& conditions, std::vector<WallPiece>& pieces) {
    return WallReader(std::move(setup), words, tube, catalogue, conditions, pieces).run();
}

std::vector<double> conductivities_together(const TubeMetal& tube, const std::vector<WallPiece>& pieces,
                                            const std::vector<double>& weights, Draws& draws) {
    std::vector<double> out = tube.conductivities(draws);
    for (double& x : out) x *= weights[0];
    for (const WallPiece& p : pieces) {
        const std::vector<double> own = p.metal.conductivities(draws), wall = draws.of("wall." + p.what);
        const double share = weights[p.outline.piece] * tube.conductivity_S_m() / p.metal.conductivity_S_m();
        for (std::size_t i = 0; i < out.size(); ++i)
            out[i] += share * own[i] * std::max(p.wall_m.at(wall[i]) / p.wall_m.value, least_wall);
    }
    return out;
}

} // namespace pourbook
