import { blankDog, blankPractice } from '../../contract/records/forms.ts';
import type {
  ClientInput,
  DogInput,
  FoodDecisionInput,
  PlanRequest,
  Practice,
  VisitFacts,
} from '../../contract/records.ts';

// An invented practice with invented people and dogs, for trying the program out. Days are counted
// back from the day it is opened, so that the demonstration never looks old.

export interface DemoVisit {
  readonly daysAgo: number;
  readonly facts: Partial<VisitFacts>;
  /** `startInDays` counts from the visit. */
  readonly plan?: Pick<PlanRequest, 'start' | 'goal'> & { readonly startInDays: number };
  readonly food?: FoodDecisionInput;
  readonly consentDaysAgo?: number;
}

export interface DemoDog {
  readonly owner: number;
  readonly ageMonths: number;
  readonly dog: Omit<DogInput, 'clientId' | 'birthDay'>;
  readonly visits: readonly DemoVisit[];
  /** For how many days now the owner has not told of any session; 0 when left out. */
  readonly silentDays?: number;
}

export const DEMO_PRACTICE: Practice = {
  ...blankPractice(),
  name: 'Hollow Lane Canine Fitness (demonstration)',
  practitioner: 'Robin Example',
  address: '1 Hollow Lane\nSampleford',
  phone: '000 000 000',
  email: 'desk@hollowlane.example',
  registration: 'Demonstration practice: invented people and dogs.',
  dayFormat: 'DD.MM.YYYY',
};

const owner = (name: string, phone: string, vetName: string): ClientInput => ({
  name,
  phone,
  email: `${name.split(' ')[0]!.toLowerCase()}@owners.example`,
  address: 'Sampleford',
  vetPractice: 'Sampleford Veterinary Practice (invented)',
  vetName,
  vetContact: '000 000 111',
  notes: '',
  keepRecordings: false,
});

export const DEMO_OWNERS: readonly ClientInput[] = [
  owner('Mara Sample', '000 000 201', 'Dr A. Invented'),
  owner('Jonas Muster', '000 000 202', 'Dr A. Invented'),
  owner('Élodie Exemple', '000 000 203', 'Dr B. Invented'),
];

const { birthDay: _birthDay, ...WITHOUT_BIRTHDAY } = blankDog('female');

const dog = (name: string, breed: string, rest: Partial<DemoDog['dog']>): DemoDog['dog'] => ({
  ...WITHOUT_BIRTHDAY,
  name,
  breed,
  neuter: 'neutered',
  ...rest,
});

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
/** Looked at and asked for, and nothing found. */
const NOTHING_FOUND: Partial<VisitFacts> = {
  lamenessWalk: SOUND,
  lamenessTrot: SOUND,
  signsAsked: true,
  historyAsked: true,
};

const food = (
  name: string,
  kcalPer100g: number,
  gramsPerDay: number,
  rest: Partial<VisitFacts['diet'][number]> = {},
): VisitFacts['diet'][number] => ({
  name,
  kcalPer100g,
  gramsPerDay,
  treat: false,
  gramsPerCup: null,
  fixedGrams: false,
  energyFrom: 'declared',
  label: null,
  ...rest,
});

const consent = (vet: string, scope: string): VisitFacts['consent'] => ({
  given: true,
  vet,
  scope,
  day: null,
  expiryDay: null,
});

/** What the invented practice keeps at hand. */
export const DEMO_FOODS = [
  { name: 'Dry food, adult', kind: 'food', kcalPer100g: 362 },
  { name: 'Tinned food', kind: 'food', kcalPer100g: 105 },
  { name: 'Training biscuits', kind: 'treat', kcalPer100g: 380 },
] as const;
export const DEMO_PHRASES = [
  'Harness fitted; shoulder stays free.',
  'Walks on the lead until the next visit.',
];

/** The dog that `npm run demo` follows from intake through two follow-ups. */
const BRAMBLE: DemoDog = {
  owner: 0,
  ageMonths: 50,
  dog: dog('Bramble', 'Collie cross', { adultWeightKg: 21, withersCm: 53, coat: 'thick' }),
  visits: [
    {
      daysAgo: 70,
      consentDaysAgo: 75,
      facts: {
        weightKg: 26.4,
        bcs: 7,
        muscle: 'mild loss',
        ...NOTHING_FOUND,
        gaitNote: 'Even stride at walk and trot on grass; tires after ten minutes.',
        conditioning: 'unconditioned',
        walkBase: 'passed',
        activity: 'moderate',
        foodGoal: 'lose',
        targetWeightKg: 22,
        consent: consent('Dr A. Invented', 'Conditioning and running in harness'),
        exercises: ['sit-to-stand', 'backing-up', 'figures-of-eight'],
        diet: [
          food('Dry food, adult', 362, 245),
          food('Training biscuits', 380, 40, { treat: true }),
        ],
        notes:
          'Mara would like 5 km by summer; 4.5 km until Bramble is lighter. Harness fitted; shoulder stays free.',
      },
      plan: {
        startInDays: 3,
        start: 'unconditioned',
        goal: { distanceKm: 4.5, paceMinPerKm: 6.5 },
      },
      food: {
        decision: 'edited',
        kcalPerDay: 850,
        foodSwitch: null,
        note: 'Mara would like to start gently; she weighs the food from now on.',
      },
    },
    {
      daysAgo: 56,
      facts: {
        weightKg: 26.3,
        bcs: 7,
        muscle: 'mild loss',
        ...NOTHING_FOUND,
        gaitNote: 'Sound. Brighter on arrival.',
        notes: 'First two weeks done, no stiffness next day.',
      },
    },
    {
      daysAgo: 28,
      facts: {
        weightKg: 26,
        bcs: 7,
        muscle: 'normal',
        ...NOTHING_FOUND,
        gaitNote: 'Sound, freer behind.',
        notes: 'All sessions done.',
      },
    },
    {
      daysAgo: 0,
      facts: {
        weightKg: 25.9,
        bcs: 7,
        muscle: 'normal',
        ...NOTHING_FOUND,
        gaitNote: 'Sound at walk and trot.',
        notes: 'Weight hardly moves any more. Mara still feeds what the sheet says.',
      },
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
    },
  ],
};

/** Too young to run: the screening holds him at walking. */
const TARN: DemoDog = {
  owner: 1,
  ageMonths: 10,
  dog: dog('Tarn', 'Large crossbreed', {
    sex: 'male',
    neuter: 'intact',
    adultWeightKg: 34,
    withersCm: 64,
    coat: 'dark',
  }),
  visits: [
    {
      daysAgo: 12,
      facts: {
        weightKg: 27.2,
        bcs: 5,
        muscle: 'normal',
        ...NOTHING_FOUND,
        conditioning: 'unconditioned',
        walkBase: 'not tested',
        activity: 'moderate',
        targetWeightKg: null,
        diet: [food('Dry food, growing large dog', 375, 410)],
        notes: 'Owner would like to start now; explained why growth comes first.',
      },
    },
  ],
};

/** Back after surgery with the vet's written clearance; her last sessions are still to be told. */
const JUNO: DemoDog = {
  owner: 2,
  silentDays: 14,
  ageMonths: 66,
  dog: dog('Juno', 'Retriever', { adultWeightKg: 29, withersCm: 56, coat: 'ordinary' }),
  visits: [
    {
      daysAgo: 20,
      consentDaysAgo: 24,
      facts: {
        weightKg: 29.4,
        bcs: 5,
        muscle: 'mild loss',
        ...NOTHING_FOUND,
        gaitNote: 'Sound at trot; left thigh 1.5 cm thinner than right.',
        surgery: 'cleared in writing',
        conditioning: 'post-injury',
        walkBase: 'passed',
        activity: 'moderate',
        consent: consent('Dr B. Invented', 'Return to running after stifle surgery'),
        targetWeightKg: 29,
        diet: [
          food('Dry food, adult', 360, 270),
          food('Tinned food', 105, 150, { fixedGrams: true }),
        ],
      },
      plan: {
        startInDays: 2,
        start: 'post-injury',
        goal: { continuousMinutes: 20 },
      },
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
    },
  ],
};

/** Short-nosed and without clearance: the vet first. */
const PIP: DemoDog = {
  owner: 2,
  ageMonths: 40,
  dog: dog('Pip', 'Short-nosed small breed', {
    sex: 'male',
    adultWeightKg: 9,
    withersCm: 30,
    shortNosed: true,
  }),
  visits: [
    {
      daysAgo: 5,
      facts: {
        weightKg: 10.4,
        bcs: 6,
        muscle: 'normal',
        ...NOTHING_FOUND,
        signs: [],
        conditioning: 'unconditioned',
        walkBase: 'not tested',
        activity: 'low',
        foodGoal: 'lose',
        targetWeightKg: 9.4,
        diet: [food('Dry food, small breed', 385, 150)],
      },
    },
  ],
};

export const DEMO_DOGS: readonly DemoDog[] = [BRAMBLE, TARN, JUNO, PIP];
