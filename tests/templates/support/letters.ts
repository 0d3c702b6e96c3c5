import {
  EXERCISES,
  idealWeight,
  maintenanceEnergy,
  restingEnergyFigure,
  weightTrend,
  figure,
  type JudgedMeasurement,
} from '../../../core/index.ts';
import {
  en,
  enPractice,
  type AssessmentRecordData,
  type LetterWords,
  type ToldFacts,
  type VetLetterData,
} from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';
import { context, longNames } from './people.ts';
import { noPlan, plan } from './plans.ts';

export const letterWords: LetterWords = { practice: enPractice, owner: en };

// Values of an invented dog, judged against the references and errors of science.md section 9.
const measurements: readonly JudgedMeasurement[] = [
  {
    measurement: {
      kind: 'joint angle',
      limb: 'leftHind',
      joint: 'stifle',
      movement: 'flexion',
      value: 47,
    },
    figure: figure(47, {
      id: 'jointAngle',
      label: 'Left hind, stifle, flexion',
      unit: '°',
      formula: 'measured',
      evidence: 'A',
      mark: 'M',
      sources: ['jaegger2002Hind'],
    }),
    reference: 42,
    fromReference: 5,
    change: 4,
    error: 6,
    verdict: 'within error',
  },
  {
    measurement: { kind: 'thigh girth', limb: 'leftHind', value: 33.5 },
    figure: figure(33.5, {
      id: 'thighGirth',
      label: 'Left hind, thigh girth',
      unit: 'cm',
      formula: 'measured',
      evidence: 'A',
      mark: 'S',
      sources: ['bascunan2016'],
    }),
    reference: null,
    fromReference: null,
    change: null,
    error: 1,
    verdict: 'first measurement',
  },
];

/** All that the intake asks for, of an invented dog. */
const told: ToldFacts = {
  history: [
    { label: 'Reason for the referral', text: 'Fitness after weight loss.' },
    { label: 'Diagnosis', text: 'Healed cruciate rupture, left stifle.' },
    {
      label: 'Surgery, cranial cruciate ligament',
      text: 'side: left; day: 14/03/2023; what was done: osteotomy',
    },
    { label: 'Known disease', text: 'disease of joints: yes; disease of the heart: no' },
    { label: 'Medicine', text: 'None since June' },
    {
      label: 'Lameness cleared at trot, left hind',
      text: 'grade: 1 of 5; vet: Dr Example; day: 20/11/2025; for: graded running',
    },
  ],
  found: [
    {
      label: 'Pain on palpation',
      text: 'back: 0 of 4; left hind: 1 of 4',
      note: 'Our own grades: 0 no reaction; 1 turns or tenses, once.',
    },
    { label: 'Sit to stand', text: 'leans left' },
    { label: 'Questionnaire of the owner', text: 'total: 12 points; day: 28/11/2025' },
  ],
  feeding: [
    { label: 'Feeding at home', text: 'who feeds the dog: Kim; scavenges: yes' },
    { label: 'Appetite', text: 'more than usual' },
  ],
  exercises: EXERCISES.slice(0, 2),
  signsAsked: true,
  historyAsked: true,
};

/** Nobody asked and nothing was told. */
const nothingTold: ToldFacts = {
  history: [],
  found: [],
  feeding: [],
  exercises: [],
  signsAsked: false,
  historyAsked: false,
};

export function letter(paper: Paper): VetLetterData {
  const { findings, screening, ramp } = plan(paper);
  return {
    ...context(paper),
    findings,
    signs: [],
    measurements,
    screening,
    told,
    history: {
      surgery: 'cleared in writing',
      airwayClearance: false,
      earlierLameness: [{ day: '2025-11-03', grade: 2 }],
      afterRuns: [{ day: '2025-11-20', what: 'mild stiffness gone within 24 h' }],
      ownersWords: [{ day: '2025-11-20', note: 'Slow on the stairs in the morning.' }],
    },
    trend: weightTrend([
      { day: '2025-11-03', weightKg: 24.9 },
      { day: '2025-11-17', weightKg: 24.5 },
      { day: '2025-12-01', weightKg: 24.2 },
    ]),
    ramp,
    feeding: { aim: 'lose', kcalPerDay: 711, targetWeightKg: 22 },
    questions: ['Is the old left hind lameness fully explained by the findings of 2023?'],
  };
}

/** No vet on file, nothing measured, no plan, warning signs. */
export function bareLetter(paper: Paper): VetLetterData {
  const base = context(paper);
  const { findings, screening } = noPlan(paper);
  return {
    ...base,
    owner: { ...base.owner, vetName: '', vetPractice: '', vetContact: '' },
    dog: { ...base.dog, breed: '' },
    findings,
    signs: ['Cough', 'Tires far too soon'],
    measurements: [],
    screening,
    told: nothingTold,
    history: {
      surgery: null,
      airwayClearance: false,
      earlierLameness: [],
      afterRuns: [],
      ownersWords: [],
    },
    trend: null,
    ramp: null,
    feeding: null,
    questions: [],
  };
}

export function record(paper: Paper): AssessmentRecordData {
  const { findings, screening, ramp } = plan(paper);
  const ideal = idealWeight({ weightKg: 24.2, bcs: 6 });
  const need = maintenanceEnergy({ weightKg: 24.2, neuter: 'neutered', activity: 'moderate' });
  return {
    ...context(paper),
    kind: 'intake',
    ageMonths: 56,
    findings,
    signs: [],
    weighingMethod: 'same scale',
    activity: 'moderate',
    conditioning: 'conditioned',
    walkBase: 'passed',
    told,
    surgery: 'cleared in writing',
    airwayDisease: false,
    airwayClearance: false,
    radiographicClearance: false,
    amendments: [],
    diet: [
      { name: 'Dry food (invented brand)', kcalPer100g: 362, gramsPerDay: 220 },
      { name: 'Training treats', kcalPer100g: 310, gramsPerDay: 30, treat: true },
    ],
    measurements,
    screening,
    figures: [restingEnergyFigure(24.2), need.figure, ideal.figure],
    foodDecision: { kcalPerDay: 711, verdict: 'accepted' },
    plan: ramp === null ? null : { version: 1, startDay: '2025-12-01', ramp, waitsFor: null },
    notes: 'Bright and willing. Pulls hard at the start.\nOwner runs 10 km twice a week.',
  };
}

/** A visit that was put right twice. */
export function amendedRecord(paper: Paper): AssessmentRecordData {
  return {
    ...record(paper),
    amendments: [
      { day: '2025-11-27', by: 'Robin Example', reason: 'The weight was read off as 24.8 kg.' },
      { day: '2025-12-02', by: '', reason: 'Consent of the vet came in by post.' },
    ],
  };
}

/** Nothing measured, and a note as long as the records take. */
export function longNoteRecord(paper: Paper): AssessmentRecordData {
  const { findings, screening } = noPlan(paper);
  return {
    ...record(paper),
    ...longNames(paper),
    told: nothingTold,
    surgery: null,
    weighingMethod: null,
    findings,
    screening,
    diet: [],
    measurements: [],
    figures: [],
    foodDecision: null,
    plan: null,
    notes: 'A long note about an invented dog that fills the page line by line. '
      .repeat(12)
      .concat('\n')
      .repeat(20),
  };
}
