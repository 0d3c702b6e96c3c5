import type { Programme } from '../../core/training.ts';
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

/** The words of what a plan trains: those of a running plan speak of walks in a walking programme. */
export function wordsFor(words: OwnerWords, programme: Programme): OwnerWords {
  if (programme === 'running') return words;
  const { plan, walking } = words;
  const { minutes, nextMild, nextStop, vetMay, bands, ...own } = walking;
  const [fine, , longer, lame] = plan.nextSigns;
  const [goOn, again, back] = plan.nextSteps;
  const [, ...questions] = plan.vetQuestions;
  return {
    ...words,
    heat: { ...words.heat, bands },
    plan: {
      ...plan,
      ...own,
      effortMeans: '',
      columns: { ...plan.columns, minutes },
      nextSigns: [fine, nextMild, longer, lame],
      nextSteps: [goOn, again, back, nextStop],
      vetQuestions: [vetMay, ...questions],
    },
  };
}

/** The words for a dog that may not run: no line speaks of a run or a plan that it does not have. */
export function stoppedWords(words: OwnerWords): OwnerWords {
  const { plan, stopped } = words;
  const [, ...questions] = plan.vetQuestions;
  const { stopIntro, vetMay } = stopped;
  return { ...words, plan: { ...plan, stopIntro, vetQuestions: [vetMay, ...questions] } };
}
