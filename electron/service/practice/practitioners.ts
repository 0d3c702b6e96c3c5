import type { People, Practitioner, PractitionerInput } from '../../contract/calls/practice.ts';
import type { Context, Handlers } from '../database/context.ts';
import { bit } from '../../contract/records/columns.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db, PractitionerRow } from '../database/schema.ts';

const fromRow = (row: PractitionerRow): Practitioner => ({ ...row, active: row.active === 1 });

async function readPeople(db: Db): Promise<People> {
  const rows = await db
    .selectFrom('practitioner')
    .selectAll()
    .orderBy('active', 'desc')
    .orderBy('name')
    .execute();
  const chosen = await db.selectFrom('deskSetting').select('atDesk').executeTakeFirst();
  return { practitioners: rows.map(fromRow), atDesk: chosen?.atDesk ?? null };
}

/** Initials of the practitioner at the desk; empty where none is chosen. */
export async function authorNow(db: Db): Promise<string> {
  const row = await db
    .selectFrom('deskSetting')
    .innerJoin('practitioner', 'practitioner.id', 'deskSetting.atDesk')
    .select('practitioner.initials')
    .executeTakeFirst();
  return row?.initials ?? '';
}

/** The full name behind initials on an entry; null where nobody has them. */
export async function nameOf(db: Db, initials: string): Promise<string | null> {
  if (initials === '') return null;
  const row = await db
    .selectFrom('practitioner')
    .select('name')
    .where('initials', '=', initials)
    .executeTakeFirst();
  return row?.name ?? null;
}

/** Every table whose entries carry initials. */
const SIGNED = [
  'visit',
  'sessionResult',
  'plan',
  'foodDecision',
  'history',
  'weighing',
  'attachment',
] as const;

async function isSigned(db: Db, initials: string): Promise<boolean> {
  for (const table of SIGNED) {
    const entry = await db
      .selectFrom(table)
      .select('author')
      .where('author', '=', initials)
      .limit(1)
      .executeTakeFirst();
    if (entry !== undefined) return true;
  }
  return false;
}

/** @throws Refusal (input) when others have the initials, or when they would no longer be found. */
async function assertInitials(db: Db, id: string | null, initials: string): Promise<void> {
  const { practitioners } = await readPeople(db);
  const same = initials.toLowerCase();
  const other = practitioners.find(
    (entry) => entry.id !== id && entry.initials.toLowerCase() === same,
  );
  if (other !== undefined) {
    throw badField(
      'practitioner.initials',
      `Initials must be unique: ${other.initials} is ${other.name}.`,
    );
  }
  const stored = practitioners.find((entry) => entry.id === id);
  if (stored === undefined || stored.initials === initials) return;
  if (!(await isSigned(db, stored.initials))) return;
  throw badField(
    'practitioner.initials',
    `Initials must stay as they are: ${stored.initials} already stands on entries in the records.`,
  );
}

async function keep(
  context: Context,
  db: Db,
  id: string | null,
  { name, initials, active }: PractitionerInput,
): Promise<void> {
  const at = context.instant();
  const facts = { name, initials, active: bit(active), updatedAt: at };
  if (id === null) {
    await db
      .insertInto('practitioner')
      .values({ ...facts, id: context.newId(), createdAt: at })
      .execute();
    return;
  }
  await db
    .updateTable('practitioner')
    .set(facts)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('The practitioner'));
}

/** Someone who left is not at the desk; who is the only one is. */
async function settleDesk(db: Db): Promise<void> {
  const { practitioners, atDesk } = await readPeople(db);
  const active = practitioners.filter((entry) => entry.active);
  if (active.some(({ id }) => id === atDesk)) return;
  await db
    .updateTable('deskSetting')
    .set({ atDesk: active.length === 1 ? active[0]!.id : null })
    .execute();
}

type PractitionerCall = 'practitioners/list' | 'practitioners/save' | 'practitioners/atDesk';

export const practitionerHandlers: Handlers<PractitionerCall> = {
  'practitioners/list': ({ db }) => readPeople(db),
  'practitioners/save': (context, { id, practitioner }) =>
    context.db.transaction().execute(async (db) => {
      await assertInitials(db, id, practitioner.initials);
      await keep(context, db, id, practitioner);
      await settleDesk(db);
      return readPeople(db);
    }),
  'practitioners/atDesk': (context, { practitionerId }) =>
    context.db.transaction().execute(async (db) => {
      const { practitioners } = await readPeople(db);
      const chosen = practitioners.find(({ id }) => id === practitionerId);
      if (practitionerId !== null && chosen === undefined) throw notFound('The practitioner');
      if (chosen?.active === false) {
        throw badField('practitionerId', `${chosen.name} no longer works here.`);
      }
      await db.updateTable('deskSetting').set({ atDesk: practitionerId }).execute();
      return readPeople(db);
    }),
};
