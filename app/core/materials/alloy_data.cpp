#include "core/materials/alloy_data.hpp"

#include <algorithm>

namespace pourbook {
namespace {

template <class T, class Test> const T* first(const std::vector<T>& all, Test test) {
    const auto it = std::find_if(all.begin(), all.end(), test);
    return it == all.end() ? nullptr : &*it;
}

} // namespace

const AtomicMass* AlloyData::mass(const std::string& element) const {
    return first(masses, [&](const AtomicMass& m) { return m.element == element; });
}

const Diagram* AlloyData::diagram(const std::string& one, const std::string& other) const {
    return first(diagrams,
                 [&](const Diagram& d) { return (d.a == one && d.b == other) || (d.a == other && d.b == one); });
}

const SoluteEffect* AlloyData::effect(const std::string& host, const std::string& solute, bool dissolved) const {
    const auto same = [&](const SoluteEffect& e) {
        return e.host == host && e.solute == solute && e.dissolved == dissolved && e.use != Use::disputed &&
               e.use != Use::superseded;
    };
    const SoluteEffect* preferred =
        first(effects, [&](const SoluteEffect& e) { return same(e) && e.use == Use::preferred; });
    return preferred ? preferred : first(effects, same);
}

const VolumeEffect* AlloyData::volume(const std::string& host, const std::string& solute) const {
    return first(volumes, [&](const VolumeEffect& v) { return v.host == host && v.solute == solute; });
}

const ResistivityTable* AlloyData::table(const std::string& host, const std::string& solute) const {
    const ResistivityTable* same =
        first(tables, [&](const ResistivityTable& t) { return t.a == host && t.b == solute; });
    if (same) return same;
    return first(tables, [&](const ResistivityTable& t) { return t.a == solute && t.b == host; });
}

const FrozenState* AlloyData::frozen_state(const std::string& host, const std::string& treatment) const {
    return first(frozen, [&](const FrozenState& f) { return f.host == host && f.treatment == treatment; });
}

} // namespace pourbook
