import { sql } from 'kysely';
import { nextWeighIn } from '../../core/index.ts';
import type { DogFilter } from '../contract/dogList.ts';
import type { Desk } from './context.ts';
import { readDays } from './due.ts';
import { gainingDogs, offCourseLines } from './offCourse.ts';

/** The ids of the dogs a filter holds for. */
export async function dogsHolding(
  desk: Desk,
  filter: Exclude<DogFilter, 'archived too'>,
): Promise<string[]> {
  const today = desk.today();
  if (filter === 'off course') return (await offCourseLines(desk)).map(({ dogId }) => dogId);
  if (filter === 'consent missing') return withoutConsent(desk, today);
  if (filter === 'stopped') return stopped(desk);
  if (filter === 'gaining') return gainingDogs(desk);
  const dogs = await readDays(desk.db);
  const holds = (day: string | null, until: string): boolean => day !== null && day <= until;
  return dogs
    .filter((dog) =>
      filter === 'plan ended'
        ? dog.planEndDay !== null && dog.planEndDay < today
        : holds(nextWeighIn(dog), today),
    )
    .map(({ dogId }) => dogId);
}

/** Dogs whose plan in force has no week left: a review stopped it. */
async function stopped(desk: Desk): Promise<string[]> {
  const rows = await desk.db
    .selectFrom('plan')
    .leftJoin('visit as madeAt', 'madeAt.id', 'plan.visitId')
    .select('plan.dogId')
    .where('plan.current', '=', 1)
    .where('madeAt.binnedAt', 'is', null)
    .where(sql<boolean>`json_array_length(plan.ramp, '$.weeks') = 0`)
    .execute();
  return rows.map(({ dogId }) => dogId);
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
