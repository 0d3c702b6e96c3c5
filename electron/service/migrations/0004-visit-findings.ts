import type { Migration } from './migration.ts';

const YES_NO = "('no', 'yes')";
const RISES = "('even', 'leans left', 'leans right', 'cannot')";
const APPETITES = "('normal', 'less than usual', 'more than usual')";
const NOT_PRESSED = JSON.stringify({
  neck: null,
  back: null,
  'loin and pelvis': null,
  'left fore': null,
  'right fore': null,
  'left hind': null,
  'right hind': null,
});

const list = (name: string): string =>
  `ALTER TABLE visit ADD COLUMN ${name} TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(${name}));`;
const text = (name: string): string =>
  `ALTER TABLE visit ADD COLUMN ${name} TEXT NOT NULL DEFAULT '';`;
const flag = (name: string): string =>
  `ALTER TABLE visit ADD COLUMN ${name} INTEGER NOT NULL DEFAULT 0 CHECK (${name} IN (0, 1));`;
const word = (name: string, words: string): string =>
  `ALTER TABLE visit ADD COLUMN ${name} TEXT CHECK (${name} IN ${words});`;

/**
 * Clearances, injuries, disease, palpation, how the dog rises, feeding at home; the chip number; the
 * run as it was, and its recording where the owner asks to keep it.
 */
export const visitFindings: Migration = {
  version: 4,
  name: 'visit findings',
  sql: `
ALTER TABLE dog ADD COLUMN chip TEXT NOT NULL DEFAULT '';
ALTER TABLE client ADD COLUMN keep_recordings INTEGER NOT NULL DEFAULT 0 CHECK (keep_recordings IN (0, 1));
${flag('history_asked')}
${list('injuries')}
${text('diagnosis')}
${text('referral')}
${word('disease_joints', YES_NO)}
${word('disease_spine', YES_NO)}
${word('disease_heart', YES_NO)}
${text('disease_words')}
${text('medicine')}
${word('heat_illness_had', YES_NO)}
ALTER TABLE visit ADD COLUMN heat_illness_day TEXT;
${word('used_to_warmth', YES_NO)}
ALTER TABLE visit ADD COLUMN well_since TEXT;
${flag('long_run_clearance')}
${flag('signs_asked')}
${list('lameness_clearances')}
ALTER TABLE visit ADD COLUMN palpation TEXT NOT NULL DEFAULT '${NOT_PRESSED}' CHECK (json_valid(palpation));
${word('sit_to_stand', RISES)}
${word('lie_to_stand', RISES)}
${list('questionnaires')}
${text('feeding_fed_by')}
${word('feeding_other_pets', YES_NO)}
${word('feeding_free_choice', YES_NO)}
${word('feeding_scavenges', YES_NO)}
${text('feeding_extras')}
${word('feeding_food_kind', "('complete', 'home-made', 'raw', 'mixed')")}
${word('appetite', APPETITES)}
${word('thirst', APPETITES)}
${word('stool', "('normal', 'soft', 'loose', 'hard')")}
ALTER TABLE visit ADD COLUMN exercises TEXT CHECK (json_valid(exercises));
ALTER TABLE session_result ADD COLUMN longest_run_minutes REAL CHECK (longest_run_minutes BETWEEN 0 AND 600);
ALTER TABLE session_result ADD COLUMN run_km REAL CHECK (run_km BETWEEN 0 AND 200);
ALTER TABLE session_result ADD COLUMN climbed_m REAL CHECK (climbed_m BETWEEN 0 AND 5000);
CREATE TABLE stored_file_new (
  hash TEXT PRIMARY KEY CHECK (length(hash) = 64),
  media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp', 'application/pdf', 'application/gpx+xml')),
  bytes INTEGER NOT NULL CHECK (bytes BETWEEN 1 AND 20971520),
  created_at TEXT NOT NULL
) STRICT;
INSERT INTO stored_file_new SELECT * FROM stored_file;
DROP TABLE stored_file;
ALTER TABLE stored_file_new RENAME TO stored_file;
CREATE TABLE history_new (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('client', 'dog', 'visit', 'session', 'weighing', 'attachment')),
  record_id TEXT NOT NULL CHECK (length(record_id) = 36),
  client_id TEXT REFERENCES client (id) ON DELETE CASCADE,
  dog_id TEXT REFERENCES dog (id) ON DELETE CASCADE,
  action TEXT NOT NULL CHECK (action IN ('amended', 'binned', 'restored', 'removed', 'archived', 'unarchived', 'made')),
  revision INTEGER CHECK (revision >= 1),
  author TEXT NOT NULL,
  reason TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  at TEXT NOT NULL,
  CHECK ((client_id IS NULL) <> (dog_id IS NULL))
) STRICT;
INSERT INTO history_new SELECT * FROM history;
DROP TABLE history;
ALTER TABLE history_new RENAME TO history;
CREATE INDEX history_of_record ON history (record_id, id);
CREATE INDEX history_by_dog ON history (dog_id);
CREATE INDEX history_by_client ON history (client_id);
CREATE TRIGGER history_is_final BEFORE UPDATE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is never altered');
END;
`,
};
