import { redFlagLabel } from '../../../core/index.ts';
import type { Limb } from '../../../core/readiness/types.ts';
import type { DietItem } from '../food/records.ts';
import type { Field } from '../history/change.ts';
import { capital, entryFields, keyed, listed, noted, orderOf } from '../history/fields.ts';
import type { Footfall, LimbGrades, Measurement, Override } from './parts.ts';

// How the lists of a visit read in its history.

export const LIMB_NAMES: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};

export const grades =
  (gait: string) =>
  (path: string, limbs: LimbGrades): Field[] =>
    (Object.keys(LIMB_NAMES) as Limb[]).map((limb) => ({
      path: `${path}.${limb}`,
      label: `Lameness at ${gait}, ${LIMB_NAMES[limb]}`,
      measure: 'lameness grade',
      value: limbs[limb],
    }));

export const foods = listed<DietItem>(
  'the foods',
  ({ name, treat }) => (treat ? `${name}, treat` : name),
  (key) => key,
  ({ label, ...item }) => [
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
  ],
);

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

export const measured = listed<Measurement>(
  'the measurements',
  measurementName,
  capital,
  ({ kind, value, note }) => [
    ['value', '', MEASURES[kind], value],
    ['note', 'note', 'text', note],
  ],
);

const NO_TIMES = 'none';

export function timed(path: string, footfalls: readonly Footfall[]): Field[] {
  // One entry a limb; they are stored without an order.
  return footfalls.flatMap(({ limb, touchDowns, liftOffs }) =>
    entryFields(`${path}.${limb}`, `Footfalls, ${LIMB_NAMES[limb]}`, [
      ['touchDowns', 'touch-downs in s', 'text', touchDowns.join(', ') || NO_TIMES],
      ['liftOffs', 'lift-offs in s', 'text', liftOffs.join(', ') || NO_TIMES],
    ]),
  );
}

export function setAside(path: string, overrides: readonly Override[]): Field[] {
  const all = keyed(overrides, ({ code }) => code);
  return [
    ...all.map(({ entry, key }): Field => ({
      path: `${path}.${key}`,
      label: `Rule set aside (${key.replaceAll('-', ' ')}), because`,
      measure: 'text',
      value: entry.reason,
    })),
    orderOf(path, 'the rules set aside', all),
  ];
}

export const signs = noted('the signs', 'Sign', (id) => redFlagLabel(id) ?? id);
