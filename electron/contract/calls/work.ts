import { z } from 'zod';
import { id } from '../fields.ts';
import { call } from './call.ts';

/** How far a long piece of work is: `done` of `total` steps, and what a step is. */
export interface WorkState {
  readonly done: number;
  readonly total: number;
  /** What is being done, in words, for example "Copying the records". */
  readonly step: string;
}

/** The name a long call is followed by; chosen by the page, new for each call. */
export const workId = id('The work');

// Both are answered at once, while the work they ask about is still going on.
export const workCalls = {
  /** Null when no such work is going on (not begun, or ended). */
  'work/state': call<WorkState | null>()(() => z.strictObject({ workId })),
  /** Asks the work to stop; what it had begun is taken back, and its call answers `cancelled`. */
  'work/cancel': call<null>()(() => z.strictObject({ workId })),
} as const;
