import type { Practice } from '../contract/records.ts';
import type { Desk, Handlers } from './context.ts';

/** The settings of the open practice; null before they were first saved. */
export async function readPractice(desk: Desk): Promise<Practice | null> {
  const row = await desk.db.selectFrom('practice').selectAll().executeTakeFirst();
  if (row === undefined) return null;
  const { id: _id, updatedAt: _updatedAt, ...practice } = row;
  return practice;
}

export const practiceHandlers: Handlers<'practice/save'> = {
  'practice/save': async (desk, practice) => {
    const row = { ...practice, updatedAt: desk.instant() };
    await desk.db
      .insertInto('practice')
      .values({ id: 1, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    return practice;
  },
};
