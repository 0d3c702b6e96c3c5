import {
  underWay,
  type PresentProgramme,
  type PresentState,
  type RampWeek,
} from '../../core/index.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { Shown } from '../units/shown.ts';

const READY = {
  'ready to start': 'is ready to run',
  'walking only': 'should only walk for now',
  'vet first': 'should see the vet before running',
} as const;

/** What keeps a dog with a plan from its next outing. */
const WAITING = {
  vet: 'The plan waits for the vet.',
  walking: 'The plan waits: walking only until what stands against running is settled.',
  'walk base': 'The plan waits: the walk base has to be passed again before any running.',
  outings: 'The plan waits: its days are over, and not all of its outings are told.',
} as const;

const PLAN_WORDS = { running: 'plan', walking: 'walking programme' } as const;

/** May it run, in one sentence. */
export const readySentence = (name: string, { mayRun }: PresentState<unknown, unknown>): string =>
  `${name} ${READY[mayRun]}.`;

/** The week of today of a plan that goes on; one that waits or stopped has none. */
export const weekOfToday = ({ state }: Pick<DogFile, 'state'>): RampWeek | null =>
  state === null ? null : (underWay(state.programme)?.week ?? null);

/** The last weight against the target, and the condition, as the start of a sentence. */
export function weightSentence(
  { weight, targetKg }: PresentState<unknown, unknown>,
  bcs: number | null,
  shown: Shown,
): string {
  const condition = bcs === null ? '' : `; condition ${bcs} of 9`;
  return `${shown.amount('weight', weight.kg)}${againstText(weight, targetKg, shown)}${condition}.`;
}

function againstText(
  { kg, against }: PresentState<unknown, unknown>['weight'],
  targetKg: number | null,
  shown: Shown,
): string {
  if (against === 'no target' || targetKg === null) return '';
  const target = shown.amount('weight', targetKg);
  if (against === 'at target') return `, at the target of ${target}`;
  return `, ${shown.gap('weight', kg, targetKg)} ${against} the target of ${target}`;
}

/** Which day something is due, with what the reader would have to work out: "today", "overdue". */
export function dueText(day: string, today: string, shown: Shown): string {
  if (day === today) return 'today';
  return day < today ? `${shown.weekdayDay(day)}, overdue` : shown.weekdayDay(day);
}

/** What becomes of the plan, in one sentence; empty without one. */
export function planSentence(programme: PresentProgramme<unknown>, shown: Shown): string {
  switch (programme.kind) {
    case 'none':
      return '';
    case 'waiting':
      return WAITING[programme.for];
    case 'stopped':
      return 'Running is stopped.';
    case 'finished':
      return 'The plan has come to its end.';
    case 'walking':
    case 'running': {
      const what = PLAN_WORDS[programme.kind];
      if (programme.week !== null) {
        return `Week ${programme.week.number} of ${programme.lastWeek} of the ${what}.`;
      }
      return programme.next === null
        ? ''
        : `The ${what} begins on ${shown.weekdayDay(programme.next.day)}.`;
    }
  }
}
