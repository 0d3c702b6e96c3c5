import { inRange } from '../check.ts';
import { figure, type Figure, type Provenance } from '../figure.ts';
import type { RuleChanges } from '../rules/all.ts';
import { GAIT_RULES, gaitRuleValues, type GaitRuleValues } from '../rules/gait.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { Limb } from '../readiness/types.ts';
import { JOINT_REFERENCE } from './reference.ts';
import { symmetryIndex } from './symmetry.ts';
import type { ChangeVerdict, GaitMeasurement, JudgedMeasurement, SideComparison } from './types.ts';

const RANGES = {
  'joint angle': { unit: '°', min: 0, max: 270 },
  'thigh girth': { unit: 'cm', min: 5, max: 100 },
  'standing weight': { unit: 'kg', min: 0, max: 150 },
} as const;

const LIMB_WORDS: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};

/**
 * Judges measurements against the published reference and against the last visit's. A change no
 * larger than the measurement error is "within error", which is a result, not a gap.
 *
 * @param previous the same dog's measurements of an earlier visit
 * @throws RangeError for an angle outside 0–270°, a girth outside 5–100 cm, a weight outside 0–150 kg
 * @example judgeMeasurements(
 *   [{ kind: 'thigh girth', limb: 'leftHind', value: 38.5 }],
 *   [{ kind: 'thigh girth', limb: 'leftHind', value: 38 }],
 * )[0] // => { change: 0.5, error: 1, verdict: 'within error', … }
 * Sources: Jaegger et al. 2002 (fore S, hind M; error S); Bascunan et al. 2016 (S).
 */
export function judgeMeasurements(
  measurements: readonly GaitMeasurement[],
  previous: readonly GaitMeasurement[] = [],
  changes?: RuleChanges,
): JudgedMeasurement[] {
  const rules = gaitRuleValues(changes);
  return measurements.map((measurement) => {
    checkMeasurement(measurement);
    const last = previous.find((other) => sameAs(measurement, other));
    const reference = referenceOf(measurement);
    const error = errorOf(measurement, rules);
    const change = last === undefined ? null : measurement.value - last.value;
    return {
      measurement,
      figure: measured(measurement, rules),
      reference,
      fromReference: reference === null ? null : measurement.value - reference,
      change,
      error,
      verdict: verdictOf(measurement, change, error),
    };
  });
}

function checkMeasurement({ kind, value }: GaitMeasurement): void {
  const { unit, ...range } = RANGES[kind];
  inRange('value', value, unit, range);
}

/** The same thing measured on the same limb. */
function sameAs(a: GaitMeasurement, b: GaitMeasurement): boolean {
  if (a.kind !== b.kind || a.limb !== b.limb) return false;
  if (a.kind !== 'joint angle' || b.kind !== 'joint angle') return true;
  return a.joint === b.joint && a.movement === b.movement;
}

function referenceOf(measurement: GaitMeasurement): number | null {
  if (measurement.kind !== 'joint angle') return null;
  return JOINT_REFERENCE[measurement.joint][measurement.movement].degrees;
}

function errorOf({ kind, value }: GaitMeasurement, rules: GaitRuleValues): number {
  if (kind === 'joint angle') return rules.jointErrorDegrees;
  return kind === 'thigh girth' ? rules.girthErrorCm : (value * rules.standingErrorPercent) / 100;
}

/** Angles up to 6 degrees are within error; a girth has to change by a full centimetre. */
function verdictOf({ kind }: GaitMeasurement, change: number | null, error: number): ChangeVerdict {
  if (change === null) return 'first measurement';
  const size = Math.abs(change);
  const within = kind === 'thigh girth' ? size < error : size <= error;
  if (within) return 'within error';
  return change > 0 ? 'more' : 'less';
}

/**
 * "Left hind stifle flexion", "Right hind thigh girth".
 * @example
 * measurementLabel({ kind: 'thigh girth', limb: 'leftHind', value: 38 })
 *   // => 'Left hind thigh girth'
 */
export function measurementLabel(measurement: GaitMeasurement): string {
  const limb = LIMB_WORDS[measurement.limb];
  const what =
    measurement.kind === 'joint angle'
      ? `${measurement.joint} ${measurement.movement}`
      : measurement.kind;
  return `${limb[0]!.toUpperCase()}${limb.slice(1)} ${what}`;
}

function measured(measurement: GaitMeasurement, rules: GaitRuleValues): Figure {
  return figure(measurement.value, {
    id: `gait-${measurement.kind.replace(' ', '-')}`,
    label: measurementLabel(measurement),
    unit: RANGES[measurement.kind].unit,
    formula: 'measured',
    ...measuredFrom(measurement, rules),
    notes: notesFor(measurement, rules),
  });
}

function measuredFrom(measurement: GaitMeasurement, rules: GaitRuleValues): Provenance {
  if (measurement.kind === 'joint angle') {
    const { evidence, mark, sources } = JOINT_REFERENCE[measurement.joint][measurement.movement];
    return { evidence, mark, sources, rules: ['jointErrorDegrees'] };
  }
  if (measurement.kind === 'thigh girth') {
    return provenanceOf(GAIT_RULES.girthErrorCm, rules.girthErrorCm);
  }
  return provenanceOf(GAIT_RULES.standingErrorPercent, rules.standingErrorPercent);
}

function notesFor(measurement: GaitMeasurement, rules: GaitRuleValues): string[] {
  if (measurement.kind === 'joint angle') {
    const reference = JOINT_REFERENCE[measurement.joint][measurement.movement].degrees;
    return [
      `Published mean of sound Labrador retrievers ${reference}°; other builds differ.`,
      `Changes up to ${rules.jointErrorDegrees}° are within the error of the measurement.`,
    ];
  }
  if (measurement.kind === 'thigh girth') {
    return [
      `Changes under {${rules.girthErrorCm} cm} are within the error of the measurement.`,
      'Record site, stance and clip: only a girth taken the same way can be compared.',
    ];
  }
  const percent = rules.standingErrorPercent;
  return [`No repeat error was found; ${percent} % of the reading is taken. Measure three times.`];
}

const PAIRS = [
  { left: 'leftFore', right: 'rightFore', end: 'Fore' },
  { left: 'leftHind', right: 'rightHind', end: 'Hind' },
] as const;

/**
 * Left against right of everything that was measured on both sides.
 * @example compareSides([
 *   { kind: 'thigh girth', limb: 'leftHind', value: 40 },
 *   { kind: 'thigh girth', limb: 'rightHind', value: 36 },
 * ])[0]
 *   // => { label: 'Hind thigh girth', symmetryIndex: 10.526, difference: 4, withinError: false, … }
 */
export function compareSides(
  measurements: readonly GaitMeasurement[],
  changes?: RuleChanges,
): SideComparison[] {
  const rules = gaitRuleValues(changes);
  return PAIRS.flatMap(({ left, right, end }) =>
    measurements
      .filter(({ limb }) => limb === left)
      .flatMap((onLeft): SideComparison[] => {
        const other = measurements.find((candidate) =>
          sameAs({ ...onLeft, limb: right }, candidate),
        );
        if (other === undefined || onLeft.value + other.value === 0) return [];
        const difference = onLeft.value - other.value;
        const error = errorOf(onLeft.value > other.value ? onLeft : other, rules);
        const what = measurementLabel(onLeft).replace(/^Left (fore|hind) /, '');
        return [
          {
            label: `${end} ${what}`,
            left: onLeft.value,
            right: other.value,
            unit: RANGES[onLeft.kind].unit,
            symmetryIndex: symmetryIndex(onLeft.value, other.value),
            difference,
            error,
            withinError: verdictOf(onLeft, difference, error) === 'within error',
          },
        ];
      }),
  );
}
