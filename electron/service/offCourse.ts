import { sql } from 'kysely';
import { addDays, weightCourse, type CourseVisit, type Weighing } from '../../core/index.ts';
import type { OffCourseLine } from '../contract/dogList.ts';
import { DUE_PAST_DAYS } from '../contract/due.ts';
import type { Desk } from './context.ts';

/**
 * The dogs whose weight has left its course. Only dogs weighed of late are looked at: the weight of
 * one long gone says nothing of today, and reading every weighing of a practice would take long.
 */
export async function offCourseLines(desk: Desk): Promise<OffCourseLine[]> {
  const day = desk.today();
  const dogs = await dogsWeighedSince(desk, addDays(day, -DUE_PAST_DAYS));
  if (dogs.length === 0) return [];
  const ids = dogs.map(({ id }) => id);
  const [visits, weighings, decisions] = await Promise.all([
    readCourseVisits(desk, ids),
    readWeighings(desk, ids),
    readDecisions(desk, ids),
  ]);
  const lines = dogs.flatMap((dog): OffCourseLine[] => {
    const own = visits.get(dog.id) ?? [];
    const between = weighings.get(dog.id) ?? [];
    const reason = weightCourse({
      dog: { sighthound: dog.sighthound === 1 },
      visits: own,
      weighings: between,
      foodDecisions: decisions.get(dog.id) ?? [],
      day,
    });
    const last = latestOf(own, between);
    if (reason === null || last === null) return [];
    return [{ dogId: dog.id, name: dog.name, clientName: dog.clientName, ...last, reason }];
  });
  return lines.sort((a, b) => a.day.localeCompare(b.day) || a.name.localeCompare(b.name));
}

/** From here on a weight is not stable: under 1 % over more than 14 days is (German 2011, S). */
const GAIN_PERCENT = 1;
const GAIN_DAYS = 14;

/**
 * The dogs that weigh 1 % and more above what they weighed over 14 days before, none of which is to
 * gain. Of dogs weighed of late, as above.
 */
export async function gainingDogs(desk: Desk): Promise<string[]> {
  const dogs = await dogsWeighedSince(desk, addDays(desk.today(), -DUE_PAST_DAYS));
  const ids = dogs.map(({ id }) => id);
  const [visits, weighings] = await Promise.all([
    readCourseVisits(desk, ids),
    readWeighings(desk, ids),
  ]);
  return ids.filter((id) => {
    const own = visits.get(id) ?? [];
    if (own.at(-1)?.foodGoal === 'gain') return false;
    const between = weighings.get(id) ?? [];
    const last = latestOf(own, between);
    if (last === null) return false;
    const until = addDays(last.day, -GAIN_DAYS);
    const upTo = <T extends { readonly day: string }>(list: readonly T[]) =>
      list.filter(({ day }) => day < until);
    const before = latestOf(upTo(own), upTo(between));
    return before !== null && last.weightKg >= before.weightKg * (1 + GAIN_PERCENT / 100);
  });
}

function dogsWeighedSince(desk: Desk, since: string) {
  return desk.db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .select(['dog.id', 'dog.name', 'dog.sighthound', 'client.name as clientName'])
    .where('dog.binnedAt', 'is', null)
    .where('dog.archivedAt', 'is', null)
    .where('client.binnedAt', 'is', null)
    .where((eb) =>
      eb.or([
        eb(
          'dog.id',
          'in',
          eb
            .selectFrom('visit')
            .select('visit.dogId')
            .where('visit.day', '>=', since)
            .where('visit.binnedAt', 'is', null),
        ),
        eb(
          'dog.id',
          'in',
          eb.selectFrom('weighing').select('weighing.dogId').where('weighing.day', '>=', since),
        ),
      ]),
    )
    .execute();
}

async function readCourseVisits(
  desk: Desk,
  dogIds: readonly string[],
): Promise<Map<string, CourseVisit[]>> {
  const rows = await desk.db
    .selectFrom('visit')
    .select([
      'dogId',
      'day',
      'weightKg',
      'foodGoal',
      'bcs',
      'targetWeightKg',
      'weighingMethod',
      'scaleStepKg',
    ])
    .where('dogId', 'in', oneOf(dogIds))
    .where('binnedAt', 'is', null)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return byDog(rows, (row) => ({
    ...row,
    foodGoal: row.foodGoal as CourseVisit['foodGoal'],
    weighingMethod: row.weighingMethod as CourseVisit['weighingMethod'],
  }));
}

async function readWeighings(
  desk: Desk,
  dogIds: readonly string[],
): Promise<Map<string, Weighing[]>> {
  const rows = await desk.db
    .selectFrom('weighing')
    .select(['dogId', 'day', 'weightKg', 'weighingMethod', 'scaleStepKg'])
    .where('dogId', 'in', oneOf(dogIds))
    .orderBy('day')
    .execute();
  return byDog(rows, ({ day, weightKg, weighingMethod, scaleStepKg }) => ({
    day,
    weightKg,
    scaleStepKg,
    method: weighingMethod as CourseVisit['weighingMethod'],
  }));
}

async function readDecisions(
  desk: Desk,
  dogIds: readonly string[],
): Promise<Map<string, { decidedOn: string; kcalPerDay: number }[]>> {
  const rows = await desk.db
    .selectFrom('foodDecision')
    .innerJoin('visit', 'visit.id', 'foodDecision.visitId')
    .select(['foodDecision.dogId', 'foodDecision.decidedOn', 'foodDecision.kcalPerDay'])
    .where('foodDecision.dogId', 'in', oneOf(dogIds))
    .where('visit.binnedAt', 'is', null)
    .orderBy('foodDecision.decidedOn')
    .orderBy('foodDecision.createdAt')
    .execute();
  return byDog(rows, ({ decidedOn, kcalPerDay }) => ({ decidedOn, kcalPerDay: kcalPerDay ?? 0 }));
}

/** One parameter, however many dogs. */
const oneOf = (ids: readonly string[]) =>
  sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;

function byDog<R extends { readonly dogId: string }, T>(
  rows: readonly R[],
  pick: (row: R) => T,
): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const list = found.get(row.dogId) ?? [];
    list.push(pick(row));
    found.set(row.dogId, list);
  }
  return found;
}

/** The latest weighing, at a visit or between; null before the first. */
function latestOf(
  visits: readonly CourseVisit[],
  between: readonly Weighing[],
): { day: string; weightKg: number } | null {
  const weighed = visits.findLast(({ weightKg }) => weightKg !== null);
  const other = between.at(-1);
  if (other !== undefined && (weighed === undefined || other.day > weighed.day)) {
    return { day: other.day, weightKg: other.weightKg };
  }
  return weighed === undefined ? null : { day: weighed.day, weightKg: weighed.weightKg! };
}
