import type { Migration } from './migration.ts';

/**
 * The practice's own foods and note phrases; and an index of the visits that are not in the bin, which
 * answers alone when a dog was last seen. Its last column is always null: without it SQLite reads the
 * visit itself to see so, and the list of dogs does that for every dog.
 */
export const ownFoodsAndPhrases: Migration = {
  version: 5,
  name: 'own foods and phrases',
  sql: `
CREATE TABLE own_food (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  name TEXT NOT NULL CHECK (name <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('food', 'treat')),
  kcal_per_100g REAL NOT NULL CHECK (kcal_per_100g BETWEEN 5 AND 950),
  updated_at TEXT NOT NULL
) STRICT;
CREATE TABLE own_phrase (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  text TEXT NOT NULL CHECK (text <> ''),
  updated_at TEXT NOT NULL
) STRICT;
CREATE INDEX visit_in_use_by_dog ON visit (dog_id, day, binned_at) WHERE binned_at IS NULL;
`,
};
