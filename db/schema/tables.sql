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

CREATE TABLE price_set (
  position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, name TEXT NOT NULL, as_of TEXT NOT NULL, form TEXT NOT NULL, note TEXT NOT NULL) STRICT;

CREATE TABLE price (
  price_set INTEGER NOT NULL REFERENCES price_set(position), position INTEGER NOT NULL, metal TEXT NOT NULL REFERENCES metal(slug),
  usd_per_kg REAL NOT NULL, low REAL, high REAL, printed TEXT NOT NULL, unit TEXT NOT NULL, as_of TEXT NOT NULL, form TEXT NOT NULL,
  source TEXT NOT NULL REFERENCES reference(key), locator TEXT NOT NULL, how_known TEXT NOT NULL, PRIMARY KEY (price_set, position)) STRICT, WITHOUT ROWID;

CREATE TABLE goal (
  position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, label TEXT NOT NULL, sentence TEXT NOT NULL, formula TEXT NOT NULL, best_high INTEGER NOT NULL,
  only_home_casting INTEGER NOT NULL, only_non_ferromagnetic INTEGER NOT NULL, only_solid INTEGER NOT NULL) STRICT;

CREATE TABLE goal_condition (
  goal INTEGER NOT NULL REFERENCES goal(position), position INTEGER NOT NULL, text TEXT NOT NULL, PRIMARY KEY (goal, position)) STRICT, WITHOUT ROWID;
