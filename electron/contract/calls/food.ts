import { z } from 'zod';
import { choice, id, quantity, requiredLine } from '../fields.ts';
import { OWN_FOOD_KINDS, type Shelf } from '../food/shelf.ts';
import { call } from './call.ts';

const foodInput = z.object({
  name: requiredLine('Name of the food'),
  kind: choice('Kind of food', OWN_FOOD_KINDS),
  kcalPer100g: quantity('kcalPer100g'),
});
export type OwnFoodInput = z.output<typeof foodInput>;

const foodId = id('The food');
const phraseId = id('The phrase');

/** A null id keeps something new. Each answers with the whole shelf. */
export const foodCalls = {
  /** No two foods, and no two treats, share a name. */
  'shelf/keepFood': call<Shelf>()(() => z.strictObject({ id: foodId.nullable(), food: foodInput })),
  'shelf/dropFood': call<Shelf>()(() => z.strictObject({ id: foodId })),
  'shelf/keepPhrase': call<Shelf>()(() =>
    z.strictObject({ id: phraseId.nullable(), text: requiredLine('Text of the phrase') }),
  ),
  'shelf/dropPhrase': call<Shelf>()(() => z.strictObject({ id: phraseId })),
} as const;
