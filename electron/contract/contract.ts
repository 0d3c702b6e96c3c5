import type { z } from 'zod';
import { appCalls } from './calls/app.ts';
import { backupCalls } from './calls/backup.ts';
import { binCalls } from './calls/bin.ts';
import { dogCalls } from './calls/dogs.ts';
import { exchangeCalls } from './calls/exchange.ts';
import { fileCalls } from './calls/files.ts';
import { foodCalls } from './calls/food.ts';
import { goesHomeCalls } from './calls/goesHome.ts';
import { handoutCalls } from './calls/handouts.ts';
import { historyCalls } from './calls/history.ts';
import { lockCalls } from './calls/lock.ts';
import { planCalls } from './calls/plans.ts';
import { practiceCalls } from './calls/practice.ts';
import { runCalls } from './calls/runs.ts';
import { visitCalls } from './calls/visits.ts';
import { weighingCalls } from './calls/weighings.ts';
import { workCalls } from './calls/work.ts';
import type { Answer } from './errors.ts';

export type * from './results.ts';

/**
 * The one list of what the front end may ask of the service. Both transports carry exactly these
 * calls; the service parses every input with the schema given here.
 */
export const contract = {
  ...appCalls,
  ...dogCalls,
  ...visitCalls,
  ...runCalls,
  ...binCalls,
  ...weighingCalls,
  ...historyCalls,
  ...practiceCalls,
  ...foodCalls,
  ...planCalls,
  ...handoutCalls,
  ...goesHomeCalls,
  ...fileCalls,
  ...exchangeCalls,
  ...backupCalls,
  ...lockCalls,
  ...workCalls,
} as const;

type Contract = typeof contract;
export type CallName = keyof Contract;
export type InputOf<N extends CallName> = z.input<Contract[N]['input']>;
export type ParsedOf<N extends CallName> = z.output<Contract[N]['input']>;
export type ResultOf<N extends CallName> = Exclude<Contract[N]['result'], undefined>;

/** What both transports and the service itself offer. */
export interface Caller {
  call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>>;
}
