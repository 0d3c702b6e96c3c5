import { addDays, type PresentLine, type PresentProgramme } from '../../../core/index.ts';
import type { DogFilter } from '../../contract/dogs/list.ts';
import { DUE_PAST_DAYS } from '../../contract/dogs/due.ts';
import { readState } from '../visits/assessment.ts';
import type { Context } from '../database/context.ts';
import { dogsHeardOf, dogsToWeigh, dogsWithPlan } from './due.ts';
import { presentLines } from './presentLines.ts';
import { readRules } from '../practice/rules.ts';

type Narrowing = Exclude<DogFilter, 'archived too'>;
type OfPlan = 'plan ended' | 'stopped';
type OfLine = Exclude<Narrowing, OfPlan>;

/** The filters that ask how the plan in force stands. */
const OF_PLAN: Readonly<Record<OfPlan, readonly PresentProgramme<unknown>['kind'][]>> = {
  'plan ended': ['finished'],
  stopped: ['stopped', 'waiting'],
};

/** The ids of the dogs a filter holds for. */
export function dogsHolding(context: Context, filter: Narrowing): Promise<string[]> {
  return filter === 'plan ended' || filter === 'stopped'
    ? dogsByPlan(context, filter)
    : dogsByLine(context, filter);
}

/** Plans whose last outing is long past are left out, as on the due list. */
async function dogsByPlan(context: Context, filter: OfPlan): Promise<string[]> {
  const today = context.today();
  const from = addDays(today, -DUE_PAST_DAYS);
  const dogs =
    filter === 'plan ended'
      ? await dogsWithPlan(context, { from, to: today, stopped: false })
      : await dogsWithPlan(context, { from, to: '9999-12-31', stopped: true });
  const rules = await readRules(context.db);
  const found: string[] = [];
  for (const { id } of dogs) {
    const state = await readState(context, id, rules);
    if (state !== null && OF_PLAN[filter].includes(state.programme.kind)) found.push(id);
  }
  return found;
}

async function dogsByLine(context: Context, filter: OfLine): Promise<string[]> {
  const today = context.today();
  const since = addDays(today, -DUE_PAST_DAYS);
  const isLate = ({ weight }: PresentLine): boolean => weight !== null && weight.day >= since;
  const holds: Readonly<Record<OfLine, (line: PresentLine) => boolean>> = {
    // Up to the day from which the due list leaves it out too.
    'due for follow-up': ({ weighDay }) =>
      weighDay !== null && weighDay <= today && weighDay >= since,
    'off course': (line) => line.offCourse !== null && isLate(line),
    gaining: (line) => line.gaining && isLate(line),
    'consent missing': ({ consent, aim }) => aim !== null && !consent.inForce,
  };
  const lines = await presentLines(context, await inQuestion(context, filter, since));
  return [...lines].filter(([, line]) => holds[filter](line)).map(([id]) => id);
}

/** The dogs that a filter can hold for at all, so that not all records have to be read. */
async function inQuestion(context: Context, filter: OfLine, since: string): Promise<string[]> {
  if (filter === 'off course' || filter === 'gaining') {
    return (await dogsHeardOf(context, since)).map(({ id }) => id);
  }
  if (filter === 'due for follow-up') return (await dogsToWeigh(context)).map(({ id }) => id);
  const withoutConsent = await context.db
    .selectFrom('dog')
    .select('id')
    .where('binnedAt', 'is', null)
    .where((eb) =>
      eb.exists(
        eb
          .selectFrom('visit')
          .select('visit.id')
          .whereRef('visit.dogId', '=', 'dog.id')
          .where((either) =>
            either.or([
              either('consentGiven', '=', 0),
              either('consentExpiryDay', '<', context.today()),
            ]),
          ),
      ),
    )
    .execute();
  return withoutConsent.map(({ id }) => id);
}
