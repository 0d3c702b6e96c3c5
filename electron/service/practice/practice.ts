import type { Practice, PracticeLogo } from '../../contract/records.ts';
import { checkLogo } from '../../../templates/logo.ts';
import type { Context, Handlers } from '../database/context.ts';
import { putRow } from '../database/rows.ts';
import { contentToKeep } from '../files/content.ts';
import { badField } from '../refuse.ts';

/** The settings of the open practice; null before they were first saved. */
export async function readPractice(context: Context): Promise<Practice | null> {
  const row = await context.db.selectFrom('practice').selectAll().executeTakeFirst();
  if (row === undefined) return null;
  const { id: _id, updatedAt: _updatedAt, ...practice } = row;
  return {
    ...practice,
    intakeSheets: JSON.parse(practice.intakeSheets) as Practice['intakeSheets'],
    followUpSheets: JSON.parse(practice.followUpSheets) as Practice['followUpSheets'],
  };
}

/** The practice's logo; null without one. */
export async function readLogo(context: Context): Promise<PracticeLogo | null> {
  const logo = context.db.selectFrom('practiceLogo').select(['mediaType', 'data']);
  return (await logo.executeTakeFirst()) ?? null;
}

export const practiceHandlers: Handlers<'practice/save' | 'practice/setLogo'> = {
  'practice/save': async (context, practice) => {
    await putRow(context.db, 'practice', 'id', {
      ...practice,
      id: 1,
      intakeSheets: JSON.stringify(practice.intakeSheets),
      followUpSheets: JSON.stringify(practice.followUpSheets),
      updatedAt: context.instant(),
    });
    return practice;
  },
  'practice/setLogo': async (context, { base64 }) => {
    if (base64 === null) {
      await context.db.deleteFrom('practiceLogo').execute();
      return null;
    }
    const check = checkLogo(new Uint8Array(Buffer.from(base64, 'base64')));
    if (!check.ok) throw badField('base64', check.problem);
    const { mediaType } = check.logo;
    // It goes onto every sheet: without the place it may have been photographed at. A drawing has none.
    const data =
      mediaType === 'image/svg+xml'
        ? check.logo.data
        : contentToKeep(Buffer.from(check.logo.data, 'base64')).content.toString('base64');
    await putRow(context.db, 'practiceLogo', 'id', { id: 1, mediaType, data });
    return { mediaType, data };
  },
};
