import type { Migration } from './migration.ts';

const KINDS =
  "('photo', 'photo from the left', 'photo from the right', 'photo from above', 'photo from the front', 'photo from behind', 'letter of the vet', 'other')";

/**
 * The practice's own foods and note phrases; the side a photo was taken from; and an index of the
 * visits that are not in the bin, which answers alone when a dog was last seen. Its last column is
 * always null: without it SQLite reads the visit itself to see so, and the list of dogs does that
 * for every dog.
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
CREATE TABLE attachment_new (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  hash TEXT NOT NULL REFERENCES stored_file (hash) ON DELETE RESTRICT,
  kind TEXT NOT NULL CHECK (kind IN ${KINDS}),
  name TEXT NOT NULL CHECK (name <> ''),
  thumbnail BLOB CHECK (length(thumbnail) <= 65536),
  author TEXT NOT NULL,
  created_at TEXT NOT NULL,
  binned_at TEXT
) STRICT;
INSERT INTO attachment_new SELECT * FROM attachment;
DROP TABLE attachment;
ALTER TABLE attachment_new RENAME TO attachment;
CREATE INDEX attachment_by_visit ON attachment (visit_id);
CREATE INDEX attachment_by_hash ON attachment (hash);
CREATE INDEX visit_in_use_by_dog ON visit (dog_id, day, binned_at) WHERE binned_at IS NULL;
`,
};
