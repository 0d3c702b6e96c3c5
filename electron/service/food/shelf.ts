import type { OwnFoodInput } from '../../contract/calls/food.ts';
import { folded, type Shelf } from '../../contract/food/shelf.ts';
import type { Handlers } from '../database/context.ts';
import { putRow } from '../database/rows.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

const byText = (a: string, b: string): number => a.localeCompare(b);

/** The practice's own foods and note phrases. */
export async function readShelf(db: Db): Promise<Shelf> {
  const foods = await db
    .selectFrom('ownFood')
    .select(['id', 'name', 'kind', 'kcalPer100g'])
    .execute();
  const phrases = await db.selectFrom('ownPhrase').select(['id', 'text']).execute();
  return {
    foods: foods.sort((a, b) => byText(a.name, b.name)),
    phrases: phrases.sort((a, b) => byText(a.text, b.text)),
  };
}

/** @throws Refusal (input) when another one of its kind has the name */
async function assertOwnName(
  db: Db,
  id: string | null,
  { name, kind }: OwnFoodInput,
): Promise<void> {
  const { foods } = await readShelf(db);
  const other = foods.find(
    (food) => food.id !== id && food.kind === kind && folded(food.name) === folded(name),
  );
  if (other !== undefined) throw badField('food.name', `${other.name} is kept already.`);
}

/** @throws Refusal (input) when it is kept already */
async function assertNewText(db: Db, id: string | null, text: string): Promise<void> {
  const { phrases } = await readShelf(db);
  const isThere = phrases.some((phrase) => phrase.id !== id && phrase.text === text);
  if (isThere) throw badField('text', 'This phrase is kept already.');
}

type ShelfCall = 'shelf/keepFood' | 'shelf/dropFood' | 'shelf/keepPhrase' | 'shelf/dropPhrase';

/** What was removed elsewhere while it was being changed here is kept again: nothing typed is lost. */
export const shelfHandlers: Handlers<ShelfCall> = {
  'shelf/keepFood': (context, { id, food }) =>
    context.db.transaction().execute(async (db) => {
      await assertOwnName(db, id, food);
      const row = { ...food, id: id ?? context.newId(), updatedAt: context.instant() };
      await putRow(db, 'ownFood', 'id', row);
      return readShelf(db);
    }),
  'shelf/dropFood': async ({ db }, { id }) => {
    await db.deleteFrom('ownFood').where('id', '=', id).execute();
    return readShelf(db);
  },
  'shelf/keepPhrase': (context, { id, text }) =>
    context.db.transaction().execute(async (db) => {
      await assertNewText(db, id, text);
      const row = { text, id: id ?? context.newId(), updatedAt: context.instant() };
      await putRow(db, 'ownPhrase', 'id', row);
      return readShelf(db);
    }),
  'shelf/dropPhrase': async ({ db }, { id }) => {
    await db.deleteFrom('ownPhrase').where('id', '=', id).execute();
    return readShelf(db);
  },
};
