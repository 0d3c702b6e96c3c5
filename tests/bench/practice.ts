import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { addDays } from '../../core/day.ts';
import { openDatabase } from '../../electron/service/database/database.ts';
import { DATABASE_FILES } from '../../electron/service/database/open.ts';
import { searchText } from '../../electron/service/dogs/searchText.ts';
import { random, type Random } from '../calibration/random.ts';

// A practice of any size, invented from a seed: the same dogs in every run, seen last on days before
// today, as a program that is started sees them.

export const TODAY = new Date().toISOString().slice(0, 10);
export const clock = (): Date => new Date();

/** Weighings of each dog; every second one is a whole visit, the others are weigh-ins. */
export const WEIGHINGS_PER_DOG = 20;

const DOG_NAMES = ['Bracken', 'Émile', 'Juniper', 'Löwe', 'Moss', 'Ñandu', 'Pebble', 'Quill'];
const OWNER_NAMES = ['Ardley', 'Brückner', 'Castañeda', 'Delacroix', 'Édouard', 'Fennimore'];
const SYLLABLES = ['ba', 'den', 'fol', 'gri', 'hus', 'jan', 'kel', 'mor', 'nit', 'pox', 'rud'];
const BREEDS = ['Collie cross', 'Large crossbreed', 'Retriever', 'Small crossbreed'];
const LIMBS = ['leftFore', 'rightFore', 'leftHind', 'rightHind'];

export interface GeneratedPractice {
  readonly folder: string;
  /** The database file of the own practice. */
  readonly file: string;
  readonly dogs: number;
  remove(): void;
}

/** Writes a practice with `dogs` dogs into a new folder. */
export function generatePractice(dogs: number, seed = 1): GeneratedPractice {
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-bench-'));
  const file = join(folder, DATABASE_FILES.own);
  const db = openDatabase(file, clock().toISOString());
  const write = writers(db);
  const chance = random(seed);
  const newId = idsFrom(chance);
  db.transaction(() => {
    writePractice(db);
    for (let index = 0; index < dogs; index += 1) writeDog(write, chance, newId, index);
  })();
  db.pragma('optimize');
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
  return { folder, file, dogs, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

type Values = Record<string, string | number | null>;
type Write = (table: string, values: Values) => void;

function writers(db: Database): Write {
  const statements = new Map<string, ReturnType<Database['prepare']>>();
  return (table, values) => {
    let statement = statements.get(table);
    if (statement === undefined) {
      const names = Object.keys(values);
      const marks = names.map((name) => `@${name}`).join(', ');
      statement = db.prepare(`INSERT INTO ${table} (${names.join(', ')}) VALUES (${marks})`);
      statements.set(table, statement);
    }
    statement.run(values);
  };
}

/** Ids of the length the records ask for, from the seed. */
function idsFrom(chance: Random): () => string {
  const part = (): string =>
    Math.floor(chance.uniform(0, 2 ** 32))
      .toString(16)
      .padStart(8, '0');
  return () => {
    const [a, b, c, d] = [part(), part(), part(), part()];
    return `${a}-${b.slice(0, 4)}-4${b.slice(5)}-8${c.slice(1, 4)}-${c.slice(4)}${d}`;
  };
}

const AT = { created_at: '2026-01-01T00:00:00.000Z', updated_at: '2026-01-01T00:00:00.000Z' };

function writePractice(db: Database): void {
  writers(db)('practice', {
    id: 1,
    name: 'Invented practice for measuring',
    practitioner: '',
    address: '',
    phone: '',
    email: '',
    registration: '',
    weight_unit: 'kg',
    energy_unit: 'kcal',
    distance_unit: 'km',
    temperature_unit: 'C',
    paper: 'A4',
    day_format: 'YYYY-MM-DD',
    language: 'en',
    accent: '',
    footer: '',
    intake_sheets: '[]',
    follow_up_sheets: '[]',
    updated_at: AT.updated_at,
  });
}

function writeDog(write: Write, chance: Random, newId: () => string, index: number): void {
  const word = (): string => chance.pick(SYLLABLES) + chance.pick(SYLLABLES);
  const client = newId();
  const dog = newId();
  const ownerName = `${chance.pick(OWNER_NAMES)} ${word()}`;
  const dogName = `${chance.pick(DOG_NAMES)} ${word()}`;
  const breed = chance.pick(BREEDS);
  const phone = `000 ${String(index).padStart(6, '0')}`;
  write('client', {
    id: client,
    name: ownerName,
    phone,
    email: '',
    address: 'Sampleford',
    vet_practice: '',
    vet_name: '',
    vet_contact: '',
    notes: '',
    search_text: searchText(ownerName, phone, ''),
    ...AT,
  });
  write('dog', {
    id: dog,
    client_id: client,
    name: dogName,
    breed,
    sex: chance.pick(['female', 'male']),
    neuter: chance.pick(['intact', 'neutered']),
    neutered_at_months: null,
    birth_day: addDays(TODAY, -Math.round(chance.uniform(600, 4000))),
    adult_weight_kg: null,
    withers_cm: 50,
    coat: 'ordinary',
    short_nosed: 0,
    sighthound: 0,
    notes: '',
    search_text: searchText(dogName, breed),
    ...AT,
  });
  writeWeighings(write, chance, newId, dog);
}

function writeWeighings(write: Write, chance: Random, newId: () => string, dog: string): void {
  const startKg = chance.uniform(6, 45);
  const percentPerWeek = chance.uniform(-1, 0.6);
  let day = addDays(TODAY, -Math.round(chance.uniform(210, 500)));
  const first = day;
  for (let index = 0; index < WEIGHINGS_PER_DOG; index += 1) {
    const weeks = (Date.parse(day) - Date.parse(first)) / 604_800_000;
    const kg = startKg * (1 + (percentPerWeek * weeks) / 100) * (1 + 0.01 * chance.normal());
    const whole = index % 2 === 0;
    const id = newId();
    write('visit', visitRow(id, dog, day, index === 0, Math.max(1, Math.round(kg * 10) / 10)));
    if (whole) writeParts(write, chance, id);
    day = addDays(day, Math.round(chance.uniform(5, 11)));
  }
}

function visitRow(id: string, dog: string, day: string, intake: boolean, kg: number): Values {
  return {
    id,
    dog_id: dog,
    kind: intake ? 'intake' : 'follow-up',
    day,
    weight_kg: kg,
    weighing_method: 'same scale',
    scale_step_kg: 0.1,
    bcs: 6,
    muscle: 'normal',
    gait_note: '',
    surgery: 'none',
    airway_disease: 0,
    airway_clearance: 0,
    radiographic_clearance: 0,
    conditioning: 'unconditioned',
    walk_base: 'passed',
    activity: 'moderate',
    consent_given: 1,
    consent_vet: 'Dr A. Invented',
    consent_day: TODAY,
    consent_scope: 'Running in harness',
    consent_expiry_day: null,
    target_weight_kg: null,
    food_goal: 'hold',
    meals_per_day: 2,
    weight_loss_diet: 0,
    notes: intake ? 'Invented for measuring.' : '',
    ...AT,
  };
}

function writeParts(write: Write, chance: Random, visit: string): void {
  for (const limb of LIMBS.slice(0, 2)) {
    write('visit_lameness', { visit_id: visit, gait: 'trot', limb, grade: 0 });
  }
  for (const [position, treat] of [0, 1].entries()) {
    write('diet_item', {
      visit_id: visit,
      position,
      name: treat === 1 ? 'Biscuits' : 'Dry food',
      treat,
      kcal_per_100g: 360,
      grams_per_day: Math.round(chance.uniform(treat === 1 ? 10 : 100, treat === 1 ? 40 : 400)),
      grams_per_cup: null,
      fixed_grams: 0,
      energy_from: 'declared',
      protein_pct: null,
      fat_pct: null,
      fibre_pct: null,
      moisture_pct: null,
      ash_pct: null,
    });
  }
}
