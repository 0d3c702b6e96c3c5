import type { NumberField } from './fieldKinds.ts';

/** What a typed quantity is called, its unit and its accepted range. */
export type Limit = Pick<NumberField, 'label' | 'unit' | 'min' | 'max' | 'whole'>;

/** Quantities that are no field of a record; those of records stand beside this file. */
export const QUANTITIES = {
  lameness: { label: 'Lameness grade', unit: 'of 5', min: 0, max: 5 },
  palpation: { label: 'Pain on palpation', unit: 'of 4', min: 0, max: 4 },
  questionnaireTotal: {
    label: 'Total of the questionnaire',
    unit: 'points',
    min: 0,
    max: 1000,
    whole: true,
  },
  kcalPer100g: { label: 'Energy of the food', unit: 'kcal per 100 g', min: 5, max: 950 },
  gramsPerDay: { label: 'Amount', unit: 'g a day', min: 0, max: 10000 },
  gramsPerCup: { label: 'Weight of the owner’s own cup', unit: 'g', min: 1, max: 1000 },
  nutrientPct: { label: 'Share on the label', unit: '%', min: 0, max: 100 },
  changeoverDays: { label: 'Days of the changeover', unit: 'days', min: 7, max: 10, whole: true },
  kcalPerDay: { label: 'Daily energy', unit: 'kcal a day', min: 1, max: 20000 },
  sessionsPerWeek: { label: 'Sessions', unit: 'a week', min: 2, max: 4 },
  continuousMinutes: { label: 'Running without a break', unit: 'min', min: 1, max: 240 },
  distanceKm: { label: 'Distance', unit: 'km', min: 0.2, max: 100 },
  paceMinPerKm: { label: 'Pace', unit: 'min per km', min: 2, max: 20 },
  ownerMinutes: { label: 'Owner runs without a break', unit: 'min', min: 0, max: 240, whole: true },
  walkMinutesNow: { label: 'Walks briskly today', unit: 'min', min: 1, max: 120, whole: true },
  capPercent: { label: 'Weekly rise', unit: '%', min: 5, max: 30 },
  climbM: { label: 'Climb per session', unit: 'm', min: 0, max: 5000 },
  jointAngle: { label: 'Joint angle', unit: 'degrees', min: 0, max: 270 },
  girthCm: { label: 'Thigh girth', unit: 'cm', min: 5, max: 100 },
  standingKg: { label: 'Standing weight on the limb', unit: 'kg', min: 0, max: 150 },
  footfallSeconds: { label: 'Time of a footfall', unit: 's', min: 0, max: 3600 },
  revision: { label: 'Revision of the record', unit: 'changes', min: 1, max: 1_000_000_000 },
  retentionYears: { label: 'Retention period', unit: 'years', min: 0, max: 50, whole: true },
  // Some minutes of printing; ours (D).
  batchDogs: { label: 'Dogs to print sheets for', unit: 'dogs', min: 1, max: 100 },
  calendarYear: { label: 'Year', unit: '', min: 1980, max: 2150, whole: true },
  listOffset: { label: 'Start of the list', unit: 'dogs', min: 0, max: 10_000_000 },
} as const satisfies Record<string, Limit>;

export type QuantityName = keyof typeof QUANTITIES;

/** How long typed text may be, in characters. */
export const TEXT_LENGTH = { line: 200, address: 1000, notes: 20000 } as const;

type Spelled = (amount: string, unit: string) => string;
const plain: Spelled = (amount, unit) => `${amount} ${unit}`.trimEnd();
const span = ({ min, max, unit }: Limit, spelled: Spelled): string =>
  `from ${spelled(`${min} to ${max}`, unit)}`;

/** The sentence for a value outside its limit, e.g. "Body weight must be from 0.1 to 150 kg." */
export const limitSentence = (limit: Limit, spelled = plain): string =>
  `${limit.label} must be ${span(limit, spelled)}.`;

/** The sentence for a part of one, e.g. "Meals must be a whole number from 1 to 6 a day." */
export const wholeSentence = (limit: Limit, spelled = plain): string =>
  `${limit.label} must be a whole number ${span(limit, spelled)}.`;
