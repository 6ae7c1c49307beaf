// Everything the reference knows, as plain data in memory: metals with their records, property dictionary, sources,
// prices, cautions and named goals. Filled once by db/store and read by everything else; nothing here touches a file.
#pragma once

#include "core/materials/alloy_data.hpp"
#include "core/materials/flat_figures.hpp"
#include "core/materials/records.hpp"
#include "core/quantity/dimension.hpp"

#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

namespace pourbook {

struct Portion {
    std::string element; // chemical symbol
    double wt_percent = 0;
    std::string limits; // as a standard prints them; may be empty
};

struct Metal {
    std::string slug;
    std::string name;
    std::string kind; // element | alloy
    std::string family;
    std::vector<std::string> designations;
    std::vector<std::string> aliases;
    std::vector<Portion> composition;
    Citation composition_citation;
    std::string reference_condition;
    std::string reference_temper;
    std::string note;
    bool own = false; // entered by the user, not in the reference
    Records records;  // in file order

    bool is_element() const { return kind == "element"; }
    double content_percent(const std::string& element) const;
};

/// A name that people type and that belongs to no record: a near metal answers best, or none is kept.
struct KnownName {
    std::string name;
    std::string metal; // slug of the nearest one; empty: none is near
    std::string note;  // what the name means, or how the near metal differs
};

/// An entry of the property dictionary (db/properties.json).
struct Property {
    std::string id;
    std::string label;
    std::string symbol;
    std::string meaning;
    Dimension dimension;
    std::string si_unit;
    std::string shown_unit;    // SI side of the screen: uohm.cm, W/(m.K) ...
    std::string workshop_unit; // %IACS, degF, lb/in3 ...
    std::string from;          // empty: recorded; else the id of the property it is derived from
    Phase phase = Phase::any;  // the phase a derived id asks for (density_liquid)
    bool varies_with_temperature = false;
    bool is_text = false;
    double plausible_low_si = no_number;
    double plausible_high_si = no_number;
    double default_uncertainty = no_number; // relative standard uncertainty where the source states none (our estimate)
    double default_uncertainty_si = no_number; // the same, absolute, for melting temperatures
    double point_reach_K = 0;                  // how far from its temperature a single published point is still used
    double condition_spread = 0; // relative standard uncertainty added when only another condition is cited
};

struct Reference {
    std::string key;
    std::string kind;
    std::string reliability; // A B C M
    std::string authors;
    std::string title;
    std::string where;
    std::string year;
    std::string doi;
    std::string address;
    std::string read_in;
    std::string reuse;
    std::string note;

    std::string full() const; // one line, as sources.md prints it
};

/// A hazard or a bar to home casting, by content of an element.
struct Caution {
    std::string element;
    double from_wt_percent = 0;
    std::string text;
    bool excludes_home_casting = false;
    std::string reason;
    Citation citation;
};

struct Price {
    std::string metal; // slug
    double usd_per_kg = no_number;
    double low_usd_per_kg = no_number; // NaN where the source gives no range
    double high_usd_per_kg = no_number;
    std::string printed;
    std::string unit;
    std::string as_of;
    std::string fresh_until; // year and month after which it counts as stale, "2026-12"
    std::string form;
    std::string grade; // not empty: the price is of this grade, less pure than the metal whose figures are cited
    Citation citation;
};

/// A published figure about magnets, or about metals in a magnet's field: remanence of a grade, density of its
/// material, the temperature below which an element superconducts, a caution (text only).
struct MagnetFigure {
    std::string subject;  // N42 | sintered NdFeB | Pb | strong magnets
    std::string material; // of a grade: the subject under which its other figures stand
    std::string quantity; // remanence | density | temperature_coefficient | recoil_permeability | highest_temperature |
                          // lowest_temperature | superconducting_below | caution
    double value_si = no_number;
    double low_si = no_number; // NaN where a single figure is printed
    double high_si = no_number;
    std::string printed, unit, text, note;
    Citation citation;
};

/// What a buyer pays, or a seller gets, over the exchange price of the metal in this form; a factor as a range.
struct PriceForm {
    std::string form;                  // retail | scrap
    std::vector<std::string> families; // empty: every family not named by an earlier entry of the form
    double low = 1;
    double high = 1;
    std::string note;
    Citation citation;
};

struct PriceSet {
    std::string id;
    std::string name;
    std::string as_of;
    std::string form;
    std::string note;
    std::vector<Price> prices;
};

struct Goal {
    std::string id;
    std::string label;
    std::string sentence;
    std::string formula;
    bool best_high = true;
    std::vector<std::string> where; // default conditions
    bool only_home_casting = false;
    bool only_non_ferromagnetic = false;
    bool only_solid = false; // solid at the temperature asked
};

/// A figure or sentence of foundry practice that is no property of one metal (db/casting). Empty words mean "any".
struct Practice {
    std::string quantity; // melt_loss, tolerance, refuse_melting ...: see db/README.md
    std::string metal;    // slug
    std::string family;
    std::string element;
    std::string process;  // shell | sand | plaster | permanent
    std::string material; // of a crucible or mould
    std::string grade;    // tolerance grade, section class, step of a schedule
    double from_wt_percent = 0;
    double over_m = no_number; // size range of a tolerance
    double up_to_m = no_number;
    Point figure; // NaN where the entry is a sentence
    std::string unit;
    std::string text;
    std::string note;
    Citation citation;
};

/// What a trial of the person's own says of a casting of a metal, at 20 degC.
struct OwnCasting {
    std::string metal; // slug
    double conductivity_S_m = no_number;
    double relative = 0;        // standard uncertainty of the measurement
    std::string shared = {};    // what it was measured with: trials with the same share part of their error
    double shared_relative = 0; // that part
};

class Catalogue {
public:
    std::vector<Metal> metals; // sorted by slug
    std::vector<Property> properties;
    std::vector<Reference> references; // sorted by key
    std::vector<Caution> cautions;
    std::vector<PriceSet> price_sets; // newest first
    std::vector<PriceForm> price_forms;
    std::vector<KnownName> known_names; // in file order; a name may stand twice
    std::vector<Goal> goals;
    std::vector<MagnetFigure> magnet_figures; // in file order
    std::vector<Practice> practices;          // in file order
    AlloyData alloys;                         // for estimates from composition
    std::vector<OwnCasting> own_castings;     // from the workshop's trials
    std::string data_version;
    std::string today; // year and month it is asked in, "2026-11", to tell stale prices; empty: not judged

    /// Call once after filling or changing what is looked up: builds the look-up tables. Copies need none.
    void index();
    /// The part of index() that finds metals, properties and references by name.
    void index_names();

    const Metal* metal(const std::string& slug_or_alias) const;
    const Property* property(const std::string& id) const;
    const Reference* reference(const std::string& key) const;
    const Goal* goal(const std::string& id) const;
    const Price* price(const std::string& slug) const;
    /// The factor of a form for a family; null for "exchange" and for a form nobody entered.
    const PriceForm* price_form(const std::string& form, const std::string& family) const;
    /// The pure metal of a chemical symbol ("Cu" -> copper).
    const Metal* element(const std::string& symbol) const;
    std::vector<const Caution*> cautions_for(const Metal& metal) const;
    /// The figure of one of the metals that stands alone, where the metals are very many; else null, and where there
    /// is none. As index() found records, prices and the day.
    const FlatFigure* flat(const Metal& metal, const Property& property) const;
    /// Slugs whose names are nearest to a mistyped word, best first, at most three; none for a word unlike every name.
    /// Figures are part of a grade: LM25 is not like LM24.
    std::vector<std::string> nearest_metals(const std::string& word) const;

private:
    std::unordered_map<std::string, std::size_t> metal_at_, property_at_, reference_at_, element_at_;
    std::unordered_map<std::string, std::pair<std::size_t, std::size_t>> price_at_; // set, price
    std::shared_ptr<const FlatFigures> flat_;                                       // shared by copies
};

/// Lower case, blanks and underscores to hyphens: "Sterling Silver" -> "sterling-silver".
std::string as_slug(const std::string& words);

} // namespace pourbook
