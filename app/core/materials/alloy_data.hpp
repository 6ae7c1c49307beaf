// Published data behind estimates from composition: binary diagrams, resistivity and volume effects of solutes,
// full-range tables, atomic masses, and the temperature at which a heat treatment leaves the solubility. Plain data;
// compositions of diagrams and tables are in per cent by mass of the second element.
#pragma once

#include "core/materials/record.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct AtomicMass {
    std::string element;
    double g_per_mol = 0;
    Citation citation;
};

/// The two ends of the tie line at a temperature, left_wt <= right_wt.
struct DiagramRow {
    double temperature_K = 0;
    double left_wt = 0;
    double right_wt = 0;
};

/// A field of two phases, from its lowest to its highest temperature. One of the phases may be "liquid".
struct DiagramField {
    std::string left, right;
    std::vector<DiagramRow> rows; // rising in temperature
    Citation citation;
    std::string note;

    double lowest_K() const { return rows.front().temperature_K; }
    double highest_K() const { return rows.back().temperature_K; }
};

struct PhaseContent {
    std::string phase;
    double wt = 0;
};

/// A published point of the diagram (eutectic, peritectic, tie line), kept beside the lines as a check.
struct Invariant {
    std::string kind;
    double temperature_K = 0;
    std::vector<PhaseContent> phases;
    Citation citation;
};

struct Diagram {
    std::string a, b;
    std::string solid; // name of the one solid solution where no field is drawn; empty: none
    std::string note;
    std::vector<DiagramField> fields;
    std::vector<Invariant> invariants;
};

/// What one per cent of a solute adds to the resistivity of its host at room temperature.
struct SoluteEffect {
    std::string host, solute;
    bool dissolved = true; // else out of solution, as a second phase
    bool per_atom = true;  // per atomic per cent, else per weight per cent
    double ohm_m_per_percent = 0;
    Use use = Use::alternate;
    Citation citation;
};

/// Change of atomic volume when a solute atom replaces one of the host, per cent of the host's atomic volume.
struct VolumeEffect {
    std::string host, solute;
    double percent = 0;
    Citation citation;
};

struct TablePoint {
    double wt = 0; // of b
    double ohm_m = 0;
};

/// Resistivity of a binary system against composition at room temperature.
struct ResistivityTable {
    std::string a, b;
    std::vector<TablePoint> points; // rising in wt
    Citation citation;
    std::string note;
};

/// Where a treatment leaves the solubility: at a temperature, or a share of the way from annealed (0) to quenched (1).
struct FrozenState {
    std::string host, treatment;
    double temperature_K = no_number;
    double share = no_number;
    Citation citation;
};

struct AlloyData {
    std::vector<AtomicMass> masses;
    std::vector<Diagram> diagrams;
    std::vector<SoluteEffect> effects;
    std::vector<VolumeEffect> volumes;
    std::vector<ResistivityTable> tables;
    std::vector<FrozenState> frozen;

    const AtomicMass* mass(const std::string& element) const;
    const Diagram* diagram(const std::string& one, const std::string& other) const;
    /// The preferred figure, else the first.
    const SoluteEffect* effect(const std::string& host, const std::string& solute, bool dissolved) const;
    const VolumeEffect* volume(const std::string& host, const std::string& solute) const;
    const ResistivityTable* table(const std::string& host, const std::string& solute) const;
    const FrozenState* frozen_state(const std::string& host, const std::string& treatment) const;
};

} // namespace pourbook
