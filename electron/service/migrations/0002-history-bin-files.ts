import type { Migration } from './migration.ts';

/**
 * History of every record, bin and archive, several practitioners, weighings between visits, files
 * at a visit, the lock, erasures, and the practice's choices about keeping.
 */
export const historyBinFiles: Migration = {
  version: 2,
  name: 'history, bin and files',
  sql: `
CREATE TABLE practitioner (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  name TEXT NOT NULL CHECK (name <> ''),
  initials TEXT NOT NULL UNIQUE CHECK (length(initials) BETWEEN 1 AND 4),
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE desk_setting (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  at_desk TEXT REFERENCES practitioner (id) ON DELETE SET NULL,
  retention_years INTEGER NOT NULL CHECK (retention_years BETWEEN 0 AND 50),
  daily_backups INTEGER NOT NULL CHECK (daily_backups BETWEEN 1 AND 60),
  weekly_backups INTEGER NOT NULL CHECK (weekly_backups BETWEEN 0 AND 104)
) STRICT;
INSERT INTO desk_setting VALUES (1, NULL, 10, 7, 8);

CREATE TABLE app_lock (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  salt BLOB NOT NULL CHECK (length(salt) = 16),
  verifier BLOB NOT NULL CHECK (length(verifier) = 32),
  idle_minutes INTEGER NOT NULL CHECK (idle_minutes BETWEEN 1 AND 240),
  updated_at TEXT NOT NULL
) STRICT;

ALTER TABLE client ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision >= 1);
ALTER TABLE client ADD COLUMN binned_at TEXT;

ALTER TABLE dog ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision >= 1);
ALTER TABLE dog ADD COLUMN archived_at TEXT;
ALTER TABLE dog ADD COLUMN binned_at TEXT;

ALTER TABLE visit ADD COLUMN trot_lameness_assessed INTEGER NOT NULL DEFAULT 0 CHECK (trot_lameness_assessed IN (0, 1));
ALTER TABLE visit ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision >= 1);
ALTER TABLE visit ADD COLUMN author TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN binned_at TEXT;

ALTER TABLE session_result ADD COLUMN author TEXT NOT NULL DEFAULT '';
ALTER TABLE plan ADD COLUMN author TEXT NOT NULL DEFAULT '';
ALTER TABLE food_decision ADD COLUMN author TEXT NOT NULL DEFAULT '';

CREATE TABLE history (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('client', 'dog', 'visit', 'session', 'weighing', 'attachment')),
  record_id TEXT NOT NULL CHECK (length(record_id) = 36),
  client_id TEXT REFERENCES client (id) ON DELETE CASCADE,
  dog_id TEXT REFERENCES dog (id) ON DELETE CASCADE,
  action TEXT NOT NULL CHECK (action IN ('amended', 'binned', 'restored', 'removed', 'archived', 'unarchived')),
  revision INTEGER CHECK (revision >= 1),
  author TEXT NOT NULL,
  reason TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  at TEXT NOT NULL,
  CHECK ((client_id IS NULL) <> (dog_id IS NULL))
) STRICT;
CREATE INDEX history_of_record ON history (record_id, id);
CREATE INDEX history_by_dog ON history (dog_id);
CREATE INDEX history_by_client ON history (client_id);
CREATE TRIGGER history_is_final BEFORE UPDATE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is never altered');
END;

CREATE TABLE weighing (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  weight_kg REAL NOT NULL CHECK (weight_kg BETWEEN 0.1 AND 150),
  weighing_method TEXT NOT NULL CHECK (weighing_method IN ('same scale', 'other scale', 'harness on', 'wet coat')),
  scale_step_kg REAL NOT NULL CHECK (scale_step_kg BETWEEN 0.001 AND 5),
  origin TEXT NOT NULL CHECK (origin IN ('typed', 'imported')),
  note TEXT NOT NULL,
  author TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;
CREATE INDEX weighing_by_dog ON weighing (dog_id, day);

CREATE TABLE stored_file (
  hash TEXT PRIMARY KEY CHECK (length(hash) = 64),
  media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp', 'application/pdf')),
  bytes INTEGER NOT NULL CHECK (bytes BETWEEN 1 AND 20971520),
  created_at TEXT NOT NULL
) STRICT;

CREATE TABLE attachment (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  hash TEXT NOT NULL REFERENCES stored_file (hash) ON DELETE RESTRICT,
  kind TEXT NOT NULL CHECK (kind IN ('photo', 'letter of the vet', 'other')),
  name TEXT NOT NULL CHECK (name <> ''),
  thumbnail BLOB CHECK (length(thumbnail) <= 65536),
  author TEXT NOT NULL,
  created_at TEXT NOT NULL,
  binned_at TEXT
) STRICT;
CREATE INDEX attachment_by_visit ON attachment (visit_id);
CREATE INDEX attachment_by_hash ON attachment (hash);

CREATE TABLE erasure (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  erased_at TEXT NOT NULL,
  ground TEXT NOT NULL CHECK (ground IN ('asked by the owner', 'retention period over', 'entered by mistake')),
  inside_retention INTEGER NOT NULL CHECK (inside_retention IN (0, 1)),
  dogs INTEGER NOT NULL CHECK (dogs >= 0),
  visits INTEGER NOT NULL CHECK (visits >= 0),
  files INTEGER NOT NULL CHECK (files >= 0)
) STRICT;

CREATE TABLE erased_owner (
  mark TEXT PRIMARY KEY CHECK (length(mark) = 64),
  erasure_id TEXT NOT NULL REFERENCES erasure (id) ON DELETE RESTRICT
) STRICT;
`,
};
