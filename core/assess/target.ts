import { idealWeight } from '../condition/idealWeight.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { because } from '../weight/foodDraft.ts';
import type { Weighing } from '../weight/weighing.ts';
import type { AimVisit } from './aim.ts';
import type { AssessedVisit, TargetInForce } from './types.ts';

/** What of a visit says which weight is aimed at. */
export type TargetVisit = AimVisit & Pick<AssessedVisit, 'bcs' | 'targetWeightKg'>;

/** A score older than this, or a weight this far from it, is said to be stale (D). */
const STALE_DAYS = 60;
const STALE_PERCENT = 5;
/** A later score proposes another target from this distance on, % (D): scores differ by a point. */
const APART_PERCENT = 5;

interface TargetInput {
  /** Oldest first, not empty. */
  readonly visits: readonly TargetVisit[];
  /** All weighings up to the day, oldest first, not empty. */
  readonly weighings: readonly Weighing[];
  readonly day: IsoDay;
}

/**
 * The target in force: the one the practitioner set last, else the one computed when the present aim
 * began. It is frozen there; a later score or weight only proposes another. Holding without a set
 * target means the weight the aim began with, or the target of the plan that ended there.
 * @example
 * targetInForce({ visits: sample.loss.visits, weighings: sample.weighings, day: '2026-03-30' })
 *   // => { kg: 30.77, basis: 'score', sinceDay: '2026-03-02', … }
 */
export function targetInForce(input: TargetInput): TargetInForce {
  const { visits, weighings, day } = input;
  const chosen = visits.findLast(({ targetWeightKg }) => targetWeightKg !== null);
  const kept =
    chosen === undefined
      ? computedTarget(input)
      : ({ kg: chosen.targetWeightKg!, basis: 'chosen', sinceDay: setOn(visits) } as const);
  const scored = visits.findLast(({ bcs }) => bcs !== null);
  const at = scored === undefined ? null : weightOn(weighings, scored);
  const now = weighings.at(-1)!.weightKg;
  return {
    ...kept,
    proposed: scored === undefined || at === null ? null : proposedBy(input, kept, scored, at),
    stale: scored === undefined || at === null ? null : staleness(scored, at, now, day),
  };
}

/**
 * The target that is told, kg; null where the dog is only kept at the weight it has.
 * @example
 * toldTarget({ kg: 31, basis: 'score', sinceDay: '2026-03-02', proposed: null, stale: null })
 *   // => 31
 * toldTarget({ kg: 31, basis: 'weight', sinceDay: '2026-03-02', proposed: null, stale: null })
 *   // => null
 */
export const toldTarget = ({ kg, basis }: TargetInForce): number | null =>
  basis === 'weight' ? null : kg;

type Kept = Pick<TargetInForce, 'kg' | 'basis' | 'sinceDay'>;

/** The first of the visits in a row that say the chosen target as it is now. */
function setOn(visits: readonly TargetVisit[]): IsoDay {
  const said = visits.filter(({ targetWeightKg }) => targetWeightKg !== null);
  const now = said.at(-1)!.targetWeightKg;
  const before = said.findLastIndex(({ targetWeightKg }) => targetWeightKg !== now);
  return said[before + 1]!.day;
}

function computedTarget({ visits, weighings }: TargetInput): Kept {
  const goal = visits.at(-1)!.foodGoal;
  const before = visits.findLastIndex(({ foodGoal }) => foodGoal !== goal);
  const sharing = visits.slice(before + 1);
  const begun = sharing[0]!;
  const startKg = weightOn(weighings, begun) ?? weighings[0]!.weightKg;
  if (goal === 'hold') {
    const ended = before < 0 ? null : computedTarget(upTo(visits, weighings, before));
    const near = ended !== null && Math.abs(startKg / ended.kg - 1) * 100 <= STALE_PERCENT;
    if (near && visits[before]!.foodGoal !== 'hold') return ended;
    return { kg: startKg, basis: 'weight', sinceDay: begun.day };
  }
  // A score taken before the aim began still says what it was begun for.
  const scored = sharing.find(({ bcs }) => bcs !== null);
  const earlier = visits.slice(0, before + 1).findLast(({ bcs }) => bcs !== null);
  const first = begun.bcs === null && earlier !== undefined ? earlier : scored;
  if (first === undefined) return { kg: startKg, basis: 'weight', sinceDay: begun.day };
  const weightKg = weightOn(weighings, first) ?? startKg;
  const { mid } = idealWeight({ weightKg, bcs: first.bcs! });
  return { kg: mid, basis: 'score', sinceDay: first === earlier ? begun.day : first.day };
}

function upTo(
  visits: readonly TargetVisit[],
  weighings: readonly Weighing[],
  index: number,
): TargetInput {
  return { visits: visits.slice(0, index + 1), weighings, day: visits[index]!.day };
}

/** The weight of a visit, else the latest up to its day; null before any. */
function weightOn(weighings: readonly Weighing[], visit: TargetVisit): number | null {
  return visit.weightKg ?? weighings.findLast(({ day }) => day <= visit.day)?.weightKg ?? null;
}

function proposedBy(
  { visits }: TargetInput,
  kept: Kept,
  scored: TargetVisit,
  weightKg: number,
): TargetInForce['proposed'] {
  if (visits.at(-1)!.foodGoal === 'hold' && kept.basis !== 'chosen') return null;
  if (scored.day <= kept.sinceDay) return null;
  const { mid } = idealWeight({ weightKg, bcs: scored.bcs! });
  if (100 * Math.abs(mid / kept.kg - 1) < APART_PERCENT) return null;
  return { kg: mid, bcs: scored.bcs!, day: scored.day };
}

function staleness(
  scored: TargetVisit,
  scoredKg: number,
  weightKg: number,
  day: IsoDay,
): Reason | null {
  const days = dayNumber(day, 'day') - dayNumber(scored.day, 'visit');
  const percent = Math.round(1000 * (weightKg / scoredKg - 1)) / 10;
  if (days > STALE_DAYS) {
    const text = `The condition score is ${days} days old: score again before the target is judged by it.`;
    return because('score-old', text, OWN, { days });
  }
  if (Math.abs(percent) < STALE_PERCENT) return null;
  const text = `Since the condition was scored the weight changed by ${Math.abs(percent)} %: score again before the target is judged by it.`;
  return because('score-weight-apart', text, OWN, { percent: Math.abs(percent) });
}
