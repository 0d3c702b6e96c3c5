import type { Migration } from './migration.ts';

/**
 * The first records. Ids are UUIDs in text, days ISO text, instants UTC ISO text, yes/no 0 or 1, so
 * that the same rows can later live in another database. Quantities are in kg, cm, g and kcal.
 */
export const firstRecords: Migration = {
  version: 1,
  name: 'first records',
  sql: `
CREATE TABLE practice (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  name TEXT NOT NULL CHECK (name <> ''),
  practitioner TEXT NOT NULL,
  address TEXT NOT NULL,
  phone TEXT NOT NULL,
  email TEXT NOT NULL,
  registration TEXT NOT NULL,
  weight_unit TEXT NOT NULL CHECK (weight_unit IN ('kg', 'lb')),
  energy_unit TEXT NOT NULL CHECK (energy_unit IN ('kcal', 'kJ')),
  distance_unit TEXT NOT NULL CHECK (distance_unit IN ('km', 'mi')),
  temperature_unit TEXT NOT NULL CHECK (temperature_unit IN ('C', 'F')),
  paper TEXT NOT NULL CHECK (paper IN ('A4', 'LETTER')),
  day_format TEXT NOT NULL CHECK (day_format IN ('YYYY-MM-DD', 'DD.MM.YYYY', 'DD/MM/YYYY', 'MM/DD/YYYY')),
  language TEXT NOT NULL CHECK (language IN ('en', 'de', 'fr', 'es')),
  accent TEXT NOT NULL CHECK (accent = '' OR accent GLOB '#[0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f]'),
  footer TEXT NOT NULL,
  intake_sheets TEXT NOT NULL CHECK (json_valid(intake_sheets)),
  follow_up_sheets TEXT NOT NULL CHECK (json_valid(follow_up_sheets)),
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE practice_logo (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  media_type TEXT NOT NULL CHECK (media_type IN ('image/png', 'image/jpeg', 'image/svg+xml')),
  data TEXT NOT NULL CHECK (length(data) <= 800000)
) STRICT;

CREATE TABLE client (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  name TEXT NOT NULL CHECK (name <> ''),
  phone TEXT NOT NULL,
  email TEXT NOT NULL,
  address TEXT NOT NULL,
  vet_practice TEXT NOT NULL,
  vet_name TEXT NOT NULL,
  vet_contact TEXT NOT NULL,
  notes TEXT NOT NULL,
  search_text TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE dog (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  client_id TEXT NOT NULL REFERENCES client (id) ON DELETE RESTRICT,
  name TEXT NOT NULL CHECK (name <> ''),
  breed TEXT NOT NULL,
  sex TEXT NOT NULL CHECK (sex IN ('female', 'male')),
  neuter TEXT NOT NULL CHECK (neuter IN ('intact', 'neutered', 'unknown')),
  neutered_at_months REAL CHECK (neutered_at_months BETWEEN 1 AND 240),
  birth_day TEXT NOT NULL CHECK (birth_day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  adult_weight_kg REAL CHECK (adult_weight_kg BETWEEN 0.5 AND 150),
  withers_cm REAL CHECK (withers_cm BETWEEN 10 AND 120),
  coat TEXT NOT NULL CHECK (coat IN ('ordinary', 'thick', 'dark', 'thick and dark')),
  short_nosed INTEGER NOT NULL CHECK (short_nosed IN (0, 1)),
  sighthound INTEGER NOT NULL CHECK (sighthound IN (0, 1)),
  notes TEXT NOT NULL,
  search_text TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;
CREATE INDEX dog_by_client ON dog (client_id);

CREATE TABLE visit (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  kind TEXT NOT NULL CHECK (kind IN ('intake', 'follow-up')),
  day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  weight_kg REAL CHECK (weight_kg BETWEEN 0.1 AND 150),
  weighing_method TEXT NOT NULL CHECK (weighing_method IN ('same scale', 'other scale', 'harness on', 'wet coat')),
  scale_step_kg REAL NOT NULL CHECK (scale_step_kg BETWEEN 0.001 AND 5),
  bcs INTEGER CHECK (bcs BETWEEN 1 AND 9),
  muscle TEXT CHECK (muscle IN ('normal', 'mild loss', 'moderate loss', 'severe loss')),
  gait_note TEXT NOT NULL,
  surgery TEXT NOT NULL CHECK (surgery IN ('none', 'cleared in writing', 'not cleared')),
  airway_disease INTEGER NOT NULL CHECK (airway_disease IN (0, 1)),
  airway_clearance INTEGER NOT NULL CHECK (airway_clearance IN (0, 1)),
  radiographic_clearance INTEGER NOT NULL CHECK (radiographic_clearance IN (0, 1)),
  conditioning TEXT NOT NULL CHECK (conditioning IN ('conditioned', 'unconditioned', 'post-injury')),
  walk_base TEXT NOT NULL CHECK (walk_base IN ('passed', 'failed', 'not tested')),
  activity TEXT NOT NULL CHECK (activity IN ('low', 'moderate', 'high', 'working')),
  consent_given INTEGER NOT NULL CHECK (consent_given IN (0, 1)),
  consent_vet TEXT NOT NULL,
  consent_day TEXT,
  consent_scope TEXT NOT NULL,
  consent_expiry_day TEXT,
  target_weight_kg REAL CHECK (target_weight_kg BETWEEN 0.1 AND 150),
  food_goal TEXT NOT NULL CHECK (food_goal IN ('lose', 'hold', 'gain')),
  meals_per_day INTEGER NOT NULL CHECK (meals_per_day BETWEEN 1 AND 6),
  weight_loss_diet INTEGER NOT NULL CHECK (weight_loss_diet IN (0, 1)),
  notes TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;
CREATE INDEX visit_by_dog ON visit (dog_id, day);

CREATE TABLE visit_lameness (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  gait TEXT NOT NULL CHECK (gait IN ('walk', 'trot')),
  limb TEXT NOT NULL CHECK (limb IN ('leftFore', 'rightFore', 'leftHind', 'rightHind')),
  grade INTEGER NOT NULL CHECK (grade BETWEEN 0 AND 5),
  PRIMARY KEY (visit_id, gait, limb)
) STRICT;

CREATE TABLE visit_sign (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  position INTEGER NOT NULL CHECK (position >= 0),
  sign TEXT NOT NULL CHECK (sign <> ''),
  PRIMARY KEY (visit_id, position)
) STRICT;

CREATE TABLE visit_override (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  position INTEGER NOT NULL CHECK (position >= 0),
  code TEXT NOT NULL CHECK (code <> ''),
  reason TEXT NOT NULL CHECK (reason <> ''),
  PRIMARY KEY (visit_id, position)
) STRICT;

CREATE TABLE diet_item (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  position INTEGER NOT NULL CHECK (position >= 0),
  name TEXT NOT NULL CHECK (name <> ''),
  treat INTEGER NOT NULL CHECK (treat IN (0, 1)),
  kcal_per_100g REAL NOT NULL CHECK (kcal_per_100g BETWEEN 5 AND 950),
  grams_per_day REAL NOT NULL CHECK (grams_per_day BETWEEN 0 AND 10000),
  grams_per_cup REAL CHECK (grams_per_cup BETWEEN 1 AND 1000),
  fixed_grams INTEGER NOT NULL CHECK (fixed_grams IN (0, 1)),
  energy_from TEXT NOT NULL CHECK (energy_from IN ('declared', 'label')),
  protein_pct REAL CHECK (protein_pct BETWEEN 0 AND 100),
  fat_pct REAL CHECK (fat_pct BETWEEN 0 AND 100),
  fibre_pct REAL CHECK (fibre_pct BETWEEN 0 AND 100),
  moisture_pct REAL CHECK (moisture_pct BETWEEN 0 AND 100),
  ash_pct REAL CHECK (ash_pct BETWEEN 0 AND 100),
  PRIMARY KEY (visit_id, position)
) STRICT;

CREATE TABLE visit_measurement (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  position INTEGER NOT NULL CHECK (position >= 0),
  kind TEXT NOT NULL CHECK (kind IN ('joint angle', 'thigh girth', 'standing weight')),
  limb TEXT NOT NULL CHECK (limb IN ('leftFore', 'rightFore', 'leftHind', 'rightHind')),
  joint TEXT CHECK (joint IN ('carpus', 'elbow', 'shoulder', 'hip', 'stifle', 'tarsus')),
  movement TEXT CHECK (movement IN ('flexion', 'extension')),
  value REAL NOT NULL CHECK (value BETWEEN 0 AND 360),
  note TEXT NOT NULL,
  CHECK ((kind = 'joint angle') = (joint IS NOT NULL AND movement IS NOT NULL)),
  PRIMARY KEY (visit_id, position)
) STRICT;

CREATE TABLE visit_footfall (
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE CASCADE,
  limb TEXT NOT NULL CHECK (limb IN ('leftFore', 'rightFore', 'leftHind', 'rightHind')),
  touch_downs TEXT NOT NULL CHECK (json_valid(touch_downs)),
  lift_offs TEXT NOT NULL CHECK (json_valid(lift_offs)),
  PRIMARY KEY (visit_id, limb)
) STRICT;

CREATE TABLE plan (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  visit_id TEXT REFERENCES visit (id) ON DELETE RESTRICT,
  version INTEGER NOT NULL CHECK (version >= 1),
  made_on TEXT NOT NULL,
  current INTEGER NOT NULL CHECK (current IN (0, 1)),
  origin TEXT NOT NULL CHECK (origin IN ('built', 'reviewed', 'edited')),
  request TEXT NOT NULL CHECK (json_valid(request)),
  ramp TEXT NOT NULL CHECK (json_valid(ramp)),
  review TEXT CHECK (json_valid(review)),
  kept_breaches TEXT NOT NULL CHECK (json_valid(kept_breaches)),
  note TEXT NOT NULL,
  created_at TEXT NOT NULL,
  UNIQUE (dog_id, version)
) STRICT;
CREATE UNIQUE INDEX one_current_plan ON plan (dog_id) WHERE current = 1;

CREATE TABLE session_result (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  outcome TEXT NOT NULL CHECK (outcome IN ('done', 'shortened', 'missed')),
  run_minutes REAL CHECK (run_minutes BETWEEN 0 AND 600),
  next_day TEXT CHECK (next_day <> ''),
  signs TEXT NOT NULL CHECK (json_valid(signs)),
  note TEXT NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  UNIQUE (dog_id, day)
) STRICT;

CREATE TABLE rule_change (
  rule_id TEXT PRIMARY KEY CHECK (rule_id <> ''),
  value REAL NOT NULL,
  reason TEXT NOT NULL,
  updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE food_decision (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  dog_id TEXT NOT NULL REFERENCES dog (id) ON DELETE RESTRICT,
  visit_id TEXT NOT NULL REFERENCES visit (id) ON DELETE RESTRICT,
  decided_on TEXT NOT NULL,
  decision TEXT NOT NULL CHECK (decision IN ('accepted', 'edited', 'declined')),
  kcal_per_day REAL NOT NULL CHECK (kcal_per_day BETWEEN 1 AND 20000),
  ration TEXT CHECK (json_valid(ration)),
  food_switch TEXT CHECK (json_valid(food_switch)),
  changeover TEXT CHECK (json_valid(changeover)),
  proposal TEXT NOT NULL CHECK (json_valid(proposal)),
  known TEXT NOT NULL CHECK (json_valid(known)),
  note TEXT NOT NULL,
  created_at TEXT NOT NULL
) STRICT;
CREATE INDEX food_decision_by_dog ON food_decision (dog_id, decided_on);

CREATE TABLE draft (
  key TEXT PRIMARY KEY CHECK (key <> ''),
  json TEXT NOT NULL,
  saved_at TEXT NOT NULL
) STRICT;
`,
};
