import type { en } from './en.ts';

/** The same keys with any text; lists keep their length, so that no line gets lost. */
type Wording<T> = T extends string
  ? string
  : T extends readonly [infer First, ...infer Rest]
    ? readonly [Wording<First>, ...{ [I in keyof Rest]: Wording<Rest[I]> }]
    : { readonly [K in keyof T]: Wording<T[K]> };

/**
 * Sentences for core's reasons by code, with the gaps that the reason's `params` fill. Where a
 * language has none, core's English is printed.
 */
export type ReasonWords = Readonly<Record<string, string>>;

/** The wording of the owner's sheets in one language. English (`en.ts`) sets the keys. */
export type OwnerWords = Wording<Omit<typeof en, 'reasons' | 'changes'>> & {
  readonly reasons: ReasonWords;
  /** What would change a reason, by its code. */
  readonly changes: ReasonWords;
};

/** What the frame of a page needs. */
export type FrameWords = OwnerWords['frame'];
