import {
  compareSides,
  judgeMeasurements,
  standingShares,
  type JudgedMeasurement,
  type SideComparison,
  type StandingShares,
} from '../../core/index.ts';
import { toRuleChanges } from '../../electron/contract/plans/request.ts';
import type { Measurement, RuleChange } from '../../electron/contract/records.ts';
import type { Shown } from '../units/shown.ts';
import { measureKey } from './measureEntry.ts';

/** What core makes of one visit's measurements. */
export interface Judged {
  readonly byKey: ReadonlyMap<string, JudgedMeasurement>;
  readonly sides: readonly SideComparison[];
  /** Null until all four limbs were weighed. */
  readonly standing: StandingShares | null;
}

export function judge(
  now: readonly Measurement[],
  before: readonly Measurement[],
  rules: readonly RuleChange[],
  weightKg: number | null,
): Judged {
  const changes = toRuleChanges(rules);
  const judged = judgeMeasurements(now, before, changes);
  return {
    byKey: new Map(judged.map((entry) => [measureKey(entry.measurement), entry])),
    sides: compareSides(now, changes),
    standing: standingOf(now, weightKg, changes),
  };
}

function standingOf(
  now: readonly Measurement[],
  weightKg: number | null,
  changes: ReturnType<typeof toRuleChanges>,
): StandingShares | null {
  const on = (limb: Measurement['limb']) =>
    now.find((entry) => entry.kind === 'standing weight' && entry.limb === limb)?.value;
  const [leftFore, rightFore] = [on('leftFore'), on('rightFore')];
  const [leftHind, rightHind] = [on('leftHind'), on('rightHind')];
  if (leftFore === undefined || rightFore === undefined) return null;
  if (leftHind === undefined || rightHind === undefined) return null;
  if (leftFore + rightFore + leftHind + rightHind < 0.1) return null;
  const readings = { leftFore, rightFore, leftHind, rightHind };
  return standingShares(readings, weightKg ?? undefined, changes);
}

/** A measured value with its unit; girths keep a millimetre. */
export function measureText(value: number, unit: string, shown: Shown): string {
  if (unit === 'cm') return shown.amount('girth', value);
  return shown.figure(Number(value.toFixed(1)), unit);
}

/** How far a value lies from another, as both are shown: "+4°", "−0.5 cm". */
export function signed(from: number, to: number, unit: string, shown: Shown): string {
  const dimension = unit === 'cm' ? 'girth' : unit === 'kg' ? 'weight' : null;
  if (dimension !== null) {
    return `${shown.change(dimension, from, to)}\u00a0${shown.unitName(dimension)}`;
  }
  const by = Number(to.toFixed(1)) - Number(from.toFixed(1));
  return `${by < 0 ? '−' : '+'}${measureText(Math.abs(by), unit, shown)}`;
}

/** The change since last time as a sentence's end. */
export function changeText(
  { measurement, change, verdict, figure }: JudgedMeasurement,
  shown: Shown,
): string {
  if (change === null) return 'first measurement';
  const { value } = measurement;
  const size = signed(value - change, value, figure.unit, shown);
  return verdict === 'within error' ? `${size}, within error` : `${size}, ${verdict}`;
}
