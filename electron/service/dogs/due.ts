import { sql } from 'kysely';
import { addDays, heldBack, WEIGH_IN_DAYS } from '../../../core/index.ts';
import type { OffCourseLine } from '../../contract/dogs/list.ts';
import {
  DUE_AHEAD_DAYS,
  DUE_PAST_DAYS,
  type DueLine,
  type DueReason,
} from '../../contract/dogs/due.ts';
import { readState } from '../visits/assessment.ts';
import type { Context, Handlers } from '../database/context.ts';
import { seenDogs } from '../database/rows.ts';
import { presentDues, presentLines } from './presentLines.ts';
import { readRules } from '../practice/rules.ts';

// What today asks for. A dog is on these lists while it is still heard of: what is long past says
// nothing of today, and reading the whole practice would take long.

/** The longest time from a weighing to the next, days. */
const BETWEEN_WEIGHINGS = Math.max(...Object.values(WEIGH_IN_DAYS));

interface ListedDog {
  readonly id: string;
  readonly name: string;
  readonly clientName: string;
}

const listedDogs = ({ db }: Context) =>
  seenDogs(db)
    .select(['dog.id', 'dog.name', 'client.name as clientName'])
    .where('dog.archivedAt', 'is', null);

const heardOfSince = (day: string) => sql<boolean>`dog.id in (
  select dog_id from visit where binned_at is null and day >= ${day}
  union select dog_id from weighing where day >= ${day})`;

/** The dogs seen or weighed since a day. */
export const dogsHeardOf = (context: Context, since: string): Promise<ListedDog[]> =>
  listedDogs(context).where(heardOfSince(since)).execute();

/** From here on a weighing is not overdue for so long that it is on no list. */
const weighedFrom = (today: string): string => addDays(today, -DUE_PAST_DAYS - BETWEEN_WEIGHINGS);

/** The dogs whose next weighing may be on a list. */
export const dogsToWeigh = (context: Context): Promise<ListedDog[]> =>
  dogsHeardOf(context, weighedFrom(context.today()));

/** The same, and those whose consent ends within reach of today: that of the last visit counts. */
function dogsToWeighOrAsk(context: Context): Promise<ListedDog[]> {
  const today = context.today();
  const ends = sql<boolean>`exists (
    select 1 from visit where visit.dog_id = dog.id and visit.binned_at is null
      and visit.consent_expiry_day between ${addDays(today, -DUE_PAST_DAYS)}
        and ${addDays(today, DUE_AHEAD_DAYS['consent ends'])}
      and visit.day = (select max(latest.day) from visit as latest
        where latest.dog_id = dog.id and latest.binned_at is null and latest.day <= ${today}))`;
  return listedDogs(context)
    .where((eb) => eb.or([heardOfSince(weighedFrom(today)), ends]))
    .execute();
}

/**
 * The dogs with a plan in force whose last outing lies from `from` on, up to `to`; with `stopped`,
 * those whose plan has no outing left too. The JSON functions are SQLite's own: unpacking every
 * plan here would cost more than the rest of the desk.
 */
export function dogsWithPlan(
  context: Context,
  last: { readonly from: string; readonly to: string; readonly stopped: boolean },
): Promise<ListedDog[]> {
  return listedDogs(context)
    .innerJoin('plan', 'plan.dogId', 'dog.id')
    .leftJoin('visit as madeAt', 'madeAt.id', 'plan.visitId')
    .where('plan.current', '=', 1)
    .where('madeAt.binnedAt', 'is', null)
    .where(
      sql<boolean>`coalesce((select max(json_extract(session.value, '$.day'))
          from json_each(plan.ramp, '$.weeks') as week,
            json_each(week.value, '$.sessions') as session)
        between ${last.from} and ${last.to}, ${last.stopped ? 1 : 0})`,
    )
    .execute();
}

/** Whether a day that something is due stands on the list today. */
function isListed(reason: DueReason, day: string | null, today: string): day is string {
  if (day === null) return false;
  return day <= addDays(today, DUE_AHEAD_DAYS[reason]) && day >= addDays(today, -DUE_PAST_DAYS);
}

async function weighAndConsentLines(context: Context): Promise<DueLine[]> {
  const today = context.today();
  const dogs = await dogsToWeighOrAsk(context);
  const dues = await presentDues(
    context,
    dogs.map(({ id }) => id),
  );
  return dogs.flatMap(({ id, name, clientName }) => {
    const { weighDay, consent } = dues.get(id)!;
    const days = [
      ['weigh', weighDay],
      ['consent ends', consent.endsOn],
    ] as const;
    return days.flatMap(([reason, day]) =>
      isListed(reason, day, today) ? [{ dogId: id, name, clientName, reason, day }] : [],
    );
  });
}

/** The plans that end, each as it stands: one that waits is not told as one that runs. */
async function planLines(context: Context): Promise<DueLine[]> {
  const today = context.today();
  const dogs = await dogsWithPlan(context, {
    from: addDays(today, -DUE_PAST_DAYS),
    to: addDays(today, DUE_AHEAD_DAYS['plan ends']),
    stopped: false,
  });
  const rules = await readRules(context.db);
  const lines: DueLine[] = [];
  for (const { id, name, clientName } of dogs) {
    const state = await readState(context, id, rules);
    if (state === null) continue;
    const reason = heldBack(state.programme) === null ? 'plan ends' : 'plan on hold';
    if (!isListed(reason, state.planEndsOn, today)) continue;
    lines.push({ dogId: id, name, clientName, reason, day: state.planEndsOn });
  }
  return lines;
}

const byDay = <T extends { readonly day: string; readonly name: string }>(lines: T[]): T[] =>
  lines.sort((a, b) => a.day.localeCompare(b.day) || a.name.localeCompare(b.name));

/** The dogs whose weight has left its course, of those weighed of late. */
async function offCourseLines(context: Context): Promise<OffCourseLine[]> {
  const since = addDays(context.today(), -DUE_PAST_DAYS);
  const dogs = await dogsHeardOf(context, since);
  const lines = await presentLines(
    context,
    dogs.map(({ id }) => id),
  );
  return byDay(
    dogs.flatMap(({ id, name, clientName }): OffCourseLine[] => {
      const { weight, offCourse: reason } = lines.get(id)!;
      if (weight === null || reason === null || weight.day < since) return [];
      return [{ dogId: id, name, clientName, day: weight.day, weightKg: weight.kg, reason }];
    }),
  );
}

export const dueHandlers: Handlers<'dogs/due' | 'dogs/offCourse'> = {
  'dogs/due': async (context) =>
    byDay([...(await weighAndConsentLines(context)), ...(await planLines(context))]),
  'dogs/offCourse': offCourseLines,
};
