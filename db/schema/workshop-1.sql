-- The workshop's own file, schema 1. Every field is text as the person wrote it (app/core/workshop/kinds.cpp names the
-- same fields); `seal` is a check sum of the row, so that a damaged figure is noticed and never used.
CREATE TABLE profile (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, furnace TEXT NOT NULL, furnace_maximum TEXT NOT NULL,
  power TEXT NOT NULL, efficiency TEXT NOT NULL, lift_maximum TEXT NOT NULL, units TEXT NOT NULL, currency TEXT NOT NULL,
  note TEXT NOT NULL) STRICT;

CREATE TABLE crucible (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, material TEXT NOT NULL,
  volume TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX crucible_key ON crucible (name);

CREATE TABLE mould (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, process TEXT NOT NULL,
  material TEXT NOT NULL, maximum TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX mould_key ON mould (name);

CREATE TABLE stock (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, lot TEXT NOT NULL, metal TEXT NOT NULL, mass TEXT NOT NULL,
  price TEXT NOT NULL, bought TEXT NOT NULL, seller TEXT NOT NULL, condition TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX stock_key ON stock (lot);

CREATE TABLE price (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, metal TEXT NOT NULL, price TEXT NOT NULL, date TEXT NOT NULL,
  seller TEXT NOT NULL, form TEXT NOT NULL, good_until TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX price_key ON price (metal, date, seller, form);

CREATE TABLE rate (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, currency TEXT NOT NULL, usd TEXT NOT NULL,
  date TEXT NOT NULL, source TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX rate_key ON rate (currency, date);

CREATE TABLE trial (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, type TEXT NOT NULL, date TEXT NOT NULL,
  metal TEXT NOT NULL, condition TEXT NOT NULL, temperature TEXT NOT NULL, magnet TEXT NOT NULL, grade TEXT NOT NULL,
  br TEXT NOT NULL, surface_field TEXT NOT NULL, recoil_permeability TEXT NOT NULL, magnet_mass TEXT NOT NULL,
  magnet_at TEXT NOT NULL, tube TEXT NOT NULL, times TEXT NOT NULL, frames TEXT NOT NULL, frame_rate TEXT NOT NULL,
  time_uncertainty TEXT NOT NULL, resistance TEXT NOT NULL, span TEXT NOT NULL, mass TEXT NOT NULL, part TEXT NOT NULL,
  pattern TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX trial_key ON trial (name);

CREATE TABLE goal (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, formula TEXT NOT NULL, best TEXT NOT NULL,
  "where" TEXT NOT NULL, sentence TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX goal_key ON goal (name);

CREATE TABLE metal (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, like TEXT NOT NULL,
  composition TEXT NOT NULL, family TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX metal_key ON metal (name);

CREATE TABLE value (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, metal TEXT NOT NULL, property TEXT NOT NULL,
  value TEXT NOT NULL, temperature TEXT NOT NULL, uncertainty TEXT NOT NULL, condition TEXT NOT NULL, phase TEXT NOT NULL,
  "from" TEXT NOT NULL, date TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX value_key ON value (metal, property, temperature, condition, phase);

CREATE TABLE question (
  id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, name TEXT NOT NULL, question TEXT NOT NULL,
  command TEXT NOT NULL, answer TEXT NOT NULL, data_version TEXT NOT NULL, date TEXT NOT NULL, note TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX question_key ON question (name);

CREATE TABLE pin (id INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, metal TEXT NOT NULL) STRICT;
CREATE UNIQUE INDEX pin_key ON pin (metal);

-- What was changed, so that it can be undone. `before` holds the rows a change replaced, as JSON lists (id and seal left
-- out of the list's order: seal, then the fields); NULL stands for entries `first` to `last` that were not there.
CREATE TABLE change (
  number INTEGER PRIMARY KEY AUTOINCREMENT, at TEXT NOT NULL, words TEXT NOT NULL, undone INTEGER NOT NULL) STRICT;
CREATE TABLE change_row (
  change INTEGER NOT NULL REFERENCES change(number) ON DELETE CASCADE, kind TEXT NOT NULL, first INTEGER NOT NULL,
  last INTEGER NOT NULL, before TEXT, PRIMARY KEY (change, kind, first)) STRICT, WITHOUT ROWID;
