import { sql } from 'kysely';
import { addDays, addMonths, dogYear, practiceYear, presentState } from '../../../core/index.ts';
import { presentInput } from '../../contract/visits/assessInput.ts';
import type { YearAccount, YearDog } from '../../contract/calls/practice.ts';
import type { RuleChange } from '../../contract/records.ts';
import { readRecord } from '../visits/assessment.ts';
import type { Context, Handlers } from '../database/context.ts';
import { seenDogs } from '../database/rows.ts';
import { readRules } from './rules.ts';

/** A plan can begin so long after the dog was last heard of. */
const PLANNED_AHEAD_DAYS = 62;

function spanOf(year: number | null, today: string): { fromDay: string; toDay: string } {
  if (year === null) {
    return { fromDay: addMonths(`${today.slice(0, 7)}-01`, -11), toDay: today };
  }
  const end = `${year}-12-31`;
  return { fromDay: `${year}-01-01`, toDay: end < today ? end : today };
}

/**
 * The dogs a year can say something of: with a plan, or with weight to lose or gain, and heard of
 * inside it. Only their records are read whole.
 */
function dogsOf(context: Context, since: string) {
  return seenDogs(context.db)
    .select(['dog.id', 'dog.name', 'dog.archivedAt', 'client.name as clientName'])
    .where((eb) =>
      eb.or([
        eb.exists(eb.selectFrom('plan').select('plan.id').whereRef('plan.dogId', '=', 'dog.id')),
        eb.exists(
          eb
            .selectFrom('visit')
            .select('visit.id')
            .whereRef('visit.dogId', '=', 'dog.id')
            .where('visit.foodGoal', 'in', ['lose', 'gain'])
            .where('visit.binnedAt', 'is', null),
        ),
      ]),
    )
    .where(
      sql<boolean>`(exists (select 1 from visit where visit.dog_id = dog.id and visit.day >= ${since})
        or exists (select 1 from weighing where weighing.dog_id = dog.id and weighing.day >= ${since})
        or exists (select 1 from session_result where session_result.dog_id = dog.id
          and session_result.day >= ${since}))`,
    )
    .orderBy('dog.searchText')
    .execute();
}

async function yearOf(
  context: Context,
  line: Awaited<ReturnType<typeof dogsOf>>[number],
  rules: readonly RuleChange[],
): Promise<YearDog[]> {
  const input = presentInput(await readRecord(context.db, line.id), rules, context.today());
  const state = presentState(input);
  if (state === null) return [];
  const own = dogYear(input, state);
  // An archived dog was let go, not lost.
  const lostSince = line.archivedAt === null ? own.lostSince : null;
  return [{ ...own, lostSince, dogId: line.id, name: line.name, clientName: line.clientName }];
}

async function yearsWithVisits(context: Context): Promise<number[]> {
  const rows = await context.db
    .selectFrom('visit')
    .select(sql<string>`substr(day, 1, 4)`.as('year'))
    .distinct()
    .where('binnedAt', 'is', null)
    .where('day', '<=', context.today())
    .orderBy('year', 'desc')
    .execute();
  return rows.map(({ year }) => Number(year));
}

export const practiceYearHandlers: Handlers<'practice/year'> = {
  'practice/year': async (context, { year }): Promise<YearAccount> => {
    const span = spanOf(year, context.today());
    const rules = await readRules(context.db);
    const lines = await dogsOf(context, addDays(span.fromDay, -PLANNED_AHEAD_DAYS));
    const dogs: YearDog[] = [];
    for (const line of lines) dogs.push(...(await yearOf(context, line, rules)));
    return { ...span, years: await yearsWithVisits(context), dogs, year: practiceYear(dogs, span) };
  },
};
