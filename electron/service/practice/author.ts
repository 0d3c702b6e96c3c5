import type { Db } from '../database/schema.ts';

/** Initials of the practitioner at the desk; empty where none is chosen. */
export async function authorNow(db: Db): Promise<string> {
  const row = await db
    .selectFrom('deskSetting')
    .innerJoin('practitioner', 'practitioner.id', 'deskSetting.atDesk')
    .select('practitioner.initials')
    .executeTakeFirst();
  return row?.initials ?? '';
}
