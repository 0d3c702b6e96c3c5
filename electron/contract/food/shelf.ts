// What the practice keeps at hand for the next dog. A visit holds a copy, never a link: changing or
// removing something here changes no record. Free of schemas, as the front end needs it.

export const OWN_FOOD_KINDS = ['food', 'treat'] as const;

export interface OwnFood {
  readonly id: string;
  readonly name: string;
  readonly kind: (typeof OWN_FOOD_KINDS)[number];
  readonly kcalPer100g: number;
}

export interface OwnPhrase {
  readonly id: string;
  readonly text: string;
}

export interface Shelf {
  /** By name. */
  readonly foods: readonly OwnFood[];
  /** By their text. */
  readonly phrases: readonly OwnPhrase[];
}

/** A name as it is compared: two that differ in case or in how their letters are composed are one. */
export const folded = (name: string): string => name.normalize('NFC').trim().toLowerCase();

export const EMPTY_SHELF: Shelf = { foods: [], phrases: [] };
