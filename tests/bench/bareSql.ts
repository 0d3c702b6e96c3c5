import BetterSqlite3, { type Database } from 'better-sqlite3';
import { MOST_LISTED } from '../../electron/contract/dogs/list.ts';

// What the service is measured against: the same answers in hand-written SQL, on the driver alone.

const found = (where: string): string => `
  SELECT dog.id, dog.search_text,
         (SELECT max(day) FROM visit WHERE visit.dog_id = dog.id) AS last_day
  FROM dog JOIN client ON client.id = dog.client_id ${where}
  ORDER BY last_day IS NULL, last_day DESC, dog.search_text LIMIT ${MOST_LISTED}`;
const list = (where: string): string => `
  SELECT dog.id, dog.name, dog.breed, dog.client_id AS clientId, client.name AS clientName,
         client.phone, visit.day AS lastVisitDay, visit.bcs AS lastBcs,
         (SELECT weight_kg FROM (
            SELECT day, 1 AS at_visit, created_at, weight_kg FROM visit
              WHERE dog_id = found.id AND weight_kg IS NOT NULL
            UNION ALL
            SELECT day, 0, created_at, weight_kg FROM weighing WHERE dog_id = found.id)
          ORDER BY day DESC, at_visit DESC, created_at DESC LIMIT 1) AS lastWeightKg
  FROM (${found(where)}) AS found
  JOIN dog ON dog.id = found.id
  JOIN client ON client.id = dog.client_id
  LEFT JOIN visit ON visit.id = (
    SELECT id FROM visit AS latest WHERE latest.dog_id = found.id
    ORDER BY day DESC, created_at DESC LIMIT 1)
  ORDER BY found.last_day IS NULL, found.last_day DESC, found.search_text`;
export const LIST = list('');
const NAMED = 'WHERE (dog.search_text LIKE @word OR client.search_text LIKE @word';
const FOUND = list(`${NAMED})`);
/** What is looked up where no name has the word. */
const NOTED = list(`${NAMED} OR dog.notes LIKE @word OR client.notes LIKE @word
  OR client.vet_name LIKE @word OR client.vet_practice LIKE @word
  OR dog.id IN (SELECT dog_id FROM visit
    WHERE diagnosis LIKE @word OR referral LIKE @word OR notes LIKE @word))`);

export function openBare(file: string): Database {
  return new BetterSqlite3(file, { readonly: true });
}

export function listBare(db: Database): unknown[] {
  return db.prepare(LIST).all();
}

export function searchBare(db: Database, word: string): unknown[] {
  const looked = { word: `%${word}%` };
  const named = db.prepare(FOUND).all(looked);
  return named.length > 0 ? named : db.prepare(NOTED).all(looked);
}

/** Every weighing of the practice, dog by dog in order of days. */
export function readWeighings(db: Database): { dogId: string; day: string; weightKg: number }[] {
  return db
    .prepare(
      'SELECT dog_id AS dogId, day, weight_kg AS weightKg FROM visit ORDER BY dog_id, day, created_at',
    )
    .all() as { dogId: string; day: string; weightKg: number }[];
}
