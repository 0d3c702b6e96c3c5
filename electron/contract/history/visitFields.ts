import { redFlagLabel } from '../../../core/index.ts';
import type {
  DietItem,
  Footfall,
  LimbGrades,
  Measurement,
  Override,
  VetConsent,
  VisitFacts,
} from '../records.ts';
import type { Field } from './change.ts';
import { entryFields, keyed, noted, one, orderOf, readFields, type Reads } from './fields.ts';

type Limb = keyof LimbGrades;
const LIMB_NAMES: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};

const grades =
  (path: string, gait: string) =>
  (limbs: LimbGrades): Field[] =>
    (Object.keys(LIMB_NAMES) as Limb[]).map((limb) => ({
      path: `${path}.${limb}`,
      label: `Lameness at ${gait}, ${LIMB_NAMES[limb]}`,
      measure: 'lameness grade',
      value: limbs[limb],
    }));

const CONSENT: Reads<VetConsent> = {
  given: one('consent.given', 'The treating vet has referred or consented', 'yes or no'),
  vet: one('consent.vet', 'Vet who consented', 'text'),
  day: one('consent.day', 'Consent given on', 'day'),
  scope: one('consent.scope', 'Consent for what', 'text'),
  expiryDay: one('consent.expiryDay', 'Consent ends on', 'day'),
};

function foods(diet: readonly DietItem[]): Field[] {
  const all = keyed(diet, ({ name, treat }) => (treat ? `${name}, treat` : name));
  return [...all.flatMap(({ entry, key }) => food(entry, key)), orderOf('diet', 'the foods', all)];
}

function food(item: DietItem, key: string): Field[] {
  const { label } = item;
  return entryFields(`diet.${key}`, key, [
    ['name', item.treat ? 'treat fed' : 'fed', 'yes or no', true],
    ['kcalPer100g', 'energy', 'kcal per 100 g', item.kcalPer100g],
    ['gramsPerDay', 'amount', 'g a day', item.gramsPerDay],
    ['gramsPerCup', 'weight of the owner’s own cup', 'g', item.gramsPerCup],
    ['fixedGrams', 'amount stays fixed', 'yes or no', item.fixedGrams],
    ['energyFrom', 'energy computed from the label', 'yes or no', item.energyFrom === 'label'],
    ['label.proteinPct', 'protein', '%', label?.proteinPct ?? null],
    ['label.fatPct', 'fat', '%', label?.fatPct ?? null],
    ['label.fibrePct', 'fibre', '%', label?.fibrePct ?? null],
    ['label.moisturePct', 'moisture', '%', label?.moisturePct ?? null],
    ['label.ashPct', 'ash', '%', label?.ashPct ?? null],
  ]);
}

function measurementName(entry: Measurement): string {
  const limb = LIMB_NAMES[entry.limb];
  if (entry.kind === 'joint angle') return `${entry.joint} ${entry.movement}, ${limb}`;
  return `${entry.kind}, ${limb}`;
}

const MEASURES = {
  'joint angle': 'degrees',
  'thigh girth': 'cm',
  'standing weight': 'kg',
} as const;

function measured(measurements: readonly Measurement[]): Field[] {
  const all = keyed(measurements, measurementName);
  return [
    ...all.flatMap(({ entry, key }) =>
      entryFields(`measurements.${key}`, key.charAt(0).toUpperCase() + key.slice(1), [
        ['value', '', MEASURES[entry.kind], entry.value],
        ['note', 'note', 'text', entry.note],
      ]),
    ),
    orderOf('measurements', 'the measurements', all),
  ];
}

const NO_TIMES = 'none';

function timed(footfalls: readonly Footfall[]): Field[] {
  // One entry a limb; they are stored without an order.
  return footfalls.flatMap(({ limb, touchDowns, liftOffs }) =>
    entryFields(`footfalls.${limb}`, `Footfalls, ${LIMB_NAMES[limb]}`, [
      ['touchDowns', 'touch-downs in s', 'text', touchDowns.join(', ') || NO_TIMES],
      ['liftOffs', 'lift-offs in s', 'text', liftOffs.join(', ') || NO_TIMES],
    ]),
  );
}

function setAside(overrides: readonly Override[]): Field[] {
  const all = keyed(overrides, ({ code }) => code);
  return [
    ...all.map(({ entry, key }): Field => ({
      path: `overrides.${key}`,
      label: `Rule set aside (${key.replaceAll('-', ' ')}), because`,
      measure: 'text',
      value: entry.reason,
    })),
    orderOf('overrides', 'the rules set aside', all),
  ];
}

const VISIT: Reads<VisitFacts> = {
  // A visit stays with its dog.
  dogId: () => [],
  kind: one('kind', 'Kind of visit', 'word'),
  day: one('day', 'Day of the visit', 'day'),
  activity: one('activity', 'Daily activity', 'word'),
  conditioning: one('conditioning', 'Condition for running', 'word'),
  walkBase: one('walkBase', 'Walk base', 'word'),
  surgery: one('surgery', 'Surgery', 'word'),
  airwayDisease: one('airwayDisease', 'Airway disease is known', 'yes or no'),
  airwayClearance: one(
    'airwayClearance',
    'Written clearance for short nose or airways',
    'yes or no',
  ),
  radiographicClearance: one(
    'radiographicClearance',
    'Growth plates closed on radiographs',
    'yes or no',
  ),
  consent: (consent) => readFields(CONSENT, consent),
  weightKg: one('weightKg', 'Body weight', 'kg'),
  weighingMethod: one('weighingMethod', 'How weighed', 'word'),
  scaleStepKg: one('scaleStepKg', 'Step of the scale', 'kg of a scale'),
  bcs: one('bcs', 'Body condition score', 'body condition score'),
  muscle: one('muscle', 'Muscle condition', 'word'),
  targetWeightKg: one('targetWeightKg', 'Target weight', 'kg'),
  foodGoal: one('foodGoal', 'Aim of feeding', 'word'),
  lamenessWalk: grades('lamenessWalk', 'walk'),
  lamenessTrot: grades('lamenessTrot', 'trot'),
  trotLamenessAssessed: one(
    'trotLamenessAssessed',
    'Lameness at trot assessed by a vet',
    'yes or no',
  ),
  gaitNote: one('gaitNote', 'Gait note', 'text'),
  measurements: measured,
  footfalls: timed,
  signs: noted('signs', 'the signs', (id) => `Sign: ${redFlagLabel(id) ?? id}`),
  diet: foods,
  mealsPerDay: one('mealsPerDay', 'Meals a day', 'count'),
  weightLossDiet: one('weightLossDiet', 'Complete diet made for weight loss', 'yes or no'),
  overrides: setAside,
  notes: one('notes', 'Notes on the visit', 'text'),
};

export const visitFields = (facts: VisitFacts): Field[] => readFields(VISIT, facts);
