import { describe, expect, it } from 'vitest';
import {
  footfallTiming,
  froudeNumber,
  gaitChanges,
  hildebrandClass,
  JOINT_REFERENCE,
  judgeMeasurements,
  likelyGait,
  standingShares,
  symmetryIndex,
  type FootfallTimes,
  type GaitMeasurement,
  type Joint,
} from '../../core/training.ts';

// Marks: S read in the source, M from memory, C our arithmetic.

describe('Froude number', () => {
  it('1.0 m/s at 0.5 m is 0.204 (C)', () => {
    expect(froudeNumber({ speedMps: 1, heightM: 0.5 })).toBeCloseTo(0.204, 3);
  });

  // Walk to trot near 0.5, trot to gallop about 2–3 (M).
  it('gives a walk under 0.5, a trot to 2, either to 3, a canter above (M)', () => {
    const gaitAt = (froude: number) =>
      likelyGait({ speedMps: Math.sqrt(froude * 9.80665 * 0.5), heightM: 0.5 }).gait;
    expect([0.45, 0.55, 1.9, 2.1, 2.9, 3.1].map(gaitAt)).toEqual([
      'walk',
      'trot',
      'trot',
      'trot or canter',
      'trot or canter',
      'canter',
    ]);
  });

  it('lets a small dog canter at a pace at which a large one still trots (C)', () => {
    const speedMps = 1000 / 60 / 5;
    expect(likelyGait({ speedMps, heightM: 0.28 }).gait).toBe('canter');
    expect(likelyGait({ speedMps, heightM: 0.65 }).gait).toBe('trot');
    const { canterSpeed, canterPace } = gaitChanges({ heightM: 0.28 });
    expect(canterSpeed.low).toBeCloseTo(Math.sqrt(2 * 9.80665 * 0.28), 9);
    expect(canterSpeed.high).toBeCloseTo(Math.sqrt(3 * 9.80665 * 0.28), 9);
    expect(canterPace.high).toBeCloseTo(1000 / 60 / canterSpeed.low, 9);
  });
});

describe('symmetry index', () => {
  it('40 against 36 is 10.526 % (C)', () => {
    expect(symmetryIndex(40, 36)).toBeCloseTo(10.526, 3);
  });
});

describe('joint angles of Labrador retrievers, Jaegger 2002 (fore limb S, hind limb M)', () => {
  const published: [Joint, number, number, string][] = [
    ['carpus', 32, 196, 'S'],
    ['elbow', 36, 165, 'S'],
    ['shoulder', 57, 165, 'S'],
    ['hip', 50, 162, 'M'],
    ['stifle', 42, 162, 'M'],
    ['tarsus', 39, 164, 'M'],
  ];
  it.each(published)('%s %i / %i (%s)', (joint, flexion, extension, mark) => {
    const reference = JOINT_REFERENCE[joint];
    expect(reference.flexion).toMatchObject({ degrees: flexion, mark });
    expect(reference.extension).toMatchObject({ degrees: extension, mark });
  });

  const stifle = (value: number): GaitMeasurement => ({
    kind: 'joint angle',
    limb: 'leftHind',
    joint: 'stifle',
    movement: 'flexion',
    value,
  });
  // The repeat error is 1–6 degrees (S): changes up to 6 are within error.
  it.each([
    [48, 'within error'],
    [36, 'within error'],
    [49, 'more'],
    [35, 'less'],
  ])('42 then %i degrees: %s', (value, verdict) => {
    expect(judgeMeasurements([stifle(value)], [stifle(42)])[0]!.verdict).toBe(verdict);
  });
});

describe('thigh girth, Bascunan 2016 (S): under 1 cm is within error', () => {
  const girth = (value: number): GaitMeasurement => ({
    kind: 'thigh girth',
    limb: 'leftHind',
    value,
  });
  it.each([
    [32.9, 'within error'],
    [33, 'more'],
    [31, 'less'],
  ])('32 then %d cm: %s', (value, verdict) => {
    expect(judgeMeasurements([girth(value)], [girth(32)])[0]!.verdict).toBe(verdict);
  });
});

describe('standing weight', () => {
  // Fore share 60.4 ± 4.8 % (S); a hind difference above 8.7 % of body weight is worth a flag
  // (C from Hyytiäinen 2012, S).
  it('shows the fore share against 60.4 ± 4.8 %', () => {
    const readings = { leftFore: 9, rightFore: 9.12, leftHind: 6, rightHind: 5.88 };
    const { foreSharePercent } = standingShares(readings);
    expect(foreSharePercent.value).toBeCloseTo(60.4, 9);
    expect([foreSharePercent.low, foreSharePercent.high]).toEqual([60.4 - 4.8, 60.4 + 4.8]);
  });

  it('flags a hind difference above 8.7 % of body weight, and never rules lameness out', () => {
    const at = (difference: number) =>
      standingShares({ leftFore: 9, rightFore: 9, leftHind: 6, rightHind: 6 - difference }, 30);
    expect(at(2.6).reasons).toEqual([]);
    expect(at(2.62).reasons.map(({ code }) => code)).toEqual(['hind-difference']);
    expect(at(0).hindDifferencePercent.notes.join(' ')).toMatch(/does not rule lameness out/);
  });
});

describe('footfalls by Hildebrand’s classes (M)', () => {
  it.each([
    [0, 'pace'],
    [6.25, 'pace'],
    [25, 'lateral sequence, single foot'],
    [43.75, 'lateral sequence, diagonal couplets'],
    [43.76, 'trot'],
    [50, 'trot'],
    [56.25, 'trot'],
    [75, 'diagonal sequence, single foot'],
    [93.76, 'pace'],
    [100, 'pace'],
  ])('lateral phase %d %%: %s', (phase, gait) => {
    expect(hildebrandClass(phase)).toBe(gait);
  });

  /** Six strides of a symmetrical gait. */
  function strides(stride: number, dutyPercent: number, lateralPercent: number): FootfallTimes[] {
    const offsets = {
      leftHind: 0,
      rightHind: 50,
      leftFore: lateralPercent,
      rightFore: (lateralPercent + 50) % 100,
    } as const;
    return (Object.keys(offsets) as (keyof typeof offsets)[]).map((limb) => {
      const touchDowns = Array.from({ length: 7 }, (_, i) => (i + offsets[limb] / 100) * stride);
      const liftOffs = touchDowns.map((time) => time + (dutyPercent / 100) * stride);
      return { limb, touchDowns, liftOffs };
    });
  }

  // Duty factor = stance / stride; over 50 % the feet walk. A trot at 0.45 s a stride, duty 40 %.
  it('tells a running trot', () => {
    const timing = footfallTiming(strides(0.45, 40, 50));
    expect(timing.gait).toBe('trot');
    expect(timing.footing).toBe('running');
    expect(timing.strideS!.mean).toBeCloseTo(0.45, 9);
    expect(timing.dutyPercent!.mean).toBeCloseTo(40, 6);
    expect(timing.lateralPhase.both!.mean).toBeCloseTo(50, 6);
    expect(timing.strides).toBe(6);
  });

  it('tells a walk: lateral sequence at 20 %, duty 65 %', () => {
    const timing = footfallTiming(strides(0.8, 65, 20));
    expect(timing.gait).toBe('lateral sequence, single foot');
    expect(timing.footing).toBe('walking');
  });

  it('tells a pace on either side of 0 %', () => {
    expect(footfallTiming(strides(0.5, 45, 2)).gait).toBe('pace');
    expect(footfallTiming(strides(0.5, 45, 97)).gait).toBe('pace');
  });
});
