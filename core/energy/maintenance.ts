import { oneOf } from '../check.ts';
import { estimate, type Estimate, type Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import type { SourceId } from '../sources.ts';
import { growthEnergy, growthEnergyBySteps, growthEstimate } from './growth.ts';
import { METABOLIC_EXPONENT, metabolicWeight, restingEnergy } from './resting.ts';

export const ACTIVITY_LEVELS = ['low', 'moderate', 'high', 'working'] as const;
export type Activity = (typeof ACTIVITY_LEVELS)[number];
export type LifeStage = 'puppy' | 'adult' | 'senior';
export const NEUTER_STATUSES = ['intact', 'neutered', 'unknown'] as const;
export type NeuterStatus = (typeof NEUTER_STATUSES)[number];

/** Log-SD of daily energy between pet dogs measured at home, about 0.29 (LMU Munich thesis, S). */
export const LOG_SD_BETWEEN_DOGS = 0.29;
/** Two-sided 90 % of a normal distribution. */
export const Z90 = 1.6448536269514722;
/** Factor from the middle to either end of the range that holds 90 of 100 dogs: 1.61. */
export const SPREAD_90 = Math.exp(Z90 * LOG_SD_BETWEEN_DOGS);

/**
 * kcal per kg^0.75 by activity. 95 and 110 were read as reference points, 94–105 for about 1 h walk
 * a day; which hours of activity go with which value is from memory, but for the lowest, which the
 * measured average pet bears out.
 */
const BY_ACTIVITY: Readonly<Record<Activity, { kcal: number; words: string } & Provenance>> = {
  low: {
    kcal: 95,
    words: 'under 1 h a day',
    ...from('A', 'S', 'fediaf2017', 'lmuThesis'),
  },
  moderate: {
    kcal: 110,
    words: '1–3 h a day, low impact',
    ...from('C', 'M', 'fediaf2017Activity', 'fediaf2017', 'lmuThesis'),
  },
  high: {
    kcal: 125,
    words: '1–3 h a day, high impact',
    ...from('C', 'M', 'fediaf2017Activity', 'lmuThesis'),
  },
  working: {
    kcal: 162.5,
    words: '3–6 h work a day',
    ...from('C', 'M', 'fediaf2017Activity', 'lmuThesis'),
  },
};

/** What intact and senior dogs need beside neutered adults, as published multiples of RER. */
const INTACT: Provenance & { factor: number } = {
  factor: 1.8 / 1.6,
  ...from('C', 'C', 'hand2010'),
};
const SENIOR: Provenance & { factor: number } = {
  factor: 1.4 / 1.6,
  ...from('C', 'M', 'hand2010Senior'),
};

/** Measured in dogs after weight loss: 68.1 ± 13.1 kcal per kg^0.75, n = 24 (German 2011, S). */
const AFTER_LOSS = { kcal: 68.1, logSd: 13.1 / 68.1 } as const;

/** A published value set beside the estimate, so that the disagreement stays in view. */
export interface EnergyReference {
  readonly label: string;
  readonly kcalPerDay: number;
  /** The published range, where there is one. */
  readonly low?: number;
  readonly high?: number;
  readonly source: SourceId;
}

export interface MaintenanceInput {
  readonly weightKg: number;
  /** Default `adult`. */
  readonly lifeStage?: LifeStage;
  /** Default `unknown`. */
  readonly neuter?: NeuterStatus;
  /** Default `low`: the measured average pet lies there. */
  readonly activity?: Activity;
  /** True for a dog slimmed down to its target: its need is far lower. */
  readonly afterWeightLoss?: boolean;
  /** Needed for a puppy. */
  readonly adultWeightKg?: number;
}

export interface MaintenanceEnergy extends Estimate {
  /** SD of the logarithm of the need between dogs like this one. */
  readonly logSd: number;
  readonly references: readonly EnergyReference[];
}

/**
 * Maintenance energy of one dog before its own weight record is known, kcal/day, as an estimate:
 * `mid` is the formula, `low` and `high` hold 90 of 100 such dogs.
 *
 * Published values contradict each other: a flat 1.6 × RER (112 kcal/kg^0.75) lies 14 % above what
 * 586 pets measured at home ate (98 ± 29). The middle here follows the reference points by activity
 * (95 and 110), which agree with the measurement, and the range is the measured spread between dogs
 * (log-SD 0.29), so it is wide; the dog's own record overrules it (`estimateMaintenance`). With that
 * spread a mean of 98 is a median of 94, so the default of 95 is also the measured middle. Intact
 * dogs get the published ratio 1.8 / 1.6, seniors 1.4 / 1.6, on top (C: published for multiples of
 * RER, carried over to the reference points).
 *
 * @throws RangeError for weights outside 0.1–150 kg, unknown words, or a puppy without adult weight
 * @example maintenanceEnergy({ weightKg: 15 }) // => { mid: 724.1, low: 449.4, high: 1166.7, … }
 * Sources: FEDIAF 2017 (S; hours of activity from memory), LMU Munich thesis (S), German 2011 (S),
 * Hand et al. 2010 for the multiples (S; senior from memory).
 */
export function maintenanceEnergy(input: MaintenanceInput): MaintenanceEnergy {
  const activity = oneOf('activity', input.activity ?? 'low', ACTIVITY_LEVELS);
  const lifeStage = oneOf('lifeStage', input.lifeStage ?? 'adult', ['puppy', 'adult', 'senior']);
  const references = publishedReferences(input.weightKg, activity);
  if (lifeStage === 'puppy') {
    const dog = { weightKg: input.weightKg, adultWeightKg: input.adultWeightKg ?? Number.NaN };
    const growing = growthEstimate(dog, SPREAD_90);
    return { ...growing, logSd: LOG_SD_BETWEEN_DOGS, references: growthReferences(dog) };
  }
  if (input.afterWeightLoss === true) return afterWeightLoss(input.weightKg, references);
  return adultEnergy(input, activity, lifeStage, references);
}

function adultEnergy(
  input: MaintenanceInput,
  activity: Activity,
  lifeStage: LifeStage,
  references: readonly EnergyReference[],
): MaintenanceEnergy {
  const base = BY_ACTIVITY[activity];
  const neuter = oneOf('neuter', input.neuter ?? 'unknown', NEUTER_STATUSES);
  const neuterFactor = neuter === 'intact' ? INTACT.factor : 1;
  const ageFactor = lifeStage === 'senior' ? SENIOR.factor : 1;
  const coefficient = base.kcal * neuterFactor * ageFactor;
  const mid = coefficient * metabolicWeight(input.weightKg);
  const built = estimate(mid, mid / SPREAD_90, mid * SPREAD_90, {
    id: 'maintenanceEnergy',
    label: 'Maintenance energy, by formula',
    unit: 'kcal/day',
    rangeMeaning: 'holds 90 of 100 dogs like this one',
    formula: formulaText(base.kcal, neuterFactor, ageFactor),
    inputs: [
      { label: 'Body weight', value: input.weightKg, unit: 'kg' },
      { label: 'Daily activity', value: base.words, unit: '' },
      { label: 'Neuter status', value: neuter, unit: '' },
      { label: 'Life stage', value: lifeStage, unit: '' },
    ],
    ...weakest([
      base,
      ...(neuter === 'intact' ? [INTACT] : []),
      ...(lifeStage === 'senior' ? [SENIOR] : []),
    ]),
    notes: [
      'Pets measured at home ate {98 ± 29 kcal}/kg^0.75, about 1.4 × RER; the often printed 1.6 × RER overfeeds the average pet by about 14 %.',
      'Two dogs of the same weight can differ by half. The record of this dog overrules the formula.',
    ],
  });
  return { ...built, logSd: LOG_SD_BETWEEN_DOGS, references };
}

/** A product is no surer than its least sure factor. */
function weakest(parts: readonly Provenance[]): Provenance {
  const marks = parts.map(({ mark }) => mark);
  return {
    evidence: parts.every(({ evidence }) => evidence === 'A') ? 'A' : 'C',
    mark: marks.includes('M') ? 'M' : marks.includes('C') ? 'C' : 'S',
    sources: [...new Set(parts.flatMap(({ sources }) => sources))],
  };
}

function formulaText(kcal: number, neuterFactor: number, ageFactor: number): string {
  const neuter = neuterFactor === 1 ? '' : ' × 1.8 / 1.6 (intact)';
  const age = ageFactor === 1 ? '' : ' × 1.4 / 1.6 (senior)';
  return `${kcal} × kg^${METABOLIC_EXPONENT}${neuter}${age}`;
}

function afterWeightLoss(
  weightKg: number,
  references: readonly EnergyReference[],
): MaintenanceEnergy {
  const spread = Math.exp(Z90 * AFTER_LOSS.logSd);
  const mid = AFTER_LOSS.kcal * metabolicWeight(weightKg);
  const built = estimate(mid, mid / spread, mid * spread, {
    id: 'maintenanceEnergyAfterLoss',
    label: 'Maintenance energy after weight loss',
    unit: 'kcal/day',
    rangeMeaning: 'holds 90 of 100 slimmed dogs',
    formula: '68.1 × kg^0.75',
    inputs: [{ label: 'Body weight', value: weightKg, unit: 'kg' }],
    ...from('A', 'S', 'german2011'),
    notes: [
      'Measured in 24 dogs that had lost weight: they need far less than other dogs of their size.',
    ],
  });
  return { ...built, logSd: AFTER_LOSS.logSd, references };
}

/** Both published ways to feed growth, and the multiples of resting energy. */
function growthReferences(dog: { weightKg: number; adultWeightKg: number }): EnergyReference[] {
  const rer = restingEnergy(dog.weightKg);
  return [
    {
      label: '130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1), the equation of growth',
      kcalPerDay: growthEnergy(dog),
      source: 'nrcGrowth',
    },
    {
      label: '210, 175 or 140 × kg^0.75 by the share of adult weight',
      kcalPerDay: growthEnergyBySteps(dog),
      source: 'fediafGrowthSteps',
    },
    { label: '3.0 × RER, under 4 months', kcalPerDay: 3 * rer, source: 'hand2010' },
    { label: '2.0 × RER, 4 months to adult', kcalPerDay: 2 * rer, source: 'hand2010' },
  ];
}

/**
 * What is published for an adult of this weight, kcal/day, to be shown beside the estimate.
 * @example
 * publishedReferences(15).find(({ label }) => label.startsWith('110'))?.kcalPerDay // => 838.4
 */
export function publishedReferences(weightKg: number, activity?: Activity): EnergyReference[] {
  const rer = restingEnergy(weightKg);
  const body = metabolicWeight(weightKg);
  const ranged = (label: string, low: number, high: number, source: SourceId): EnergyReference => ({
    label,
    kcalPerDay: (low + high) / 2,
    low,
    high,
    source,
  });
  const working =
    activity === 'working'
      ? [ranged('2.0–5.0 × RER, active or working', 2 * rer, 5 * rer, 'hand2010')]
      : [];
  return [
    ...working,
    { label: '1.6 × RER, neutered adult', kcalPerDay: 1.6 * rer, source: 'hand2010' },
    { label: '1.8 × RER, intact adult', kcalPerDay: 1.8 * rer, source: 'hand2010' },
    ranged('1.2–1.4 × RER, inactive or prone to gain', 1.2 * rer, 1.4 * rer, 'hand2010'),
    ranged('1.4–1.6 × RER, at its ideal after obesity', 1.4 * rer, 1.6 * rer, 'hand2010'),
    {
      label: '98 ± 29 × kg^0.75, pets measured at home',
      kcalPerDay: 98 * body,
      low: 69 * body,
      high: 127 * body,
      source: 'lmuThesis',
    },
    ranged('94–105 × kg^0.75, about 1 h walk a day', 94 * body, 105 * body, 'fediaf2017'),
    { label: '95 × kg^0.75, reference point', kcalPerDay: 95 * body, source: 'fediaf2017' },
    { label: '110 × kg^0.75, reference point', kcalPerDay: 110 * body, source: 'fediaf2017' },
    {
      label: '81.5 × kg^0.93, meta-analysis',
      kcalPerDay: 81.5 * weightKg ** 0.93,
      source: 'bermingham2014',
    },
  ];
}
