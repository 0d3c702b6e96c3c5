import type { RuleId } from './all.ts';

/** Every kind of reason, by its code, and of figure, by its id, that a rule can decide. */
const TEXTS = {
  Screening: {
    'age-growth': 'Too young to run in harness',
    'age-advice': 'Waiting longer is advised',
    senior: 'Senior: one level lower',
    'bcs-high': 'Body condition too high to run',
    'bcs-low': 'Body condition so low that the vet comes first',
    'walk-base': 'The walk base comes first',
    'after-injury': 'Start as after an injury',
    'thigh-thinner': 'Note on a thinner thigh after injury',
    'goal-limit': 'Goal too long for a short-nosed or heavy dog',
    'goal-long': 'A goal that needs the vet’s written yes',
    'loosened-rule': 'Note that the practice has set a milder rule',
  },
  'Running plan': {
    'session-cap': 'How fast a single session may grow',
    'long-goal': 'A goal to talk over first',
    'walking-programme': 'Brisk walks up to the walk base',
    'weekly-cap': 'How fast run-minutes may rise',
    'recovery-weeks': 'Easy weeks',
    'break-less': 'Less after days without running',
    'break-anew': 'Brisk walks anew after a long break',
    'break-restart': 'A new start after a long break',
    'rule-changed': 'Named in every plan once the practice changed it',
  },
  'Plan changed by hand': {
    'session-too-long': 'A session too long for the last 30 days',
    'over-cap': 'A week with too many run-minutes',
    'recovery-missing': 'An easy week that is none',
    'event-week-not-easy': 'Last week before an event not easy',
    'two-week-rise': 'Note on a fast rise over two weeks',
    'bout-path': 'A step of the bout path skipped',
    'step-too-soon': 'A step of the bout path taken too soon',
    'longest-not-followed-by-easy': 'No easy run after the longest one',
  },
  'Review of the plan': {
    'review-break-repeat': 'The week is repeated after a gap',
    'review-break-less': 'Less after a break',
    'review-break-anew': 'Brisk walks anew after a break',
    'review-break-restart': 'Back to the walk base after a break',
    'review-stiff-24': 'Stiff for over 24 h: days off',
    'review-stiff-returned': 'Stiffness that came back: days off',
    'review-again': 'A second setback: two steps back',
    'review-third': 'Setbacks that come again: the vet first',
    'review-illness': 'Half the load after an illness',
  },
  Heat: {
    'heat-bands': 'The bands of temperature for the dog',
    'heat-humid': 'Damp air, by wet-bulb globe temperature',
    'heat-bcs': 'Bands lower for body condition',
    'heat-heavy': 'Bands lower for a heavy dog',
    'heat-coat': 'Bands lower for the coat',
    'heat-senior': 'Bands lower for a senior dog',
    'heat-not-used': 'Bands lower for a dog not used to the weather',
    'heat-short-nosed': 'Bands lower for a short-nosed dog',
    'heat-shift-capped': 'The most by which the bands are lowered',
  },
  Cold: {
    'cold-warm-up': 'A longer warm-up',
    'cold-coat': 'A coat',
    'cold-half': 'Half the run time',
    'cold-none': 'No run',
  },
  Gait: {
    froudeNumber: 'Froude number at a pace, and the gait it points to',
    trotSpeed: 'Speed at which walk becomes trot',
    canterSpeed: 'Speed at which trot becomes canter',
    canterPace: 'Pace at which dogs of this height change to a canter or gallop',
    'gait-joint-angle': 'Change of a joint angle',
    'gait-thigh-girth': 'Change of the thigh girth',
    'gait-standing-weight': 'Change of the standing weight of a limb',
    hindDifference: 'Difference of the hind limbs in standing weight',
    'hind-difference': 'Flag on a difference of the hind limbs',
    'gait-asymmetrical': 'Footfalls of a pair not evenly spaced',
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, string>>>>;

type Texts = typeof TEXTS;

/** Where in the program a reason or figure is shown. */
export type CausePlace = keyof Texts;

export type CauseCode = { [Place in CausePlace]: keyof Texts[Place] }[CausePlace];

/** A kind of reason or figure, in words. */
export interface Cause {
  readonly place: CausePlace;
  readonly text: string;
}

export const CAUSES = Object.fromEntries(
  Object.entries(TEXTS).flatMap(([place, texts]) =>
    Object.entries(texts).map(([code, text]) => [code, { place, text }]),
  ),
) as Readonly<Record<CauseCode, Cause>>;

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
