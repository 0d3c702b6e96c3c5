import type { Handlers } from './context.ts';

export const draftHandlers: Handlers<'drafts/get' | 'drafts/put' | 'drafts/drop'> = {
  'drafts/get': async (desk, { key }) =>
    (await desk.db.selectFrom('draft').selectAll().where('key', '=', key).executeTakeFirst()) ??
    null,
  'drafts/put': async (desk, { key, json }) => {
    const savedAt = desk.instant();
    await desk.db
      .insertInto('draft')
      .values({ key, json, savedAt })
      .onConflict((conflict) => conflict.column('key').doUpdateSet({ json, savedAt }))
      .execute();
    return null;
  },
  'drafts/drop': async (desk, { key }) => {
    await desk.db.deleteFrom('draft').where('key', '=', key).execute();
    return null;
  },
};
