import { sql, type Kysely } from 'kysely';
import { addDays, nextWeighIn } from '../../core/index.ts';
import { DUE_AHEAD_DAYS, DUE_PAST_DAYS, type DueLine, type DueReason } from '../contract/due.ts';
import type { Handlers } from './context.ts';
import type { Schema } from './schema.ts';

/** The days that count for one dog; null where there is none. */
export interface DogDays {
  readonly dogId: string;
  readonly name: string;
  readonly clientName: string;
  readonly lastWeighedDay: string | null;
  /** The day the latest decision on the food asks for. */
  readonly proposedWeighDay: string | null;
  readonly planEndDay: string | null;
  readonly consentEndDay: string | null;
}

/**
 * All dogs with their days, in one query. The JSON functions are SQLite's own: unpacking every plan
 * here would cost more than the rest of the desk.
 */
export function readDays(db: Kysely<Schema>): Promise<DogDays[]> {
  return db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .where('dog.binnedAt', 'is', null)
    .where('dog.archivedAt', 'is', null)
    .where('client.binnedAt', 'is', null)
    .select((eb) => [
      'dog.id as dogId',
      'dog.name',
      'client.name as clientName',
      // Empty text stands below every day, so that one of the two is enough.
      sql<string | null>`nullif(max(
        coalesce((select max(visit.day) from visit where visit.dog_id = dog.id
          and visit.weight_kg is not null and visit.binned_at is null), ''),
        coalesce((select max(weighing.day) from weighing where weighing.dog_id = dog.id), '')
      ), '')`.as('lastWeighedDay'),
      eb
        .selectFrom('foodDecision')
        .innerJoin('visit as decidedAt', 'decidedAt.id', 'foodDecision.visitId')
        .select(sql<string | null>`json_extract(proposal, '$.nextWeighInDay')`.as('day'))
        .whereRef('foodDecision.dogId', '=', 'dog.id')
        .where('decidedAt.binnedAt', 'is', null)
        .orderBy('foodDecision.decidedOn', 'desc')
        .orderBy('foodDecision.createdAt', 'desc')
        .limit(1)
        .as('proposedWeighDay'),
      eb
        .selectFrom('plan')
        .leftJoin('visit as madeAt', 'madeAt.id', 'plan.visitId')
        // Days out can leave the last week without a session, so all weeks are looked through.
        .select(
          sql<string | null>`(select max(json_extract(session.value, '$.day'))
            from json_each(plan.ramp, '$.weeks') as week,
              json_each(week.value, '$.sessions') as session)`.as('day'),
        )
        .whereRef('plan.dogId', '=', 'dog.id')
        .where('plan.current', '=', 1)
        .where('madeAt.binnedAt', 'is', null)
        .as('planEndDay'),
      eb
        .selectFrom('visit')
        .select('visit.consentExpiryDay')
        .whereRef('visit.dogId', '=', 'dog.id')
        .where('visit.consentGiven', '=', 1)
        .where('visit.binnedAt', 'is', null)
        .orderBy('visit.day', 'desc')
        .orderBy('visit.createdAt', 'desc')
        .limit(1)
        .as('consentEndDay'),
    ])
    .execute();
}

function dueLines(dog: DogDays, today: string): DueLine[] {
  const { dogId, name, clientName } = dog;
  const days: readonly (readonly [DueReason, string | null])[] = [
    ['weigh', nextWeighIn(dog)],
    ['plan ends', dog.planEndDay],
    ['consent ends', dog.consentEndDay],
  ];
  return days.flatMap(([reason, day]) => {
    if (day === null || day > addDays(today, DUE_AHEAD_DAYS[reason])) return [];
    if (day < addDays(today, -DUE_PAST_DAYS)) return [];
    return [{ dogId, name, clientName, reason, day }];
  });
}

export const dueHandlers: Handlers<'dogs/due'> = {
  'dogs/due': async (desk) => {
    const dogs = await readDays(desk.db);
    const lines = dogs.flatMap((dog) => dueLines(dog, desk.today()));
    return lines.sort((a, b) => a.day.localeCompare(b.day) || a.name.localeCompare(b.name));
  },
};
