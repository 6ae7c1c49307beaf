-- The workshop's own file, schema 2: the journal carries check sums too (pourbook_seal, db/store/workshop_guard.hpp), so
-- that undo never puts back what was damaged meanwhile.
DROP TABLE change_row;
DROP TABLE change;
CREATE TABLE change (
  number INTEGER PRIMARY KEY AUTOINCREMENT, seal INTEGER NOT NULL, at TEXT NOT NULL, words TEXT NOT NULL,
  undone INTEGER NOT NULL) STRICT;
CREATE TABLE change_row (
  change INTEGER NOT NULL REFERENCES change(number) ON DELETE CASCADE, kind TEXT NOT NULL, first INTEGER NOT NULL,
  last INTEGER NOT NULL, before TEXT, seal INTEGER NOT NULL, PRIMARY KEY (change, kind, first)) STRICT, WITHOUT ROWID;
