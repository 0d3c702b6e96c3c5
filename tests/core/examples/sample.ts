import {
  assess,
  buildRamp,
  estimateMaintenance,
  maintenanceEnergy,
  measured,
  presentState,
  ration,
  screenForRunning,
  weightTrend,
  type AssessedDog,
  type AssessedVisit,
  type AssessInput,
  type ChangeoverInput,
  type FedFood,
  type FigureText,
  type FootfallTimes,
  type LabelAnalysis,
  type PlanVersion,
  type PresentDecision,
  type PresentInput,
  type PresentPlan,
  type RampRequest,
  type ReviewedRecord,
  type ScreeningInput,
  type ToldResult,
  type Track,
  type UnitChoices,
  type StrengthFindings,
  type Weighing,
  type WeightState,
} from '../../../core/index.ts';

// The records that the examples in core's docstrings name: one invented dog and what belongs to it.

const day = '2026-03-02';
const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;

/** Neutered, six years old, 40 kg at body condition 8. */
const dog: AssessedDog = {
  birthDay: '2020-03-01',
  neuter: 'neutered',
  neuteredAtMonths: 18,
  adultWeightKg: 31,
  shortNosed: false,
  sighthound: false,
};

const foods: readonly FedFood[] = [
  { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 250 },
  { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 25, treat: true },
];

/** Sound, to lose weight, eats 1,000 kcal a day. */
const visit: AssessedVisit = {
  day,
  weightKg: 40,
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
  bcs: 8,
  muscle: 'normal',
  lamenessWalk: SOUND,
  lamenessTrot: SOUND,
  signs: [],
  surgery: 'none',
  airwayDisease: false,
  airwayClearance: false,
  radiographicClearance: false,
  conditioning: 'unconditioned',
  walkBase: 'passed',
  activity: 'low',
  consent: {
    given: true,
    vet: 'Dr A. Invented',
    day,
    scope: 'Running in harness',
    expiryDay: '2026-12-31',
  },
  overrides: [],
  targetWeightKg: null,
  foodGoal: 'lose',
  mealsPerDay: 2,
  weightLossDiet: false,
  diet: foods,
};

/** 40 kg, and 1 % less of it in each of four weeks. */
const weighings: readonly Weighing[] = [
  { day: '2026-03-02', weightKg: 40 },
  { day: '2026-03-09', weightKg: 39.6 },
  { day: '2026-03-16', weightKg: 39.2 },
  { day: '2026-03-23', weightKg: 38.8 },
  { day: '2026-03-30', weightKg: 38.4 },
];

const loss: AssessInput = { dog, visits: [visit], foodDecisions: [], day };

/** From nothing to 20 min without a break, on three days a week. */
const request: RampRequest = {
  startDay: day,
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
};
const ramp = buildRamp(request);
const walks = buildRamp({ ...request, programme: 'walking', goal: { continuousMinutes: 30 } });

const plans: readonly PlanVersion[] = [{ version: 1, madeOn: day, ramp }];

/** The first outing, told on the day after it. */
const told: ToldResult = {
  day,
  outcome: 'done',
  runMinutes: null,
  nextDay: 'normal',
  signs: [],
  note: '',
  updatedAt: '2026-03-03T08:00:00Z',
};

/** Everything known and nothing against running. */
const ready: ScreeningInput = {
  day,
  ageMonths: 40,
  weightKg: 22,
  adultWeightKg: 22,
  bcs: 5,
  lameness: { walk: SOUND, trot: SOUND },
  signs: [],
  historyAsked: true,
  surgery: 'none',
  walkBase: 'passed',
  conditioning: 'unconditioned',
  consent: visit.consent,
};

/** A dog at its weight, two days into `ramp`. */
const runner: PresentInput<PresentPlan, PresentDecision> = {
  record: {
    dog,
    visits: [{ ...visit, id: 'visit-1', weightKg: 31, bcs: 5, foodGoal: 'hold' }],
    foodDecisions: [],
    day: '2026-03-04',
  },
  plans: [
    {
      version: 1,
      madeOn: day,
      ramp,
      current: true,
      visitId: 'visit-1',
      createdAt: '2026-03-02T09:00:00Z',
      review: null,
    },
  ],
  results: [told],
};

/** Sound, tense in the back. */
const findings: StrengthFindings = {
  disease: { joints: 'no', spine: 'no', heart: 'no', words: '' },
  injuries: [],
  surgery: 'none',
  lamenessClearances: [],
  palpation: {
    neck: 0,
    back: 2,
    'loin and pelvis': 0,
    'left fore': 0,
    'right fore': 0,
    'left hind': 0,
    'right hind': 0,
  },
  lamenessWalk: SOUND,
  lamenessTrot: SOUND,
  sitToStand: 'even',
  lieToStand: 'even',
};

/** `runner` on the day after its first outing, between visits. */
const reviewed: ReviewedRecord = {
  plan: { ramp, createdAt: '2026-03-02T09:00:00Z' },
  sessions: [told],
  rules: {},
  day: '2026-03-03',
  clearedByVetOn: null,
  visit: null,
  screening: null,
  unasked: [],
};

/** 25 kg, and a need of 900 kcal a day. */
const body: WeightState = {
  kg: 25,
  kgSd: 0.2,
  need: 900,
  needSd: 90,
  kgNeed: 0,
  surprisePercent: 0,
  lowestKg: 25,
};

const changeoverInput: ChangeoverInput = {
  startDay: day,
  kcalPerDay: 720,
  oldFood: { name: 'Old food', kcalPer100g: 360 },
  newFood: { name: 'New food', kcalPer100g: 300 },
};

const label: LabelAnalysis = {
  proteinPct: 26,
  fatPct: 15,
  fibrePct: 3,
  moisturePct: 9,
  ashPct: 7,
};

const figureText: FigureText = {
  id: 'height',
  label: 'Height at the withers',
  unit: 'm',
  formula: 'measured',
  evidence: 'C',
  mark: 'C',
  sources: ['arithmetic'],
};

/** A trot at two strides a second: left fore with right hind, then right fore with left hind. */
const trot: readonly FootfallTimes[] = (
  [
    ['leftFore', 0],
    ['rightHind', 0],
    ['rightFore', 0.25],
    ['leftHind', 0.25],
  ] as const
).map(([limb, first]) => ({
  limb,
  touchDowns: [0, 1, 2, 3, 4, 5].map((stride) => first + 0.5 * stride),
  liftOffs: [0, 1, 2, 3, 4, 5].map((stride) => first + 0.5 * stride + 0.2),
}));

/** Ten minutes due north: five at 1.4 m/s, then five at 3 m/s, a point a second. */
const track: Track = {
  segments: [
    Array.from({ length: 601 }, (_, second) => {
      const metres = 1.4 * Math.min(second, 300) + 3 * Math.max(0, second - 300);
      return {
        timeS: 1_770_000_000 + second,
        latDeg: 50 + metres / 111_230,
        lonDeg: 8,
        elevationM: null,
      };
    }),
  ],
};

/** What a practice may read instead of kg, kcal, km and °C. */
const units: UnitChoices = {
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
};

export const sample = {
  body,
  changeover: changeoverInput,
  day,
  dog,
  figureText,
  findings,
  foods,
  label,
  loss,
  /** 25 kg, 900 kcal a day for eight weeks, 0.8 kg lost. */
  own: estimateMaintenance({
    prior: maintenanceEnergy({ weightKg: 25 }),
    weighings: [
      { day: '2026-03-02', weightKg: 25 },
      { day: '2026-04-27', weightKg: 24.2 },
    ],
    intakes: [{ fromDay: day, kcalPerDay: 900 }],
  }),
  plans,
  ramp,
  /** `foods`, brought down to 900 kcal a day. */
  ration: ration({ kcalPerDay: 900, foods }),
  ready,
  request,
  reviewed,
  runner,
  /** What `runner` asks of the food at 7 min/km. */
  running: assess({
    ...runner.record,
    plan: { ramp: buildRamp({ ...request, paceMinPerKm: 7 }), climbM: null },
  })!.running,
  screening: screenForRunning(ready),
  /** `weighings` and one more, 3.8 for 38. */
  slipped: measured([...weighings, { day: '2026-04-06', weightKg: 3.8 }]),
  state: presentState(runner)!,
  session: ramp.weeks[0]!.sessions[0]!,
  told,
  track,
  trend: weightTrend(weighings),
  trot,
  units,
  visit,
  walks,
  weighings,
};
