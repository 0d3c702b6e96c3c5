import type { Provenance } from '../figure.ts';
import { OWN } from '../origin.ts';
import { KCAL_PER_KG_CHANGE } from './balance.ts';
import { LOSS_AIM_PERCENT, LOSS_MAX_PERCENT, LOSS_MIN_PERCENT } from './corridor.ts';
import {
  because,
  GERMAN,
  HAND,
  needOf,
  runningReasons,
  STEP,
  type FoodDraft,
} from './foodDraft.ts';
import { STEP_PERCENT } from './foodStart.ts';
import type { AdjustFoodInput, FoodCase, RateCorridor } from './foodTypes.ts';
import { forecast } from './steer.ts';
import { STABLE_DAYS, STABLE_PERCENT, type TrendRate } from './trend.ts';
import { weighingsUntil } from './waiting.ts';

/** Rate of gain kept, % of initial weight per week; nothing is published, so half the loss corridor (D). */
export const GAIN_CORRIDOR_PERCENT = { min: 0.25, aim: 0.5, max: 1 } as const;

interface Course {
  readonly corridor: RateCorridor;
  /** Code of the reason where the rate lies above the corridor, and below it. */
  readonly codes: readonly [above: string, below: string];
  readonly provenance: Provenance;
  readonly inside: string;
  readonly above: string;
  readonly below: string;
}

const LOSS_COURSE: Course = {
  corridor: { min: -LOSS_MAX_PERCENT, aim: -LOSS_AIM_PERCENT, max: -LOSS_MIN_PERCENT },
  codes: ['loses-slowly', 'loses-fast'],
  provenance: HAND,
  inside: 'The dog loses inside the corridor of 0.5–2 % of its initial weight a week',
  above: 'The dog loses more slowly than 0.5 % of its initial weight a week',
  below: 'The dog loses faster than 2 % of its initial weight a week',
};

const GAIN_COURSE: Course = {
  corridor: GAIN_CORRIDOR_PERCENT,
  codes: ['gains-fast', 'gains-slowly'],
  provenance: OWN,
  inside: 'The dog gains inside the corridor of 0.25–1 % a week',
  above: 'The dog gains faster than 1 % a week',
  below: 'The dog gains more slowly than 0.25 % a week',
};

/** Under 1 % in all counts as stable, so that is the corridor's width over the time spanned. */
function holdCourse(spanDays: number): Course {
  const width = STABLE_PERCENT / Math.max(1, spanDays / 7);
  return {
    corridor: { min: -width, aim: 0, max: width },
    codes: ['too-high', 'too-low'],
    provenance: GERMAN,
    inside: 'The weight holds',
    above: 'The weight drifts upwards by more than 1 %',
    below: 'The weight drifts downwards by more than 1 %',
  };
}

function courseOf(input: AdjustFoodInput): Course {
  if (input.goal === 'lose') return LOSS_COURSE;
  return input.goal === 'gain' ? GAIN_COURSE : holdCourse(input.trend?.spanDays ?? 0);
}

/**
 * The next ration on a running plan. A change needs the whole 90 % interval of the rate outside the
 * corridor; while only the point lies outside, it waits and says for how many weighings.
 */
export function follow(input: FoodCase): FoodDraft {
  const course = courseOf(input);
  const { corridor, provenance } = course;
  const rate = rateOfInitial(input);
  if (rate === null || (input.currentKcal ?? 0) <= 0) {
    const missing = rate === null ? 'a weighing on another day since the ration began' : 'the diet';
    return wait(input, missing);
  }
  const told = (text: string) => `${text}: ${rateText(rate)}.`;
  const params = { rate: round(rate.percentPerWeek), low: round(rate.low), high: round(rate.high) };
  if (rate.low > corridor.max) {
    return step(input, -1, corridor, [
      because(course.codes[0], told(course.above), provenance, params),
    ]);
  }
  if (rate.high < corridor.min) {
    const reasons = [because(course.codes[1], told(course.below), provenance, params)];
    return step(input, 1, corridor, [...reasons, ...earlyWater(input)]);
  }
  const inside = rate.percentPerWeek >= corridor.min && rate.percentPerWeek <= corridor.max;
  if (!inside) return wait(input, moreWeighings(input, rate, corridor));
  const reasons = [because('inside', told(course.inside), provenance, params)];
  const settled = rate.low >= corridor.min && rate.high <= corridor.max;
  return withRunning(input, {
    verdict: 'keep',
    kcalPerDay: input.currentKcal!,
    reasons,
    settled,
    formula: { formula: 'present ration', ...OWN },
  });
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** One decimal, with a true minus. */
const signed = (value: number): string => value.toFixed(1).replace('-', '−');

function rateText({ percentPerWeek, low, high }: TrendRate): string {
  return `${signed(percentPerWeek)} % a week, 90 % interval ${signed(low)} to ${signed(high)}`;
}

/** The trend is in % of the weight where its line starts; the corridor in % of the plan's start. */
function rateOfInitial(input: AdjustFoodInput): TrendRate | null {
  const { trend } = input;
  if (trend === undefined) return null;
  const { percentPerWeek, low, high } = trend;
  if (percentPerWeek === null || low === null || high === null) return null;
  const start = trend.line[0]!.kg;
  const scale = start / (input.initialWeightKg ?? start);
  return { percentPerWeek: percentPerWeek * scale, low: low * scale, high: high * scale };
}

function moreWeighings(input: AdjustFoodInput, rate: TrendRate, corridor: RateCorridor): string {
  const bound = rate.percentPerWeek > corridor.max ? corridor.max : corridor.min;
  const count = weighingsUntil(input.trend!, Math.abs(rate.percentPerWeek - bound));
  const many =
    count === null
      ? 'more weighings'
      : count === 1
        ? 'one more weighing'
        : `about ${count} more weighings`;
  const { percentPerWeek, low, high } = rate;
  const meant = `${signed(corridor.min)} to ${signed(corridor.max)} %`;
  return `${many} two weeks apart. Those so far say ${signed(percentPerWeek)} % a week, outside what is meant (${meant}); they scatter from ${signed(low)} to ${signed(high)} %, so that the true rate may lie inside`;
}

export function wait(input: AdjustFoodInput, waitingFor: string): FoodDraft {
  const { currentKcal = 0 } = input;
  return withRunning(input, {
    verdict: 'wait',
    kcalPerDay: currentKcal > 0 ? currentKcal : null,
    reasons: [because('wait', `Nothing is changed yet. Waiting for ${waitingFor}.`, OWN)],
    waitingFor,
    formula: { formula: 'present ration', ...OWN },
  });
}

export function earlyWater(input: AdjustFoodInput) {
  if (input.goal !== 'lose' || (input.trend?.spanDays ?? 0) > STABLE_DAYS) return [];
  return [because('early-water', 'The first two weeks also carry water and gut fill.', HAND)];
}

/** Food for running that the present ration does not hold yet; a loss plan is left as it is. */
export function withRunning(input: AdjustFoodInput, draft: FoodDraft): FoodDraft {
  const planned = input.runningKcalPerDay ?? 0;
  const extra = planned - (input.runningInRationKcalPerDay ?? planned);
  if (input.goal === 'lose' || draft.kcalPerDay === null || Math.round(extra) === 0) return draft;
  return {
    ...draft,
    verdict: 'change',
    kcalPerDay: Math.max(0, draft.kcalPerDay + extra),
    reasons: [...draft.reasons, ...runningReasons(extra)],
    formula: { formula: 'present ration and the change in running', ...OWN },
  };
}

/**
 * A heavy dog, from 6 of 9, that is to hold its weight never gets more than it eats now, neither for
 * a weight that falls nor for running (D).
 */
export function noMoreIfHeavy(input: FoodCase, draft: FoodDraft): FoodDraft {
  const { goal, growing, bcs = 5, currentKcal: present = 0, state } = input;
  if (goal !== 'hold' || growing === true || bcs < 6 || present <= 0) return draft;
  if ((draft.kcalPerDay ?? 0) <= present) return draft;
  const text = `Body condition ${bcs} of 9: a heavy dog that is to hold its weight gets no more than it eats now.`;
  // Running that begins is not fed here: it takes weight off.
  const running = input.runningKcalPerDay ?? 0;
  return {
    verdict: draft.verdict === 'start' ? 'start' : 'keep',
    kcalPerDay: present,
    reasons: [because('kept-heavy', text, OWN, { bcs })],
    formula: { formula: 'present ration', ...OWN },
    ...(state === undefined
      ? {}
      : { forecast: forecast(state, present, { initialKg: input.targetWeightKg, running }) }),
  };
}

/** One step down (−1) or up (+1), sized by the dog's own record within 5–20 %. */
function step(
  input: FoodCase,
  direction: 1 | -1,
  corridor: RateCorridor,
  why: FoodDraft['reasons'],
): FoodDraft {
  const present = input.currentKcal!;
  const { percent, own } = stepPercent(input, direction, corridor);
  const rounded = Math.round(percent * 10) / 10;
  const text = `${direction < 0 ? 'Less' : 'More'} food by ${rounded} %${own ? ', sized by the dog’s own record' : ''}.`;
  const sign = direction < 0 ? '−' : '+';
  const log =
    'Before less is fed, go through the diet history again: what the dog gets beside the bowl.';
  return {
    verdict: 'change',
    kcalPerDay: present * (1 + (direction * percent) / 100),
    reasons: [
      ...why,
      because('step', text, STEP, { percent: rounded }),
      ...(direction < 0 ? [because('recheck-diet', log, HAND)] : []),
    ],
    formula: { formula: `present ration ${sign} ${rounded} %`, ...STEP },
  };
}

function stepPercent(
  input: FoodCase,
  direction: 1 | -1,
  corridor: RateCorridor,
): { readonly percent: number; readonly own: boolean } {
  const { kcal, own } = needOf(input);
  if (!own) return { percent: STEP_PERCENT.usual, own };
  const present = input.currentKcal!;
  const initialKg = input.initialWeightKg ?? input.weightKg;
  const running = input.runningKcalPerDay ?? 0;
  const forAim = kcal + running + (KCAL_PER_KG_CHANGE * corridor.aim * initialKg) / 700;
  const wanted = direction * 100 * (forAim / present - 1);
  // The trend since the last ration and the whole record disagree: the usual step decides.
  if (wanted <= 0) return { percent: STEP_PERCENT.usual, own: false };
  return { percent: Math.min(STEP_PERCENT.max, Math.max(STEP_PERCENT.min, wanted)), own };
}
