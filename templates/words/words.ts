import type { en } from './en.ts';

/** The same keys with any text; lists keep their length, so that no line gets lost. */
type Wording<T> = T extends string
  ? string
  : T extends readonly [infer First, ...infer Rest]
    ? readonly [Wording<First>, ...{ [I in keyof Rest]: Wording<Rest[I]> }]
    : { readonly [K in keyof T]: Wording<T[K]> };

/** The wording of the owner's sheets in one language. English (`en.ts`) sets the keys. */
export type OwnerWords = Wording<typeof en>;

/** What the frame of a page needs. */
export type FrameWords = OwnerWords['frame'];

/** Reasons come from core in English; a language gives its own sentence by code where it has one. */
export type ReasonWords = Readonly<Record<string, string>>;
