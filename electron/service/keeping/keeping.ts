import { sql } from 'kysely';
import { addMonths } from '../../../core/day.ts';
import type { Keeping } from '../../contract/keeping/bin.ts';
import type { Context, Handlers } from '../database/context.ts';
import { localDay } from '../day.ts';
import type { Db } from '../database/schema.ts';

const MONTHS_A_YEAR = 12;

async function retentionYears(db: Db): Promise<number> {
  const row = await db.selectFrom('deskSetting').select('retentionYears').executeTakeFirstOrThrow();
  return row.retentionYears;
}

interface Latest {
  readonly day: string | null;
  readonly instant: string | null;
}

/** Looks at the records in the bin too: they are kept as long. */
function latestOf(db: Db, clientId: string): Promise<Latest> {
  return sql<Latest>`
    with of_client as (select id from dog where client_id = ${clientId}),
    entry (day, instant) as (
      select null, max(created_at, updated_at) from client where id = ${clientId}
      union all select null, max(created_at, updated_at) from dog where client_id = ${clientId}
      union all select day, max(created_at, updated_at) from visit where dog_id in of_client
      union all select day, max(created_at, updated_at) from session_result where dog_id in of_client
      union all select day, max(created_at, updated_at) from weighing where dog_id in of_client
      union all select made_on, created_at from plan where dog_id in of_client
      union all select decided_on, created_at from food_decision where dog_id in of_client
      union all select null, attachment.created_at from attachment
        join visit on visit.id = attachment.visit_id where visit.dog_id in of_client)
    select max(day) as day, max(instant) as instant from entry`
    .execute(db)
    .then(({ rows }) => rows[0]!);
}

/**
 * How long an owner's records are to be kept: the practice's retention period, counted from the
 * latest entry in any record of the owner, whatever of them is to be removed (D: the longest way).
 */
export async function keepingOf(db: Db, clientId: string, today: string): Promise<Keeping> {
  const { day, instant } = await latestOf(db, clientId);
  const entered = instant === null ? today : localDay(new Date(instant));
  const latestEntryDay = day !== null && day > entered ? day : entered;
  const years = await retentionYears(db);
  const keepUntil = addMonths(latestEntryDay, MONTHS_A_YEAR * years);
  return { latestEntryDay, keepUntil, insideRetention: years > 0 && today <= keepUntil };
}

export const keepingHandlers: Handlers<'keeping/get' | 'keeping/set'> = {
  'keeping/get': async (context) => ({ retentionYears: await retentionYears(context.db) }),
  'keeping/set': async (context: Context, { retentionYears: years }) => {
    await context.db.updateTable('deskSetting').set({ retentionYears: years }).execute();
    return { retentionYears: years };
  },
};
