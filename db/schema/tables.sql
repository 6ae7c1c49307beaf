-- The compiled reference. Written once by importers/compile, opened read-only by the program, replaced as a whole by an update.
-- Numbers are SI; the figure as printed stands beside each. NULL means "the source does not say".
CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;

CREATE TABLE property (
  position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, label TEXT NOT NULL, symbol TEXT NOT NULL, meaning TEXT NOT NULL,
  si_unit TEXT NOT NULL, shown_unit TEXT NOT NULL, workshop_unit TEXT NOT NULL, derived_from TEXT NOT NULL, phase TEXT NOT NULL,
  varies_with_temperature INTEGER NOT NULL, is_text INTEGER NOT NULL, plausible_low REAL, plausible_high REAL,
  default_uncertainty REAL, default_uncertainty_si REAL, point_reach_K REAL NOT NULL, condition_spread REAL NOT NULL) STRICT;

CREATE TABLE reference (
  key TEXT PRIMARY KEY, kind TEXT NOT NULL, reliability TEXT NOT NULL, authors TEXT NOT NULL, title TEXT NOT NULL, place TEXT NOT NULL,
  year TEXT NOT NULL, doi TEXT NOT NULL, address TEXT NOT NULL, read_in TEXT NOT NULL, reuse TEXT NOT NULL, note TEXT NOT NULL) STRICT;

CREATE TABLE metal (
  slug TEXT PRIMARY KEY, name TEXT NOT NULL, kind TEXT NOT NULL, family TEXT NOT NULL, reference_condition TEXT NOT NULL,
  reference_temper TEXT NOT NULL, note TEXT NOT NULL,
  composition_source TEXT REFERENCES reference(key), composition_locator TEXT, composition_how_known TEXT) STRICT;

CREATE TABLE other_name (
  metal TEXT NOT NULL REFERENCES metal(slug), position INTEGER NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL,
  PRIMARY KEY (metal, kind, position)) STRICT, WITHOUT ROWID;

-- Names people type that are no metal's own: metal is the slug of the nearest one kept, '' if none is near.
CREATE TABLE known_name (
  position INTEGER PRIMARY KEY, name TEXT NOT NULL, metal TEXT NOT NULL, note TEXT NOT NULL) STRICT;

CREATE TABLE portion (
  metal TEXT NOT NULL REFERENCES metal(slug), position INTEGER NOT NULL, element TEXT NOT NULL, wt_percent REAL NOT NULL, limits TEXT NOT NULL,
  PRIMARY KEY (metal, position)) STRICT, WITHOUT ROWID;

CREATE TABLE record (
  number INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, metal TEXT NOT NULL REFERENCES metal(slug), property TEXT NOT NULL REFERENCES property(id),
  phase TEXT NOT NULL, condition TEXT NOT NULL, temper TEXT NOT NULL, process TEXT NOT NULL, purity TEXT NOT NULL, unit TEXT NOT NULL,
  text TEXT NOT NULL, none TEXT NOT NULL, from_K REAL, valid_low_K REAL, valid_high_K REAL,
  uncertainty_relative REAL, uncertainty_si REAL, uncertainty_printed TEXT NOT NULL, use TEXT NOT NULL, why TEXT NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL CHECK (locator <> ''), how_known TEXT NOT NULL, through TEXT NOT NULL) STRICT;

CREATE TABLE point (
  record INTEGER NOT NULL REFERENCES record(number), position INTEGER NOT NULL, temperature_K REAL, value REAL, low REAL, high REAL,
  half_digit REAL NOT NULL, printed TEXT NOT NULL, PRIMARY KEY (record, position)) STRICT, WITHOUT ROWID;

CREATE TABLE equation (
  record INTEGER PRIMARY KEY REFERENCES record(number), coefficients TEXT NOT NULL, offset_K REAL NOT NULL, low_K REAL NOT NULL, high_K REAL NOT NULL,
  printed TEXT NOT NULL) STRICT;

CREATE TABLE caution (
  position INTEGER PRIMARY KEY, element TEXT NOT NULL, from_wt_percent REAL NOT NULL, text TEXT NOT NULL, excludes INTEGER NOT NULL, reason TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE magnet_figure (
  position INTEGER PRIMARY KEY, subject TEXT NOT NULL, material TEXT NOT NULL, quantity TEXT NOT NULL, value REAL, low REAL, high REAL,
  printed TEXT NOT NULL, unit TEXT NOT NULL, text TEXT NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL CHECK (locator <> ''), how_known TEXT NOT NULL) STRICT;

-- For estimates from composition; wt is per cent by mass of the diagram's or table's second element b.
CREATE TABLE atomic_mass (
  element TEXT PRIMARY KEY, g_per_mol REAL NOT NULL, source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE diagram (position INTEGER PRIMARY KEY, a TEXT NOT NULL, b TEXT NOT NULL, solid TEXT NOT NULL, note TEXT NOT NULL) STRICT;

CREATE TABLE diagram_field (
  diagram INTEGER NOT NULL REFERENCES diagram(position), position INTEGER NOT NULL, left_phase TEXT NOT NULL, right_phase TEXT NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL, PRIMARY KEY (diagram, position)) STRICT, WITHOUT ROWID;

CREATE TABLE diagram_row (
  diagram INTEGER NOT NULL, field INTEGER NOT NULL, position INTEGER NOT NULL, temperature_K REAL NOT NULL, left_wt REAL NOT NULL, right_wt REAL NOT NULL,
  PRIMARY KEY (diagram, field, position)) STRICT, WITHOUT ROWID;

CREATE TABLE diagram_invariant (
  diagram INTEGER NOT NULL REFERENCES diagram(position), position INTEGER NOT NULL, kind TEXT NOT NULL, temperature_K REAL NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL, PRIMARY KEY (diagram, position)) STRICT, WITHOUT ROWID;

CREATE TABLE diagram_phase (
  diagram INTEGER NOT NULL, invariant INTEGER NOT NULL, position INTEGER NOT NULL, phase TEXT NOT NULL, wt REAL NOT NULL,
  PRIMARY KEY (diagram, invariant, position)) STRICT, WITHOUT ROWID;

CREATE TABLE solute_effect (
  position INTEGER PRIMARY KEY, host TEXT NOT NULL, solute TEXT NOT NULL, dissolved INTEGER NOT NULL, per_atom INTEGER NOT NULL, ohm_m_per_percent REAL NOT NULL,
  use TEXT NOT NULL, source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE volume_effect (
  position INTEGER PRIMARY KEY, host TEXT NOT NULL, solute TEXT NOT NULL, percent REAL NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE resistivity_table (
  position INTEGER PRIMARY KEY, a TEXT NOT NULL, b TEXT NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE resistivity_point (
  resistivity_table INTEGER NOT NULL REFERENCES resistivity_table(position), position INTEGER NOT NULL, wt REAL NOT NULL, ohm_m REAL NOT NULL,
  PRIMARY KEY (resistivity_table, position)) STRICT, WITHOUT ROWID;

CREATE TABLE frozen_state (
  position INTEGER PRIMARY KEY, host TEXT NOT NULL, treatment TEXT NOT NULL, temperature_K REAL, share REAL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE price_set (
  position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, name TEXT NOT NULL, as_of TEXT NOT NULL, form TEXT NOT NULL, note TEXT NOT NULL) STRICT;

CREATE TABLE price (
  price_set INTEGER NOT NULL REFERENCES price_set(position), position INTEGER NOT NULL, metal TEXT NOT NULL REFERENCES metal(slug),
  usd_per_kg REAL NOT NULL, low REAL, high REAL, printed TEXT NOT NULL, unit TEXT NOT NULL, as_of TEXT NOT NULL, fresh_until TEXT NOT NULL, form TEXT NOT NULL, grade TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL, PRIMARY KEY (price_set, position)) STRICT, WITHOUT ROWID;

CREATE TABLE price_form (
  position INTEGER PRIMARY KEY, form TEXT NOT NULL, families TEXT NOT NULL, low REAL NOT NULL, high REAL NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL) STRICT;

CREATE TABLE goal (
  position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, label TEXT NOT NULL, sentence TEXT NOT NULL, formula TEXT NOT NULL, best_high INTEGER NOT NULL,
  only_home_casting INTEGER NOT NULL, only_non_ferromagnetic INTEGER NOT NULL, only_solid INTEGER NOT NULL) STRICT;

CREATE TABLE goal_condition (
  goal INTEGER NOT NULL REFERENCES goal(position), position INTEGER NOT NULL, text TEXT NOT NULL, PRIMARY KEY (goal, position)) STRICT, WITHOUT ROWID;

CREATE TABLE practice (
  position INTEGER PRIMARY KEY, quantity TEXT NOT NULL, metal TEXT NOT NULL, family TEXT NOT NULL, element TEXT NOT NULL, process TEXT NOT NULL,
  material TEXT NOT NULL, grade TEXT NOT NULL, from_wt_percent REAL NOT NULL, over_m REAL, up_to_m REAL,
  value REAL, low REAL, high REAL, half_digit REAL NOT NULL, printed TEXT NOT NULL, unit TEXT NOT NULL, text TEXT NOT NULL, note TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL CHECK (locator <> ''), how_known TEXT NOT NULL, through TEXT NOT NULL) STRICT;
