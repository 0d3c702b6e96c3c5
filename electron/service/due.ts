import { sql } from 'kysely';
import { addDays, WEIGH_IN_DAYS, type PresentLine } from '../../core/index.ts';
import type { OffCourseLine } from '../contract/dogList.ts';
import { DUE_AHEAD_DAYS, DUE_PAST_DAYS, type DueLine, type DueReason } from '../contract/due.ts';
import { readState } from './assessment.ts';
import type { Desk, Handlers } from './context.ts';
import { presentLines } from './presentLines.ts';
import { readRules } from './rules.ts';

// What today asks for. A dog is on these lists while it is still heard of: what is long past says
// nothing of today, and reading the whole practice would take long.

/** The longest time from a weighing to the next, days. */
const BETWEEN_WEIGHINGS = Math.max(...Object.values(WEIGH_IN_DAYS));

/** The dogs whose next weighing is not overdue for so long that it is on no list. */
export const dogsToWeigh = (desk: Desk): Promise<ListedDog[]> =>
  dogsHeardOf(desk, addDays(desk.today(), -DUE_PAST_DAYS - BETWEEN_WEIGHINGS));

interface ListedDog {
  readonly id: string;
  readonly name: string;
  readonly clientName: string;
}

const listedDogs = ({ db }: Desk) =>
  db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .select(['dog.id', 'dog.name', 'client.name as clientName'])
    .where('dog.binnedAt', 'is', null)
    .where('dog.archivedAt', 'is', null)
    .where('client.binnedAt', 'is', null);

/** The dogs seen or weighed since a day, and those whose consent ends within reach of today. */
export function dogsHeardOf(desk: Desk, since: string): Promise<ListedDog[]> {
  const today = desk.today();
  return listedDogs(desk)
    .where(
      sql<boolean>`dog.id in (
        select dog_id from visit where binned_at is null and (day >= ${since}
          or consent_expiry_day between ${addDays(today, -DUE_PAST_DAYS)}
            and ${addDays(today, DUE_AHEAD_DAYS['consent ends'])})
        union select dog_id from weighing where day >= ${since})`,
    )
    .execute();
}

/**
 * The dogs with a plan in force whose last outing lies from `from` on, up to `to`; with `stopped`,
 * those whose plan has no outing left too. The JSON functions are SQLite's own: unpacking every
 * plan here would cost more than the rest of the desk.
 */
export function dogsWithPlan(
  desk: Desk,
  last: { readonly from: string; readonly to: string; readonly stopped: boolean },
): Promise<ListedDog[]> {
  return listedDogs(desk)
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

async function weighAndConsentLines(desk: Desk): Promise<DueLine[]> {
  const today = desk.today();
  const dogs = await dogsToWeigh(desk);
  const lines = await presentLines(
    desk,
    dogs.map(({ id }) => id),
  );
  const due = ({ weighDay, consent }: PresentLine) =>
    [
      ['weigh', weighDay],
      ['consent ends', consent.endsOn],
    ] as const;
  return dogs.flatMap(({ id, name, clientName }) =>
    due(lines.get(id)!).flatMap(([reason, day]) =>
      isListed(reason, day, today) ? [{ dogId: id, name, clientName, reason, day }] : [],
    ),
  );
}

/** The plans that end, each as it stands: one that waits is not told as one that runs. */
async function planLines(desk: Desk): Promise<DueLine[]> {
  const today = desk.today();
  const dogs = await dogsWithPlan(desk, {
    from: addDays(today, -DUE_PAST_DAYS),
    to: addDays(today, DUE_AHEAD_DAYS['plan ends']),
    stopped: false,
  });
  const rules = await readRules(desk.db);
  const lines: DueLine[] = [];
  for (const { id, name, clientName } of dogs) {
    const state = await readState(desk, id, rules);
    if (state === null) continue;
    const held = state.programme.kind === 'waiting' || state.programme.kind === 'stopped';
    const reason = held ? 'plan on hold' : 'plan ends';
    if (!isListed(reason, state.planEndsOn, today)) continue;
    lines.push({ dogId: id, name, clientName, reason, day: state.planEndsOn });
  }
  return lines;
}

const byDay = <T extends { readonly day: string; readonly name: string }>(lines: T[]): T[] =>
  lines.sort((a, b) => a.day.localeCompare(b.day) || a.name.localeCompare(b.name));

/** The dogs whose weight has left its course, of those weighed of late. */
async function offCourseLines(desk: Desk): Promise<OffCourseLine[]> {
  const since = addDays(desk.today(), -DUE_PAST_DAYS);
  const dogs = await dogsHeardOf(desk, since);
  const lines = await presentLines(
    desk,
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
  'dogs/due': async (desk) =>
    byDay([...(await weighAndConsentLines(desk)), ...(await planLines(desk))]),
  'dogs/offCourse': offCourseLines,
};
