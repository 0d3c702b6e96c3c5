import type { Migration } from './migration.ts';

/** Sessions held back by weather or owner. */
export const trainingFacts: Migration = {
  version: 3,
  name: 'training facts',
  sql: `
CREATE TABLE session_result_3 (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  outcome TEXT NOT NULL CHECK (outcome IN ('done', 'shortened', 'missed', 'held')),
  run_minutes REAL CHECK (run_minutes BETWEEN 0 AND 600),
  next_day TEXT CHECK (next_day <> ''),
  signs TEXT NOT NULL CHECK (json_valid(signs)),
  note TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  author TEXT NOT NULL DEFAULT '',
  UNIQUE (dog_id, day)
) STRICT;
INSERT INTO session_result_3 (id, dog_id, day, outcome, run_minutes, next_day, signs, note, created_at, updated_at, author)
  SELECT id, dog_id, day, outcome, run_minutes, next_day, signs, note, created_at, updated_at, author FROM session_result;
DROP TABLE session_result;
ALTER TABLE session_result_3 RENAME TO session_result;
`,
};
