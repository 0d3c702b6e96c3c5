import {
  idealWeight,
  maintenanceEnergy,
  restingEnergyFigure,
  weightTrend,
} from '../../../core/index.ts';
import {
  en,
  enPractice,
  type AssessmentRecordData,
  type LetterWords,
  type Measurement,
  type VetLetterData,
} from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';
import { context, longNames } from './people.ts';
import { noPlan, plan } from './plans.ts';

export const letterWords: LetterWords = { practice: enPractice, owner: en };

// Values of an invented dog; the references are those of science.md section 9.
const measurements: readonly Measurement[] = [
  {
    label: 'Left stifle, flexion',
    value: 47,
    unit: '°',
    decimals: 0,
    reference: '42° in one breed',
    error: '1° to 6° between repeats',
    provenance: { evidence: 'A', mark: 'M', sources: ['jaegger2002Hind'] },
  },
  {
    label: 'Thigh girth, left minus right',
    value: -1.5,
    unit: 'cm',
    decimals: 1,
    reference: '',
    error: 'under 1 cm is within error',
    provenance: { evidence: 'A', mark: 'S', sources: ['bascunan2016'] },
  },
];

export function letter(paper: Paper): VetLetterData {
  const { findings, screening, ramp } = plan(paper);
  return {
    ...context(paper),
    findings,
    signs: [],
    measurements,
    screening,
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
    surgery: 'none',
    airwayDisease: false,
    radiographicClearance: false,
    diet: [
      { name: 'Dry food (invented brand)', kcalPer100g: 362, gramsPerDay: 220 },
      { name: 'Training treats', kcalPer100g: 310, gramsPerDay: 30, treat: true },
    ],
    measurements,
    screening,
    figures: [restingEnergyFigure(24.2), need.figure, ideal.figure],
    foodDecision: { kcalPerDay: 711, verdict: 'accepted' },
    plan: ramp === null ? null : { version: 1, startDay: '2025-12-01', ramp },
    notes: 'Bright and willing. Pulls hard at the start.\nOwner runs 10 km twice a week.',
  };
}

/** Nothing measured, and a note as long as the records take. */
export function longNoteRecord(paper: Paper): AssessmentRecordData {
  const { findings, screening } = noPlan(paper);
  return {
    ...record(paper),
    ...longNames(paper),
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
