import { sql } from 'kysely';
import type { DogFilter } from '../contract/dogList.ts';
import { weighDay } from '../contract/due.ts';
import type { Desk } from './context.ts';
import { readDays } from './due.ts';
import { offCourseLines } from './offCourse.ts';

/** The ids of the dogs a filter holds for. */
export async function dogsHolding(
  desk: Desk,
  filter: Exclude<DogFilter, 'archived too'>,
): Promise<string[]> {
  const today = desk.today();
  if (filter === 'off course') return (await offCourseLines(desk)).map(({ dogId }) => dogId);
  if (filter === 'consent missing') return withoutConsent(desk, today);
  const dogs = await readDays(desk.db);
  const holds = (day: string | null, until: string): boolean => day !== null && day <= until;
  return dogs
    .filter((dog) =>
      filter === 'plan ended'
        ? dog.planEndDay !== null && dog.planEndDay < today
        : holds(weighDay(dog), today),
    )
    .map(({ dogId }) => dogId);
}

/** Dogs that have been seen and whose latest visit holds no consent of a vet, or one that ended. */
async function withoutConsent(desk: Desk, today: string): Promise<string[]> {
  const rows = await sql<{ dogId: string }>`
    select visit.dog_id as dog_id from visit
    where visit.id = (
      select latest.id from visit as latest
      where latest.dog_id = visit.dog_id and latest.binned_at is null
      order by latest.day desc, latest.created_at desc limit 1)
    and (visit.consent_given = 0 or visit.consent_expiry_day < ${today})`.execute(desk.db);
  return rows.rows.map(({ dogId }) => dogId);
}
