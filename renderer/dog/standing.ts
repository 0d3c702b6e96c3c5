import type { PresentProgramme, PresentState } from '../../core/index.ts';
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

/** Where the dog stands, in two or three short sentences. */
export function standing<P>(name: string, state: PresentState<P, unknown>, shown: Shown): string {
  const { programme } = state;
  return [
    `${name} ${READY[state.mayRun]}.`,
    weightSentence(state, shown),
    planSentence(programme, shown),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function weightSentence({ weight }: PresentState<unknown, unknown>, shown: Shown): string {
  const now = shown.amount('weight', weight.kg);
  if (weight.against === 'no target') return `Weight ${now}.`;
  if (weight.against === 'at target') return `Weight ${now}, at the target.`;
  return `Weight ${now}, ${shown.amount('weight', weight.gapKg)} ${weight.against} the target.`;
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
