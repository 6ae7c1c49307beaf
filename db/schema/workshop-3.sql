-- The workshop's own file, schema 3: a casting is weighed in water too, and tells its mould and the metal melted for it. A
-- row that has none of it keeps its seal (app/core/workshop/kinds.cpp: `since`).
ALTER TABLE trial ADD COLUMN mass_in_water TEXT NOT NULL DEFAULT '';
ALTER TABLE trial ADD COLUMN water TEXT NOT NULL DEFAULT '';
ALTER TABLE trial ADD COLUMN process TEXT NOT NULL DEFAULT '';
ALTER TABLE trial ADD COLUMN charge TEXT NOT NULL DEFAULT '';
