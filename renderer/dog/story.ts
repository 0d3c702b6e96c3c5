import { compareLameness, underWay } from '../../core/index.ts';
import type { DogFile, FoodDecision, Visit } from '../../electron/contract/contract.ts';
import type { Shown } from '../units/shown.ts';
import { LIMB_WORDS } from '../words.ts';
import { sessionText } from '../plans/rampText.ts';

/** What changed between the last two visits, a sentence each; empty before the second visit. */
export function changesSince(file: DogFile, shown: Shown): string[] {
  const [before, now] = file.visits.slice(-2);
  if (before === undefined || now === undefined) return [];
  return [
    weightChange(before, now, shown),
    conditionChange(before, now),
    ...lamenessChanges(before, now),
    foodChange(file, before, shown),
    planChange(file, before),
  ].filter((sentence) => sentence !== '');
}

function weightChange(before: Visit, now: Visit, shown: Shown): string {
  if (before.weightKg === null || now.weightKg === null) return '';
  const kg = now.weightKg - before.weightKg;
  const size = shown.amount('weight', Math.abs(kg));
  if (size === shown.amount('weight', 0)) return `The weight is as it was.`;
  return `The weight is ${size} ${kg < 0 ? 'lower' : 'higher'}.`;
}

function conditionChange(before: Visit, now: Visit): string {
  if (before.bcs === null || now.bcs === null) return '';
  if (before.bcs === now.bcs) return `The condition score is ${now.bcs} of 9, as before.`;
  return `The condition score went from ${before.bcs} to ${now.bcs} of 9.`;
}

function lamenessChanges(before: Visit, now: Visit): string[] {
  const changes = compareLameness(
    { walk: before.lamenessWalk, trot: before.lamenessTrot },
    { walk: now.lamenessWalk, trot: now.lamenessTrot },
  );
  return changes
    .filter(({ verdict }) => verdict === 'better' || verdict === 'worse')
    .map(
      ({ gait, limb, before: then, now: today, verdict }) =>
        `Lameness at ${gait}, ${LIMB_WORDS[limb].toLowerCase()}: ${verdict}, grade ${then} to ${today} of 5.`,
    );
}

function foodChange({ foodDecisions }: DogFile, { day }: Visit, shown: Shown): string {
  const last = foodDecisions.at(-1);
  if (last === undefined || last.decidedOn <= day) return '';
  const earlier = foodDecisions.at(-2);
  const amount = ({ kcalPerDay }: FoodDecision) => shown.figure(kcalPerDay, 'kcal/day');
  const now = amount(last);
  if (earlier === undefined) return `The food was set to ${now}.`;
  const before = amount(earlier);
  return now === before
    ? `The food stays at ${now}.`
    : `The food was set to ${now}, before ${before}.`;
}

function planChange({ plans }: DogFile, before: Visit): string {
  const made = plans.filter(({ madeOn }) => madeOn > before.day);
  const last = made.at(-1);
  if (last === undefined) return '';
  return last.version === 1
    ? 'A running plan was made.'
    : `The running plan is in its version ${last.version}.`;
}

/** Something that is to happen, and when. */
export interface Coming {
  readonly day: string;
  readonly words: string;
}

const DUE_WORDS = {
  weigh: 'Weigh again',
  'last outing': 'Last outing of the plan',
  'consent ends': 'Last day of the vet’s consent',
} as const;

/** What comes next for a dog, in order of days. A weighing that is overdue comes first. */
export function comingNext({ state, weighDay }: DogFile): Coming[] {
  // Before the first visit nothing but the rhythm of weighing is due.
  if (state === null) {
    return weighDay === null ? [] : [{ day: weighDay, words: DUE_WORDS.weigh }];
  }
  const { programme } = state;
  return state.due.map(({ what, day }) => {
    if (what !== 'outing') return { day, words: DUE_WORDS[what] };
    const next = underWay(programme)?.next ?? null;
    return { day, words: `Next outing: ${next === null ? '' : sessionText(next)}` };
  });
}
