import type { RuleId } from './all.ts';

/** Where in the program a reason or figure is shown. */
export type CausePlace =
  | 'Screening'
  | 'Running plan'
  | 'Plan changed by hand'
  | 'Review of the plan'
  | 'Heat'
  | 'Cold'
  | 'Gait';

/** A kind of reason or figure, in words. */
export interface Cause {
  readonly place: CausePlace;
  readonly text: string;
}

/** Every kind of reason, by its code, and of figure, by its id, that a rule can decide. */
export const CAUSES = {
  'age-growth': { place: 'Screening', text: 'Too young to run in harness' },
  'age-advice': { place: 'Screening', text: 'Waiting longer is advised' },
  senior: { place: 'Screening', text: 'Senior: one level lower' },
  'bcs-high': { place: 'Screening', text: 'Body condition too high to run' },
  'bcs-low': { place: 'Screening', text: 'Body condition so low that the vet comes first' },
  'walk-base': { place: 'Screening', text: 'The walk base comes first' },
  'after-injury': { place: 'Screening', text: 'Start as after an injury' },
  'thigh-thinner': { place: 'Screening', text: 'Note on a thinner thigh after injury' },
  'goal-limit': { place: 'Screening', text: 'Goal too long for a short-nosed or heavy dog' },
  'goal-long': { place: 'Screening', text: 'A goal that needs the vet’s written yes' },
  'loosened-rule': { place: 'Screening', text: 'Note that the practice has set a milder rule' },
  'session-cap': { place: 'Running plan', text: 'How fast a single session may grow' },
  'long-goal': { place: 'Running plan', text: 'A goal to talk over first' },
  'walking-programme': { place: 'Running plan', text: 'Brisk walks up to the walk base' },
  'weekly-cap': { place: 'Running plan', text: 'How fast run-minutes may rise' },
  'recovery-weeks': { place: 'Running plan', text: 'Easy weeks' },
  'break-less': { place: 'Running plan', text: 'Less after days without running' },
  'break-anew': { place: 'Running plan', text: 'Brisk walks anew after a long break' },
  'break-restart': { place: 'Running plan', text: 'A new start after a long break' },
  'rule-changed': {
    place: 'Running plan',
    text: 'Named in every plan once the practice changed it',
  },
  'session-too-long': {
    place: 'Plan changed by hand',
    text: 'A session too long for the last 30 days',
  },
  'over-cap': { place: 'Plan changed by hand', text: 'A week with too many run-minutes' },
  'recovery-missing': { place: 'Plan changed by hand', text: 'An easy week that is none' },
  'event-week-not-easy': {
    place: 'Plan changed by hand',
    text: 'Last week before an event not easy',
  },
  'two-week-rise': { place: 'Plan changed by hand', text: 'Note on a fast rise over two weeks' },
  'bout-path': { place: 'Plan changed by hand', text: 'A step of the bout path skipped' },
  'step-too-soon': {
    place: 'Plan changed by hand',
    text: 'A step of the bout path taken too soon',
  },
  'longest-not-followed-by-easy': {
    place: 'Plan changed by hand',
    text: 'No easy run after the longest one',
  },
  'review-break-repeat': { place: 'Review of the plan', text: 'The week is repeated after a gap' },
  'review-break-less': { place: 'Review of the plan', text: 'Less after a break' },
  'review-break-anew': {
    place: 'Review of the plan',
    text: 'Brisk walks anew after a break',
  },
  'review-break-restart': {
    place: 'Review of the plan',
    text: 'Back to the walk base after a break',
  },
  'review-stiff-24': { place: 'Review of the plan', text: 'Stiff for over 24 h: days off' },
  'review-stiff-returned': {
    place: 'Review of the plan',
    text: 'Stiffness that came back: days off',
  },
  'review-again': { place: 'Review of the plan', text: 'A second setback: two steps back' },
  'review-third': { place: 'Review of the plan', text: 'Setbacks that come again: the vet first' },
  'review-illness': { place: 'Review of the plan', text: 'Half the load after an illness' },
  'heat-bands': { place: 'Heat', text: 'The bands of temperature for the dog' },
  'heat-humid': { place: 'Heat', text: 'Damp air, by wet-bulb globe temperature' },
  'heat-bcs': { place: 'Heat', text: 'Bands lower for body condition' },
  'heat-heavy': { place: 'Heat', text: 'Bands lower for a heavy dog' },
  'heat-coat': { place: 'Heat', text: 'Bands lower for the coat' },
  'heat-senior': { place: 'Heat', text: 'Bands lower for a senior dog' },
  'heat-not-used': { place: 'Heat', text: 'Bands lower for a dog not used to the weather' },
  'heat-short-nosed': { place: 'Heat', text: 'Bands lower for a short-nosed dog' },
  'heat-shift-capped': { place: 'Heat', text: 'The most by which the bands are lowered' },
  'cold-warm-up': { place: 'Cold', text: 'A longer warm-up' },
  'cold-coat': { place: 'Cold', text: 'A coat' },
  'cold-half': { place: 'Cold', text: 'Half the run time' },
  'cold-none': { place: 'Cold', text: 'No run' },
  froudeNumber: { place: 'Gait', text: 'Froude number at a pace, and the gait it points to' },
  trotSpeed: { place: 'Gait', text: 'Speed at which walk becomes trot' },
  canterSpeed: { place: 'Gait', text: 'Speed at which trot becomes canter' },
  canterPace: {
    place: 'Gait',
    text: 'Pace at which dogs of this height change to a canter or gallop',
  },
  'gait-joint-angle': { place: 'Gait', text: 'Change of a joint angle' },
  'gait-thigh-girth': { place: 'Gait', text: 'Change of the thigh girth' },
  'gait-standing-weight': { place: 'Gait', text: 'Change of the standing weight of a limb' },
  hindDifference: { place: 'Gait', text: 'Difference of the hind limbs in standing weight' },
  'hind-difference': { place: 'Gait', text: 'Flag on a difference of the hind limbs' },
  'gait-asymmetrical': { place: 'Gait', text: 'Footfalls of a pair not evenly spaced' },
} as const satisfies Readonly<Record<string, Cause>>;

export type CauseCode = keyof typeof CAUSES;

const AGE = ['age-growth', 'loosened-rule'] as const;
const SESSION = ['session-cap', 'session-too-long'] as const;
const CAP = ['weekly-cap', 'over-cap'] as const;
const FIRST = ['over-cap', 'rule-changed'] as const;
const BREAK = ['break-less', 'over-cap', 'review-break-less', 'rule-changed'] as const;
const DAMP = ['heat-bands', 'heat-humid'] as const;
const CANTER = ['froudeNumber', 'canterSpeed', 'canterPace'] as const;

/** Which kinds of reason and figure name a rule, in the order of a dog's way through the program. */
const BY_RULE: Readonly<Record<RuleId, readonly CauseCode[]>> = {
  ageSmallMonths: AGE,
  ageLargeMonths: AGE,
  largeFromKg: AGE,
  giantFromKg: ['age-advice'],
  ageGiantAdvisedMonths: ['age-advice'],
  earlyNeuterBeforeMonths: ['age-advice'],
  earlyNeuterExtraMonths: ['age-advice'],
  bcsWalkOnlyFrom: ['bcs-high', 'loosened-rule'],
  bcsVetUpTo: ['bcs-low', 'loosened-rule'],
  seniorFromPercent: ['senior'],
  walkBaseMinutes: ['walk-base'],
  sessionRisePercent: SESSION,
  sessionStepMinutes: SESSION,
  sessionWindowDays: SESSION,
  goalShortMinutes: ['goal-limit'],
  goalHeavyFromBcs: ['goal-limit'],
  goalLongMinutes: ['goal-long', 'long-goal'],
  afterInjuryMonths: ['after-injury'],
  capConditioned: CAP,
  capUnconditioned: CAP,
  capPostInjury: CAP,
  smallStepMinutes: ['weekly-cap', 'rule-changed'],
  shortWeekMinutes: ['weekly-cap', 'rule-changed'],
  twoWeekRisePercent: ['two-week-rise', 'rule-changed'],
  recoveryEvery: ['recovery-weeks', 'recovery-missing'],
  recoveryPercent: ['recovery-weeks', 'recovery-missing'],
  recoverySkipPercent: ['recovery-weeks', 'rule-changed'],
  easyBeforeEventPercent: ['event-week-not-easy', 'rule-changed'],
  boutsConditioned: FIRST,
  boutsUnconditioned: FIRST,
  boutsPostInjury: FIRST,
  sessionsPerStep: ['bout-path', 'step-too-soon', 'rule-changed'],
  boutsPerSession: ['rule-changed'],
  mostBouts: ['rule-changed'],
  leastSharePercent: ['rule-changed'],
  leastContinuousMinutes: ['rule-changed'],
  equalUntilMinutes: ['rule-changed'],
  mediumPercent: ['longest-not-followed-by-easy', 'rule-changed'],
  stageWeeks: ['rule-changed'],
  pullFirstMinutes: ['rule-changed'],
  pullStepMinutes: ['rule-changed'],
  hillTimes: ['rule-changed'],
  hillMinutes: ['rule-changed'],
  speedTimes: ['rule-changed'],
  speedSeconds: ['rule-changed'],
  warmUpMinutes: ['rule-changed'],
  coolDownMinutes: ['rule-changed'],
  breakRepeatDays: ['over-cap', 'review-break-repeat', 'rule-changed'],
  breakShortDays: BREAK,
  breakShortPercent: BREAK,
  breakLongDays: [
    'break-restart',
    'break-anew',
    ...BREAK,
    'review-break-restart',
    'review-break-anew',
  ],
  breakLongPercent: BREAK,
  returnRisePercent: ['over-cap', 'rule-changed'],
  illnessPercent: ['review-illness', 'rule-changed'],
  illnessRestDays: ['review-illness', 'rule-changed'],
  setbackDays: ['review-again', 'review-third', 'rule-changed'],
  settledAfter: [
    'review-again',
    'review-third',
    'review-stiff-24',
    'review-stiff-returned',
    'rule-changed',
  ],
  walkDays: ['walking-programme'],
  walkFirstMinutes: ['walking-programme'],
  walkStepMinutes: ['walking-programme'],
  daysOffAfterBack: ['review-stiff-24', 'review-stiff-returned', 'rule-changed'],
  heatUsualToC: DAMP,
  heatCautionToC: DAMP,
  heatHalfToC: DAMP,
  heatHumidFromPct: DAMP,
  heatWalkToC: DAMP,
  heatShiftC: ['heat-bands', 'heat-bcs', 'heat-heavy', 'heat-coat', 'heat-senior', 'heat-not-used'],
  heatShiftMostC: ['heat-bands', 'heat-short-nosed', 'heat-shift-capped'],
  heatBcsFrom: ['heat-bands', 'heat-bcs'],
  heatHeavyOverKg: ['heat-bands', 'heat-heavy'],
  heatNotUsedWeeks: ['heat-not-used'],
  coldWarmUpBelowC: ['cold-warm-up'],
  coldWarmUpMinutes: ['cold-warm-up'],
  coldCoatUnderKg: ['cold-coat'],
  coldHalfBelowC: ['cold-half'],
  coldNoneBelowC: ['cold-none'],
  froudeTrot: ['froudeNumber', 'trotSpeed'],
  froudeCanterLow: CANTER,
  froudeCanterHigh: CANTER,
  jointErrorDegrees: ['gait-joint-angle'],
  girthErrorCm: ['thigh-thinner', 'gait-thigh-girth'],
  standingErrorPercent: ['gait-standing-weight'],
  hindDifferencePercent: ['hindDifference', 'hind-difference'],
  pairPhaseTolerance: ['gait-asymmetrical'],
};

/**
 * The codes of the reasons, and ids of the figures, that can name a rule.
 * @example causeCodesOf('walkDays') // => ['walking-programme']
 */
export const causeCodesOf = (id: RuleId): readonly CauseCode[] => BY_RULE[id];

/**
 * The kinds of reason and figure that a rule causes, in words.
 * @example
 * causesOf('walkDays') // => [{ place: 'Running plan', text: 'Brisk walks up to the walk base' }]
 */
export const causesOf = (id: RuleId): readonly Cause[] => BY_RULE[id].map((code) => CAUSES[code]);
