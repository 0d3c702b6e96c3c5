import { addDays } from '../day.ts';
import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { because, HAND, refer, STEP, type FoodDraft } from './foodDraft.ts';
import { earlyWater, wait, withRunning } from './foodFollow.ts';
import type { FoodCase } from './foodTypes.ts';
import {
  HOLD_BAND_PERCENT,
  SAME_PERCENT,
  steerHold,
  steerLoss,
  type Kept,
  type Steered,
} from './steer.ts';
import { type Forecast } from './foodTypes.ts';
import type { WeightState } from './weightState.ts';

/** A weighing this far from what was expected of it is weighed again before anything is decided, % (D). */
const WEIGH_AGAIN_PERCENT = 4;
/** A ration is given this long before it is changed (S: weigh every two weeks). */
const TRIAL_DAYS = 12;
/** The vet is asked at once when the floor is not enough; from then on it stays as a note (D). */
const SAID_DAYS = 28;

/** The next ration by what is predicted; null where the aim or the record leave nothing to predict. */
export function steer(input: FoodCase): FoodDraft | null {
  const { state, currentKcal = 0, goal } = input;
  const weighedOnIt = input.trend?.percentPerWeek != null;
  if (state === undefined || currentKcal <= 0 || goal === 'gain' || !weighedOnIt) return null;
  if (Math.abs(state.surprisePercent) > WEIGH_AGAIN_PERCENT) return weighAgain(input, state);
  const holding = goal === 'hold' || reached(input, state);
  const steered = holding ? steerHold(input, state) : steerLoss(input, state);
  const early = (input.daysOnRation ?? TRIAL_DAYS) < TRIAL_DAYS;
  if (early && steered.direction !== 0) return tooEarly(input, steered);
  return holding ? held(input, state, steered) : losing(input, steered);
}

/** Once within 2 % of the target the plan holds it, until the dog is a tenth above again. */
function reached({ targetWeightKg }: FoodCase, { lowestKg, kg }: WeightState): boolean {
  const near = targetWeightKg * (1 + HOLD_BAND_PERCENT.under / 100);
  return kg <= near || (lowestKg <= near && kg < targetWeightKg * 1.1);
}

function weighAgain(input: FoodCase, { surprisePercent }: WeightState): FoodDraft {
  const size = Math.abs(surprisePercent).toFixed(1);
  return wait(
    input,
    `a second weighing until ${addDays(input.day, 7)}: the last one lies ${size} % from what was expected, which is more often a slip than a dog`,
  );
}

function tooEarly(input: FoodCase, { present }: Steered): FoodDraft {
  const day = addDays(input.day, 14 - (input.daysOnRation ?? 0));
  return {
    ...wait(input, `a weighing on ${day}, when the present ration has been fed for two weeks`),
    forecast: present,
  };
}

/** The rate in words: no sign, no false precision. */
function rateWords({ percentPerWeek, low, high }: Forecast): string {
  const size = (value: number) => Math.abs(value).toFixed(1);
  const verb = percentPerWeek < 0 ? 'lose' : 'gain';
  const [least, most] = percentPerWeek < 0 ? [high, low] : [low, high];
  const from = Math.sign(least) === Math.sign(most) ? size(least) : '0';
  return `${verb} about ${size(percentPerWeek)} % a week (${from} to ${size(most)} %)`;
}

function predicted(proposed: Forecast): Reason {
  const percent = Math.round(10 * proposed.percentPerWeek) / 10;
  const text = `On this ration the dog is expected to ${rateWords(proposed)}.`;
  return because('expected-rate', text, OWN, { percent });
}

function losing(input: FoodCase, steered: Steered): FoodDraft {
  const { present, proposed, direction, atFloor, kcalPerDay } = steered;
  const news = (input.daysOnRation ?? 0) < SAID_DAYS;
  if (direction === 0 && atFloor && present.percentPerWeek > -0.5 && news) {
    return referAtFloor(present);
  }
  const percent = Math.round(1000 * Math.abs(kcalPerDay / present.kcalPerDay - 1)) / 10;
  const params = { rate: Math.round(100 * present.percentPerWeek) / 100 };
  const told = `By its record the dog would ${rateWords(present)} on the present ration`;
  const course = because(...lossCourse(steered, told), HAND, params);
  const alarm = farTooFast(input, steered);
  const step = because(
    'step',
    `${direction < 0 ? 'Less' : 'More'} food by ${percent} %, sized by the dog’s own record.`,
    STEP,
    { percent },
  );
  return {
    verdict: direction === 0 ? 'keep' : 'change',
    kcalPerDay,
    reasons: [
      course,
      ...(alarm === null ? [] : [alarm]),
      ...(direction === 0 ? [] : [step, predicted(proposed)]),
      ...(direction < 0 ? [because('recheck-diet', RECHECK, HAND)] : []),
      ...(direction > 0 ? earlyWater(input) : []),
    ],
    ...(alarm === null ? {} : { referral: alarm.text }),
    ...(atFloor ? { warnings: [AT_FLOOR] } : {}),
    settled: direction === 0 && proposed.low > -2 && proposed.high < -0.5,
    forecast: proposed,
    formula: { formula: 'need by the dog’s record − 7920 kcal per kg to lose', ...OWN },
  };
}

/** What the record says of the loss so far: code and sentence. */
function lossCourse({ direction, arriving, present }: Steered, told: string): [string, string] {
  if (direction === 0) return ['inside', `${told}: it stays.`];
  if (direction > 0) {
    return arriving
      ? ['near-target', `${told}, and would soon be under its target: it is to arrive slowly.`]
      : ['loses-fast', `${told}, too fast.`];
  }
  return present.percentPerWeek > 0.05
    ? ['gains-on-loss', `The dog gains weight on a plan to lose. ${told}.`]
    : ['loses-slowly', `${told}, too slowly.`];
}

/** A loss the vet is asked about: certain to be over 3 % a week, or over 10 % in four weeks (D). */
const FAR_TOO_FAST = { percentPerWeek: -3, in4Weeks: 10 } as const;

function farTooFast({ lostPercentIn4Weeks = 0 }: FoodCase, { present }: Steered): Reason | null {
  const { percentPerWeek, in4Weeks } = FAR_TOO_FAST;
  if (present.high > percentPerWeek && lostPercentIn4Weeks <= in4Weeks) return null;
  const text =
    'The dog loses far too fast, over 3 % a week or over 10 % in four weeks: ask the vet.';
  return because('loses-far-too-fast', text, OWN);
}

const RECHECK =
  'Before less is fed, go through the diet history again: what the dog gets beside the bowl.';
const AT_FLOOR = because(
  'at-floor',
  'This is the least that is proposed, 0.8 × resting energy of the target weight: tell the vet.',
  OWN,
);

function referAtFloor(present: Forecast): FoodDraft {
  const text = `On the least that is proposed, 0.8 × resting energy of the target weight, the dog is expected to ${rateWords(present)}: go through the diet history again; less is for the vet to decide.`;
  return refer('below-floor', text, OWN);
}

/** A weight that is held and would change by less than this a week counts as steady, % (D). */
const STEADY_PERCENT = 0.4;

/** Why a ration to hold stays, and the bound behind it, %. */
const WHY_KEPT: Readonly<Record<Kept, { readonly text: string; readonly percent: number }>> = {
  'kept-little': {
    text: `what would bring the weight to the target in ten weeks differs from it by under ${SAME_PERCENT.holding} %, which is not worth a change.`,
    percent: SAME_PERCENT.holding,
  },
  'kept-near': {
    text: `less is fed only from ${HOLD_BAND_PERCENT.above} % above the target, and the weighings so far do not put the dog there. The next one tells.`,
    percent: HOLD_BAND_PERCENT.above,
  },
  'kept-falling': {
    text: 'the dog comes down to the target by itself.',
    percent: HOLD_BAND_PERCENT.above,
  },
};

/** The owner is told why the ration stays where the weight would not. */
function heldCode({ goal }: FoodCase, { direction, kept }: Steered, steady: boolean): string {
  if (direction < 0) return 'too-high';
  if (goal === 'lose') return 'target-reached';
  if (kept === null) return 'too-low';
  return steady ? 'inside' : kept;
}

function held(input: FoodCase, state: WeightState, steered: Steered): FoodDraft {
  const { kcalPerDay, direction, kept, present, proposed } = steered;
  const off = Math.round(1000 * (state.kg / input.targetWeightKg - 1)) / 10;
  const where =
    Math.abs(off) < 0.5
      ? 'The weight is at the target'
      : `The weight is ${Math.abs(off)} % ${off < 0 ? 'under' : 'above'} the target`;
  const told = `${where}, and on the present ration the dog would ${rateWords(present)}.`;
  const percent = Math.round(1000 * Math.abs(kcalPerDay / present.kcalPerDay - 1)) / 10;
  const next =
    kept === null
      ? `${direction > 0 ? 'More' : 'Less'} food by ${percent} %, towards the target weight over ten weeks.`
      : `It stays: ${WHY_KEPT[kept].text}`;
  const steady = Math.abs(present.percentPerWeek) < STEADY_PERCENT;
  const course = because(heldCode(input, steered, steady), `${told} ${next}`, OWN, {
    rate: Math.round(100 * present.percentPerWeek) / 100,
    kcal: Math.round(kcalPerDay),
    ...(kept === null ? {} : { percent: WHY_KEPT[kept].percent }),
  });
  return withRunning(input, {
    verdict: direction === 0 ? 'keep' : 'change',
    kcalPerDay,
    reasons: [course, ...(direction === 0 ? [] : [predicted(proposed)])],
    settled: direction === 0 && steady,
    forecast: proposed,
    formula: {
      formula: 'need by the dog’s record, and 7920 kcal per kg to the target over 70 days',
      ...OWN,
    },
  });
}
