#include "questions/drop/setup_question.hpp"

namespace pourbook {

const QuestionOf<SetupWords>& magnet_question() {
    using namespace input;
    using W = SetupWords;
    static const QuestionOf<W> question = [] {
        QuestionOf<W> q("magnet", "a magnet");
        q.place("Magnet");
        q.add(words("magnet",
                    "sphere:D, cylinder:DxL, ring:ODxIDxL or cube:SIDE; a tolerance as 12+-0.1mm; a stack as "
                    "'2 x cylinder:12mmx10mm opposed gap 5mm'",
                    "cylinder:12mmx10mm"),
              &W::magnet);
        q.add(words("grade", "grade of the magnet", "N42"), &W::grade);
        QuestionField remanence = words("br", "remanence at 20 degC, instead of the grade", "1.30+-0.02T");
        remanence.label = "remanence";
        q.add(remanence, &W::br);
        q.add(words("surface-field", "field on the axis at a distance from the pole face, instead of the grade",
                    "0.45T@1mm"),
              &W::surface_field);
        q.add(words("recoil-permeability", "recoil permeability of the magnet", "1.05", "usually 1.05"),
              &W::recoil_permeability);
        q.add(words("magnet-mass", "mass of the magnet", "8.5g", "by its volume and the cited density"),
              &W::magnet_mass);
        q.add(words("magnet-at", "temperature of the magnet", "60degC", "20 degC"), &W::magnet_at);
        return q;
    }();
    return question;
}

std::vector<std::pair<const char*, const std::string*>> setup_texts(const SetupWords& w) {
    return {{"magnet", &w.magnet},
            {"grade", &w.grade},
            {"br", &w.br},
            {"surface-field", &w.surface_field},
            {"recoil-permeability", &w.recoil_permeability},
            {"magnet-mass", &w.magnet_mass},
            {"magnet-at", &w.magnet_at},
            {"tube", &w.tube},
            {"slits", &w.slits},
            {"off-axis", &w.off_axis},
            {"release", &w.release},
            {"stop", &w.stop}};
}

void state_setup(Stated& stated, const SetupWords& w) {
    for (const auto& [name, text] : setup_texts(w))
        if (stated.question().has(name)) stated.set(name, *text);
}

const QuestionOf<SetupWords>& setup_question() {
    using namespace input;
    using W = SetupWords;
    static const QuestionOf<W> question = [] {
        QuestionOf<W> q = magnet_question();
        q.place("Tube");
        q.add(words("tube", "ID:OD:LENGTH", "13mm:15mm:1m"), &W::tube);
        q.add(words("slits", "narrow slits along the whole tube (thin walls)", "1", "none"), &W::slits);
        q.add(words("off-axis", "distance of the magnet's axis from the tube's", "0.5mm", "on the axis"), &W::off_axis);
        q.add(words("release",
                    "where the magnet is let go: centre (at the mouth), face (its lower face there), or the height of "
                    "its centre above the mouth",
                    "20mm", "centre"),
              &W::release);
        q.add(words("stop",
                    "where the timing ends: centre (leaves), out (wholly out), or the height of the tube's lower end "
                    "above the floor it strikes",
                    "100mm", "centre"),
              &W::stop);
        return q;
    }();
    return question;
}

} // namespace pourbook
