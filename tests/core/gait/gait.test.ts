import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareLameness,
  compareSides,
  froudeNumber,
  gaitChanges,
  judgeMeasurements,
  likelyGait,
  paceOfSpeed,
  speedOfPace,
  standingShares,
  symmetryIndex,
  type GaitMeasurement,
} from '../../../core/training.ts';
import { evenly, holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const height = evenly(0.1, 1.2);
const speed = evenly(0, 20);
const reading = evenly(0.01, 1000);
/** Four of them come to no more than the heaviest dog. */
const onOneLimb = evenly(0.1, 37.5);

describe('pace and gait', () => {
  it('gives the same Froude number to dogs whose speed grows with the root of their height', () => {
    holds(
      fc.property(speed, height, height, (speedMps, a, b) => {
        const other = Math.min(20, speedMps * Math.sqrt(b / a));
        fc.pre(other < 20);
        expect(froudeNumber({ speedMps: other, heightM: b })).toBeCloseTo(
          froudeNumber({ speedMps, heightM: a }),
          9,
        );
      }),
      RUNS,
    );
  });

  it('changes gait exactly at the speeds it names', () => {
    holds(
      fc.property(height, (heightM) => {
        const { trotSpeed, canterSpeed } = gaitChanges({ heightM });
        const gaitAt = (speedMps: number) => likelyGait({ speedMps, heightM }).gait;
        expect(gaitAt(trotSpeed.value * 0.999)).toBe('walk');
        expect(gaitAt(trotSpeed.value * 1.001)).toBe('trot');
        expect(gaitAt(canterSpeed.low * 1.001)).toBe('trot or canter');
        expect(gaitAt(canterSpeed.high * 1.001)).toBe('canter');
      }),
      RUNS,
    );
  });

  it('turns pace into speed and back', () => {
    expect(speedOfPace(5)).toBeCloseTo(3.333, 3);
    expect(paceOfSpeed(speedOfPace(6.5))).toBeCloseTo(6.5, 9);
  });

  it('refuses what cannot be, by name', () => {
    expect(() => froudeNumber({ speedMps: -1, heightM: 0.5 })).toThrow(/speedMps.*m\/s/);
    expect(() => froudeNumber({ speedMps: 1, heightM: 0 })).toThrow(/heightM.*0.1.*m/);
    expect(() => froudeNumber({ speedMps: Number.NaN, heightM: 0.5 })).toThrow(RangeError);
    expect(() => speedOfPace(1)).toThrow(/paceMinPerKm/);
  });
});

describe('symmetry index', () => {
  it('changes its sign with the sides, is 0 when alike, 200 when one bears all', () => {
    holds(
      fc.property(reading, reading, (a, b) => {
        expect(symmetryIndex(a, b)).toBeCloseTo(-symmetryIndex(b, a), 9);
        expect(Math.abs(symmetryIndex(a, b))).toBeLessThanOrEqual(200);
        expect(symmetryIndex(a, a)).toBe(0);
      }),
      RUNS,
    );
    expect(symmetryIndex(3, 0)).toBe(200);
  });

  it('refuses negative numbers and nothing at all', () => {
    expect(() => symmetryIndex(-1, 2)).toThrow(RangeError);
    expect(() => symmetryIndex(0, 0)).toThrow(RangeError);
  });
});

describe('measurements', () => {
  const angle = (limb: 'leftHind' | 'rightHind', value: number): GaitMeasurement => ({
    kind: 'joint angle',
    limb,
    joint: 'stifle',
    movement: 'extension',
    value,
  });

  it('show the reference, and what a first measurement is', () => {
    const [judged] = judgeMeasurements([angle('leftHind', 150)]);
    expect(judged).toMatchObject({
      reference: 162,
      fromReference: -12,
      change: null,
      verdict: 'first measurement',
    });
    expect(judged!.figure.label).toBe('Left hind stifle extension');
  });

  it('are compared with the same joint, movement and limb only', () => {
    const before: GaitMeasurement[] = [
      angle('rightHind', 100),
      { kind: 'joint angle', limb: 'leftHind', joint: 'hip', movement: 'extension', value: 90 },
      { kind: 'joint angle', limb: 'leftHind', joint: 'stifle', movement: 'flexion', value: 42 },
      angle('leftHind', 158),
    ];
    const [judged] = judgeMeasurements([angle('leftHind', 150)], before);
    expect(judged).toMatchObject({ change: -8, verdict: 'less' });
  });

  it('of both sides are set against each other, within error or not', () => {
    const pairs = compareSides([
      angle('leftHind', 150),
      angle('rightHind', 156),
      { kind: 'thigh girth', limb: 'leftHind', value: 33 },
      { kind: 'thigh girth', limb: 'rightHind', value: 35 },
      { kind: 'thigh girth', limb: 'leftFore', value: 20 },
    ]);
    expect(pairs.map(({ label, withinError }) => [label, withinError])).toEqual([
      ['Hind stifle extension', true],
      ['Hind thigh girth', false],
    ]);
    expect(pairs[1]!.symmetryIndex).toBeCloseTo(symmetryIndex(33, 35), 9);
  });

  it('follow the practice’s own error', () => {
    const [judged] = judgeMeasurements([angle('leftHind', 150)], [angle('leftHind', 155)], {
      jointErrorDegrees: 4,
    });
    expect(judged!.verdict).toBe('less');
  });

  it('are refused out of range, by name', () => {
    expect(() => judgeMeasurements([angle('leftHind', 300)])).toThrow(/value.*°/);
  });
});

describe('standing weight', () => {
  it('shares add up to 100 %, whatever the readings', () => {
    holds(
      fc.property(onOneLimb, onOneLimb, onOneLimb, onOneLimb, (a, b, c, d) => {
        const { shares, foreSharePercent } = standingShares({
          leftFore: a,
          rightFore: b,
          leftHind: c,
          rightHind: d,
        });
        const sum = Object.values(shares).reduce((total, share) => total + share, 0);
        expect(sum).toBeCloseTo(100, 9);
        expect(foreSharePercent.value).toBeCloseTo(shares.leftFore + shares.rightFore, 9);
      }),
      RUNS,
    );
  });

  it('refuses a dog that weighs nothing', () => {
    const nothing = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    expect(() => standingShares(nothing)).toThrow(/weightKg/);
  });
});

describe('lameness of two visits', () => {
  it('is set side by side, limb by limb, and never converted', () => {
    const changes = compareLameness(
      { walk: { leftHind: 2 }, trot: { leftHind: 3, rightFore: 1 } },
      { walk: { leftHind: 1 }, trot: { leftHind: 3, leftFore: 1, rightFore: null } },
    );
    expect(changes.map(({ gait, limb, verdict }) => [gait, limb, verdict])).toEqual([
      ['walk', 'leftHind', 'better'],
      ['trot', 'leftFore', 'not seen before'],
      ['trot', 'rightFore', 'not seen now'],
      ['trot', 'leftHind', 'same'],
    ]);
    expect(() => compareLameness({}, { walk: { leftHind: 6 } })).toThrow(/walk.leftHind/);
  });
});
