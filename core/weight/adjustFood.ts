import { inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { addDays, dayNumber } from '../day.ts';
import { metabolicWeight, restingEnergy } from '../energy/resting.ts';
import { figure, type FigureText, type Reason } from '../figure.ts';
import { ration, TREAT_SHARE, type Ration } from '../food/ration.ts';
import { LOSS_AIM_PERCENT, LOSS_MAX_PERCENT, LOSS_MIN_PERCENT } from './corridor.ts';
import type { AdjustFoodInput, FoodProposal, FoodVerdict } from './foodTypes.ts';
import { KCAL_PER_KG_CHANGE } from './ownEnergy.ts';

/** Usual step and its range, % of the present ration (M). */
export const STEP_PERCENT = { usual: 10, min: 5, max: 20 } as const;
/** Below this energy some nutrient fell short in every ordinary diet tested (Linder 2012, S). */
export const NUTRIENT_FLOOR_PER_KG075 = 79;
/** Below this share of RER at target weight nothing is proposed (D). */
export const REFER_BELOW_RER = 0.8;
/** First ration of a plan to gain, × RER at target: middle of the published 1.2–1.8 (S/C). */
export const GAIN_START_RER = 1.5;
/** Rate of gain kept, % of initial weight per week; nothing is published, so half the loss corridor (D). */
export const GAIN_CORRIDOR_PERCENT = { min: 0.25, aim: 0.5, max: 1 } as const;
/** A drift of this much in all is acted on while weight is to hold, % (German 2011, S). */
export const HOLD_DRIFT_PERCENT = 1;
/** Days to the next weighing: until the rate is set, and after (S). */
export const WEIGH_IN_DAYS = { settling: 14, settled: 28 } as const;

const OWN = { evidence: 'D', mark: 'D', sources: ['ownDecision'] } as const;
const HAND = { evidence: 'C', mark: 'S', sources: ['hand2010'] } as const;

interface Draft {
  readonly verdict: FoodVerdict;
  readonly kcalPerDay: number | null;
  readonly reasons: readonly Reason[];
  readonly formula?: Pick<FigureText, 'formula' | 'evidence' | 'mark' | 'sources'>;
  readonly referral?: string;
  readonly waitingFor?: string;
}

function because(
  code: string,
  text: string,
  provenance: Pick<Reason, 'evidence' | 'mark' | 'sources'>,
  params: Reason['params'] = {},
): Reason {
  return { code, text, params, ...provenance };
}

/**
 * What the dog should eat now: the first ration of a plan, a change, no change, or the vet.
 *
 * A change needs the whole 90 % interval of the trend outside the corridor, never the point alone;
 * until then the answer is `wait` and says what for. Steps are 10 % of the ration, sized by the
 * dog's own estimate within 5–20 % once its record tells more than the formula. Nothing is proposed
 * below 0.8 × RER at target weight.
 *
 * @throws RangeError for weights outside 0.1–150 kg, energies outside 1–20000 kcal/day, a score
 *   that is not 1–9, or an unknown goal
 * Sources: start and corridor of loss Hand et al. 2010 (S), step from memory, nutrient floor Linder
 * 2012 (S), referral floor and gain corridor our own choice (D).
 */
export function adjustFood(input: AdjustFoodInput): FoodProposal {
  check(input);
  const draft = referFirst(input) ?? draftFor(input);
  return finish(input, belowFloor(input, draft) ?? draft);
}

function check(input: AdjustFoodInput): void {
  dayNumber(input.day, 'day');
  oneOf('goal', input.goal, ['lose', 'hold', 'gain']);
  weightInRange('weightKg', input.weightKg);
  weightInRange('targetWeightKg', input.targetWeightKg);
  if (input.initialWeightKg !== undefined) weightInRange('initialWeightKg', input.initialWeightKg);
  if (input.bcs !== undefined) wholeInRange('bcs', input.bcs, 'of 9', { min: 1, max: 9 });
  if (input.currentKcal !== undefined) {
    inRange('currentKcal', input.currentKcal, 'kcal/day', { min: 0, max: 20000 });
  }
  if (input.runningKcalPerDay !== undefined) {
    inRange('runningKcalPerDay', input.runningKcalPerDay, 'kcal/day', { min: 0, max: 10000 });
  }
}

function refer(code: string, text: string, provenance: typeof OWN | typeof HAND): Draft {
  return {
    verdict: 'refer',
    kcalPerDay: null,
    reasons: [because(code, text, provenance)],
    referral: text,
  };
}

function referFirst(input: AdjustFoodInput): Draft | null {
  if (input.bcs !== undefined && input.bcs <= 2) {
    return refer(
      'too-thin',
      `Body condition ${input.bcs} of 9: the vet has to find the cause before the food is changed.`,
      OWN,
    );
  }
  if (input.growing === true && input.goal === 'lose') {
    return refer('growing', 'A growing dog is not put on a weight-loss ration: ask the vet.', OWN);
  }
  const losing = input.goal !== 'lose' && (input.trend?.high ?? 0) < -LOSS_AIM_PERCENT;
  if (losing) {
    return refer(
      'unexplained-loss',
      'The dog loses more than 1 % a week without a plan to lose: the vet has to find the cause.',
      OWN,
    );
  }
  return null;
}

function draftFor(input: AdjustFoodInput): Draft {
  if (input.goal === 'lose') {
    if (input.weightKg <= input.targetWeightKg) return targetReached(input);
    return input.onPlan === true ? followLoss(input) : startLoss(input);
  }
  if (input.goal === 'gain') return input.onPlan === true ? followGain(input) : startGain(input);
  return input.onPlan === true ? followHold(input) : startHold(input);
}

function startLoss(input: AdjustFoodInput): Draft {
  const kcal = restingEnergy(input.targetWeightKg);
  if (input.currentKcal !== undefined && input.currentKcal > 0 && input.currentKcal <= kcal) {
    return refer(
      'already-low',
      'The dog already eats no more than the loss ration: go through the diet history again, then ask the vet (hormones).',
      HAND,
    );
  }
  return {
    verdict: 'start',
    kcalPerDay: kcal,
    reasons: [
      because(
        'loss-start',
        'A weight-loss plan starts at the resting energy requirement of the target weight.',
        HAND,
      ),
    ],
    formula: { formula: '70 × target kg^0.75', ...HAND },
  };
}

function startGain(input: AdjustFoodInput): Draft {
  const kcal = Math.max(
    GAIN_START_RER * restingEnergy(input.targetWeightKg),
    (input.currentKcal ?? 0) * 1.1,
  );
  return {
    verdict: 'start',
    kcalPerDay: kcal,
    reasons: [
      because(
        'gain-start',
        'A plan to gain starts at 1.5 × resting energy of the target weight (published 1.2–1.8), and 10 % above the present ration at least.',
        HAND,
      ),
    ],
    formula: { formula: '1.5 × 70 × target kg^0.75, or the present ration + 10 %', ...HAND },
  };
}

/** The need to feed for, by the dog's own record where that tells more, else by the formula. */
function need(input: AdjustFoodInput): { kcal: number; text: string; own: boolean } {
  const own = input.own?.informative === true ? input.own : undefined;
  return own === undefined
    ? { kcal: input.maintenance.mid, text: 'maintenance energy by formula', own: false }
    : { kcal: own.mid, text: "the dog's own maintenance energy", own: true };
}

function startHold(input: AdjustFoodInput): Draft {
  const { kcal, text } = need(input);
  const running = input.runningKcalPerDay ?? 0;
  const { evidence, mark, sources } = input.maintenance.figure;
  return {
    verdict: 'start',
    kcalPerDay: kcal + running,
    reasons: [
      because('hold-start', `The ration starts at ${text}; the weight record corrects it.`, {
        evidence,
        mark,
        sources,
      }),
      ...runningReason(running),
    ],
    formula: { formula: `${text}${running > 0 ? ' + running' : ''}`, evidence, mark, sources },
  };
}

function runningReason(running: number): Reason[] {
  if (running <= 0) return [];
  const kcal = Math.round(running);
  return [
    because(
      'running-food',
      `The planned running adds about ${kcal} kcal a day on average.`,
      {
        evidence: 'A',
        mark: 'C',
        sources: ['taylor1982', 'bryce2017'],
      },
      { kcal },
    ),
  ];
}

function targetReached(input: AdjustFoodInput): Draft {
  const { kcal, text } = need(input);
  const present = input.currentKcal ?? kcal;
  // Upwards by steps: a slimmed dog needs far less than the formula of other dogs says.
  const next = Math.min(Math.max(kcal, present), present * (1 + STEP_PERCENT.usual / 100));
  return {
    verdict: next > present ? 'change' : 'keep',
    kcalPerDay: next,
    reasons: [
      because(
        'target-reached',
        `The target weight is reached: go up in steps of 10 % towards ${text}, and weigh every two weeks.`,
        {
          evidence: 'A',
          mark: 'S',
          sources: ['german2011'],
        },
      ),
    ],
    formula: { formula: 'present ration + 10 %, not above maintenance energy', ...OWN },
  };
}

interface Corridor {
  readonly min: number;
  readonly aim: number;
  readonly max: number;
}

/** Signed corridor in % per week: [slow end, fast end] in the direction of the goal. */
function followLoss(input: AdjustFoodInput): Draft {
  const corridor = { min: -LOSS_MAX_PERCENT, aim: -LOSS_AIM_PERCENT, max: -LOSS_MIN_PERCENT };
  return follow(input, corridor, HAND, {
    inside: 'The dog loses inside the corridor of 0.5–2 % of its initial weight a week.',
    above: 'The dog loses more slowly than 0.5 % of its initial weight a week.',
    below: 'The dog loses faster than 2 % of its initial weight a week.',
  });
}

function followGain(input: AdjustFoodInput): Draft {
  const { min, aim, max } = GAIN_CORRIDOR_PERCENT;
  return follow(input, { min, aim, max }, OWN, {
    inside: 'The dog gains inside the corridor of 0.25–1 % a week.',
    above: 'The dog gains faster than 1 % a week.',
    below: 'The dog gains more slowly than 0.25 % a week.',
  });
}

function followHold(input: AdjustFoodInput): Draft {
  const spanWeeks = Math.max(1, (input.trend?.spanDays ?? 0) / 7);
  // Under 1 % in all counts as stable, so that is the corridor's width over the time spanned.
  const width = HOLD_DRIFT_PERCENT / spanWeeks;
  return follow(
    input,
    { min: -width, aim: 0, max: width },
    { evidence: 'A', mark: 'S', sources: ['german2011'] },
    {
      inside: 'The weight holds.',
      above: 'The weight drifts upwards.',
      below: 'The weight drifts downwards.',
    },
  );
}

function follow(
  input: AdjustFoodInput,
  corridor: Corridor,
  provenance: Pick<Reason, 'evidence' | 'mark' | 'sources'>,
  words: { readonly inside: string; readonly above: string; readonly below: string },
): Draft {
  const present = input.currentKcal ?? 0;
  const { trend } = input;
  const rate = trend?.percentPerWeek ?? null;
  if (
    trend === undefined ||
    rate === null ||
    trend.low === null ||
    trend.high === null ||
    present <= 0
  ) {
    return wait(input, 'a weighing on another day since the ration began');
  }
  const scale = initialScale(input);
  const [low, mid, high] = [trend.low * scale, rate * scale, trend.high * scale];
  if (low > corridor.max)
    return step(input, -1, corridor, because('too-high', words.above, provenance, { rate: mid }));
  if (high < corridor.min)
    return step(input, 1, corridor, because('too-low', words.below, provenance, { rate: mid }));
  if (mid >= corridor.min && mid <= corridor.max) {
    return {
      verdict: 'keep',
      kcalPerDay: present,
      reasons: [because('inside', words.inside, provenance, { rate: mid })],
      formula: { formula: 'present ration', ...OWN },
    };
  }
  return wait(
    input,
    'more weighings: the rate lies outside the corridor, but its 90 % interval does not yet',
  );
}

/** The trend is in % of the weight where its line starts; the corridor in % of the plan's start. */
function initialScale(input: AdjustFoodInput): number {
  const start = input.trend?.line[0]?.kg;
  return start === undefined ? 1 : start / (input.initialWeightKg ?? start);
}

function wait(input: AdjustFoodInput, waitingFor: string): Draft {
  return {
    verdict: 'wait',
    kcalPerDay: input.currentKcal !== undefined && input.currentKcal > 0 ? input.currentKcal : null,
    reasons: [because('wait', `Nothing is changed yet. Waiting for ${waitingFor}.`, OWN)],
    waitingFor,
    formula: { formula: 'present ration', ...OWN },
  };
}

/** One step down (−1) or up (+1), sized by the dog's own record within 5–20 %. */
function step(input: AdjustFoodInput, direction: 1 | -1, corridor: Corridor, why: Reason): Draft {
  const present = input.currentKcal!;
  const { kcal, own } = need(input);
  const initialKg = input.initialWeightKg ?? input.weightKg;
  const forAim = kcal + (KCAL_PER_KG_CHANGE * corridor.aim * initialKg) / 700;
  const wanted = own ? Math.abs(100 * (forAim / present - 1)) : STEP_PERCENT.usual;
  const towards = own && Math.sign(forAim - present) !== direction ? STEP_PERCENT.usual : wanted;
  const percent = Math.min(STEP_PERCENT.max, Math.max(STEP_PERCENT.min, towards));
  const rounded = Math.round(percent * 10) / 10;
  const text = `${direction < 0 ? 'Less' : 'More'} food by ${rounded} %${own ? ", sized by the dog's own record" : ''}.`;
  return {
    verdict: 'change',
    kcalPerDay: present * (1 + (direction * percent) / 100),
    reasons: [
      why,
      because(
        'step',
        text,
        { evidence: 'D', mark: 'M', sources: ['hand2010'] },
        { percent: rounded },
      ),
    ],
    formula: {
      formula: `present ration ${direction < 0 ? '−' : '+'} ${rounded} %`,
      evidence: 'D',
      mark: 'M',
      sources: ['hand2010'],
    },
  };
}

function belowFloor(input: AdjustFoodInput, draft: Draft): Draft | null {
  const floor = REFER_BELOW_RER * restingEnergy(input.targetWeightKg);
  if (input.goal !== 'lose' || draft.kcalPerDay === null || draft.kcalPerDay >= floor) return null;
  if (draft.verdict === 'wait') return null;
  return refer(
    'below-floor',
    'The next step would fall below 0.8 × resting energy of the target weight: nothing is proposed; the vet decides.',
    OWN,
  );
}

function warningsFor(input: AdjustFoodInput, kcal: number | null): Reason[] {
  const warnings: Reason[] = [];
  const floor = NUTRIENT_FLOOR_PER_KG075 * metabolicWeight(input.targetWeightKg);
  if (kcal !== null && input.goal === 'lose' && kcal < floor && input.weightLossDiet !== true) {
    warnings.push(
      because(
        'nutrient-floor',
        `Below ${Math.round(floor)} kcal a day (79 per kg^0.75 of target weight) ordinary food fell short of some nutrient in every diet tested: use a complete diet made for weight loss, through the vet.`,
        {
          evidence: 'A',
          mark: 'S',
          sources: ['linder2012'],
        },
        { kcal: Math.round(floor) },
      ),
    );
  }
  const treats = (input.foods ?? []).filter(({ treat }) => treat === true);
  const treatKcal = treats.reduce(
    (sum, food) => sum + (food.kcalPer100g * food.gramsPerDay) / 100,
    0,
  );
  if (kcal !== null && treatKcal > TREAT_SHARE * kcal + 0.5) {
    warnings.push(
      because(
        'treats',
        `Treats come to ${Math.round(treatKcal)} kcal a day; at most ${Math.round(TREAT_SHARE * kcal)} kcal (10 %) fit the ration.`,
        HAND,
        {
          kcal: Math.round(treatKcal),
        },
      ),
    );
  }
  return warnings;
}

function finish(input: AdjustFoodInput, draft: Draft): FoodProposal {
  const kcal = draft.kcalPerDay;
  const settled = draft.verdict === 'keep' && input.goal !== 'lose';
  return {
    verdict: draft.verdict,
    kcalPerDay: kcal,
    ration: kcal === null ? null : rationOrNull(input, kcal),
    treatAllowanceKcal: kcal === null ? null : TREAT_SHARE * kcal,
    reasons: draft.reasons,
    warnings: warningsFor(input, kcal),
    referral: draft.referral ?? null,
    waitingFor: draft.waitingFor ?? null,
    nextWeighInDay: addDays(input.day, settled ? WEIGH_IN_DAYS.settled : WEIGH_IN_DAYS.settling),
    figure: kcal === null ? null : proposalFigure(input, kcal, draft),
  };
}

/** Null while no food is listed whose amount could follow; the form says so beside the list. */
function rationOrNull(input: AdjustFoodInput, kcalPerDay: number): Ration | null {
  const foods = (input.foods ?? []).filter(({ gramsPerDay }) => gramsPerDay > 0);
  const free = foods.some((food) => food.treat !== true && food.fixedGrams !== true);
  const fixed = foods.filter((food) => food.treat !== true && food.fixedGrams === true);
  const fixedKcal = fixed.reduce(
    (sum, food) => sum + (food.kcalPer100g * food.gramsPerDay) / 100,
    0,
  );
  if (!free || fixedKcal >= kcalPerDay * (1 - TREAT_SHARE)) return null;
  return ration({
    kcalPerDay,
    foods,
    ...(input.mealsPerDay === undefined ? {} : { mealsPerDay: input.mealsPerDay }),
  });
}

function proposalFigure(input: AdjustFoodInput, kcal: number, draft: Draft) {
  return figure(kcal, {
    id: 'ration',
    label: 'Ration, treats included',
    unit: 'kcal/day',
    ...(draft.formula ?? { formula: 'present ration', ...OWN }),
    inputs: [
      { label: 'Body weight', value: input.weightKg, unit: 'kg' },
      { label: 'Target weight', value: input.targetWeightKg, unit: 'kg' },
      ...(input.currentKcal === undefined
        ? []
        : [{ label: 'Present ration', value: Math.round(input.currentKcal), unit: 'kcal/day' }]),
    ],
    notes: draft.reasons.map(({ text }) => text),
  });
}
