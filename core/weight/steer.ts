import { referralFloor } from '../food/floors.ts';
import { KCAL_PER_KG_CHANGE } from './balance.ts';
import type { AdjustFoodInput, Forecast } from './foodTypes.ts';
import type { WeightState } from './weightState.ts';

/** Rates steered to and left alone, % of the first weight a week; negative when losing. */
interface Steering {
  readonly aim: number;
  /** Slowest and fastest predicted rate at which the ration stays: the dead band. */
  readonly slow: number;
  readonly fast: number;
}

/** Loss: 1.2 % a week, left alone from 0.7 to 1.7 %, well inside the published 0.5–2 % (D). */
const LOSS_STEERING: Steering = { aim: -1.2, slow: -0.7, fast: -1.7 };
/**
 * Near the target the loss slows: no faster than brings the dog to its target in this many weeks, and
 * the ration stays only while it would not carry it `past` % of the first weight under it by then (D).
 */
const ARRIVAL = { weeks: 4, past: 1 } as const;
/** A ration within this of the one wanted stays, %: losing, and holding the target (D). */
export const SAME_PERCENT = { losing: 5, holding: 8 } as const;
/** The target weight is steered to over this time (D). */
const HOLD_DAYS = 70;
/** Under the target food is added from here, above it less is fed only from here, % (D). */
export const HOLD_BAND_PERCENT = { under: 2, above: 3 } as const;
/** Largest step in one go, % (M); at the target the ration may go up by as much. */
const MOST_STEP = { losing: 20, holding: 10, arriving: 20 } as const;
const Z90 = 1.6448536269514722;

/**
 * Why a ration that is to hold the weight stays: the change is too small to be worth it, the weight is
 * too near the target for less food, or the dog comes down to its target by itself.
 */
export type Kept = 'kept-little' | 'kept-near' | 'kept-falling';

/** What the policy makes of the record. */
export interface Steered {
  readonly kcalPerDay: number;
  /** −1 less food, 0 as it is, 1 more. */
  readonly direction: -1 | 0 | 1;
  readonly atFloor: boolean;
  /** True where the rate is as wanted, but would carry the dog past a target that is near. */
  readonly arriving: boolean;
  /** Why a ration that is to hold the weight stays; null where it changes, and on a plan to lose. */
  readonly kept: Kept | null;
  /** What the present and the proposed ration are expected to do. */
  readonly present: Forecast;
  readonly proposed: Forecast;
}

/** The expected rate on a ration, with its 90 % interval. */
export function forecast(
  { kg, need, needSd }: WeightState,
  kcalPerDay: number,
  { initialKg = kg, running = 0 }: { readonly initialKg?: number; readonly running?: number } = {},
): Forecast {
  const scale = 700 / (KCAL_PER_KG_CHANGE * initialKg);
  const percentPerWeek = (kcalPerDay - running - need) * scale;
  const half = Z90 * needSd * scale;
  return {
    kcalPerDay,
    percentPerWeek,
    low: percentPerWeek - half,
    high: percentPerWeek + half,
  };
}

/** The ration for a rate, kcal/day; the inverse of `forecast`. */
export function rationFor(
  state: WeightState,
  percentPerWeek: number,
  { initialKg, running }: { readonly initialKg: number; readonly running: number },
): number {
  return state.need + running + (percentPerWeek * KCAL_PER_KG_CHANGE * initialKg) / 700;
}

const within = (value: number, present: number, percent: number): number =>
  Math.min(present * (1 + percent / 100), Math.max(present * (1 - percent / 100), value));

/** The rates steered to so far from the target: as ever, and slower from about a twentieth above it. */
function lossSteering(kg: number, targetKg: number, initialKg: number): Steering {
  const excess = (100 * (kg - targetKg)) / initialKg;
  const { aim, slow, fast } = LOSS_STEERING;
  return {
    aim: Math.min(slow, Math.max(aim, -excess / ARRIVAL.weeks)),
    slow,
    fast: Math.max(fast, -(excess + ARRIVAL.past) / ARRIVAL.weeks),
  };
}

/**
 * The ration of a running plan to lose: for 1.2 % of the first weight a week, less near the target,
 * changed only when the predicted rate leaves 0.7–1.7 % and the change is worth 5 %, by 20 % at
 * most, never from above the floor to below it.
 */
export function steerLoss(input: AdjustFoodInput, state: WeightState): Steered {
  const present = input.currentKcal!;
  const body = {
    initialKg: input.initialWeightKg ?? input.weightKg,
    running: input.runningKcalPerDay ?? 0,
  };
  const now = forecast(state, present, body);
  const floor = referralFloor(input.targetWeightKg);
  const { aim, slow, fast } = lossSteering(state.kg, input.targetWeightKg, body.initialKg);
  const inside = now.percentPerWeek <= slow && now.percentPerWeek >= fast;
  const wanted = within(rationFor(state, aim, body), present, MOST_STEP.losing);
  const next = wanted < present ? Math.min(present, Math.max(floor, wanted)) : wanted;
  const same = Math.abs(next / present - 1) * 100 < SAME_PERCENT.losing && next > floor;
  const kcalPerDay = inside || same ? present : next;
  return {
    kcalPerDay,
    direction: Math.sign(kcalPerDay - present) as Steered['direction'],
    atFloor: !inside && now.percentPerWeek > slow && kcalPerDay <= floor + 0.5,
    arriving: now.percentPerWeek < fast && now.percentPerWeek >= LOSS_STEERING.fast,
    kept: null,
    present: now,
    proposed: forecast(state, kcalPerDay, body),
  };
}

/**
 * The ration at a target: towards the weight itself, over ten weeks. More food where the weight is
 * on its way under the target; less only from 3 % above it and not falling.
 */
export function steerHold(input: AdjustFoodInput, state: WeightState): Steered {
  const present = input.currentKcal!;
  const { targetWeightKg } = input;
  const planned = input.runningKcalPerDay ?? 0;
  // Food for running that the ration does not hold yet is added to a ration to hold once it is steered.
  const running = input.goal === 'lose' ? planned : (input.runningInRationKcalPerDay ?? planned);
  const body = { initialKg: targetWeightKg, running };
  const now = forecast(state, present, body);
  const off = 100 * (state.kg / targetWeightKg - 1);
  const steering =
    state.need + body.running + (KCAL_PER_KG_CHANGE * (targetWeightKg - state.kg)) / HOLD_DAYS;
  const worth = Math.abs(steering / present - 1) * 100 > SAME_PERCENT.holding;
  const arriving = now.percentPerWeek < -0.5;
  const mayRise = steering > present && off < HOLD_BAND_PERCENT.under;
  const mayFall = steering < present && off > HOLD_BAND_PERCENT.above && now.percentPerWeek > -0.1;
  const most = arriving ? MOST_STEP.arriving : MOST_STEP.holding;
  const kcalPerDay = worth && (mayRise || mayFall) ? within(steering, present, most) : present;
  const near = steering < present && off <= HOLD_BAND_PERCENT.above;
  return {
    kcalPerDay,
    direction: Math.sign(kcalPerDay - present) as Steered['direction'],
    atFloor: false,
    arriving: false,
    kept:
      kcalPerDay !== present ? null : !worth ? 'kept-little' : near ? 'kept-near' : 'kept-falling',
    present: now,
    proposed: forecast(state, kcalPerDay, body),
  };
}
