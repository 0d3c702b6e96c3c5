import { describe, expect, it } from 'vitest';
import {
  compareLameness,
  compareSides,
  footfallTiming,
  gaitChanges,
  judgeMeasurements,
  judgeTotal,
  likelyGait,
  standingShares,
  symmetryIndex,
  type GaitMeasurement,
} from '../../../core/training.ts';
import type { QuestionnaireTotal } from '../../../core/readiness/record.ts';

// What is told with a measurement, and the bounds of its verdicts.

const girth = (limb: GaitMeasurement['limb'], value: number): GaitMeasurement => ({
  kind: 'thigh girth',
  limb,
  value,
});
const bearing = (limb: GaitMeasurement['limb'], value: number): GaitMeasurement => ({
  kind: 'standing weight',
  limb,
  value,
});
const stifle = (value: number): GaitMeasurement => ({
  kind: 'joint angle',
  limb: 'leftHind',
  joint: 'stifle',
  movement: 'flexion',
  value,
});

describe('a measurement', () => {
  const of = (one: GaitMeasurement, before: GaitMeasurement[] = []) =>
    judgeMeasurements([one], before)[0]!;

  it('of a joint is told with the published mean and the error in degrees', () => {
    const { figure, error } = of(stifle(48));
    expect(error).toBe(6);
    expect(figure).toMatchObject({ value: 48, unit: '°', rules: ['jointErrorDegrees'], mark: 'M' });
    // Stifle flexion 42° (M), repeat error up to 6° (S).
    expect(figure.notes[0]).toContain('42°');
    expect(figure.notes[1]).toContain('6°');
  });

  it('of a thigh is told with the centimetre below which nothing changed', () => {
    const { figure, error, reference, fromReference } = of(girth('leftHind', 38));
    expect({ error, reference, fromReference }).toEqual({
      error: 1,
      reference: null,
      fromReference: null,
    });
    expect(figure).toMatchObject({ unit: 'cm', rules: ['girthErrorCm'] });
    expect(figure.notes[0]).toContain('under {1 cm}');
  });

  it('of the weight on a limb is told with the share of the reading that is taken for its error', () => {
    const { figure, error, reference } = of(bearing('leftFore', 10));
    expect(figure).toMatchObject({ unit: 'kg', rules: ['standingErrorPercent'] });
    expect(reference).toBeNull();
    const percent = (100 * error) / 10;
    expect(figure.notes.join(' ')).toContain(`${percent} % of the reading`);
    // A change as large as the error is still within it, as with a joint.
    expect(of(bearing('leftFore', 10), [bearing('leftFore', 10 - error)]).verdict).toBe(
      'within error',
    );
    expect(of(bearing('leftFore', 10), [bearing('leftFore', 10 - error - 0.01)]).verdict).toBe(
      'more',
    );
  });

  it('is compared with the same kind on the same limb only', () => {
    const others = [girth('rightHind', 30), bearing('leftHind', 6), stifle(40)];
    expect(of(girth('leftHind', 38), others).change).toBeNull();
    expect(of(girth('leftHind', 38), [...others, girth('leftHind', 36)]).change).toBe(2);
  });
});

describe('left against right', () => {
  it('takes the error of the side that reads more', () => {
    const error = (left: number, right: number) =>
      compareSides([bearing('leftHind', left), bearing('rightHind', right)])[0]!.error;
    expect(error(8, 4)).toBe(error(4, 8));
    expect(error(8, 4)).toBe(judgeMeasurements([bearing('leftHind', 8)])[0]!.error);
  });

  it('says nothing of two limbs that bear nothing, and all of a limb that alone does', () => {
    expect(compareSides([bearing('leftHind', 0), bearing('rightHind', 0)])).toEqual([]);
    expect(compareSides([bearing('leftHind', 0), bearing('rightHind', 5)])).toMatchObject([
      { label: 'Hind standing weight', symmetryIndex: -200, difference: -5, withinError: false },
    ]);
    expect(compareSides([bearing('leftFore', 5), bearing('rightFore', 5)])).toMatchObject([
      { label: 'Fore standing weight', symmetryIndex: 0, withinError: true },
    ]);
  });
});

describe('the weight a dog stands with', () => {
  it('is even where a pair is even, or bears nothing', () => {
    const at = (leftHind: number, rightHind: number) =>
      standingShares({ leftFore: 9, rightFore: 6, leftHind, rightHind });
    expect(at(0, 0)).toMatchObject({ symmetryHind: 0 });
    expect(at(5, 5).symmetryHind).toBe(0);
    expect(at(6, 4).symmetryHind).toBeCloseTo(symmetryIndex(6, 4), 9);
    expect(at(5, 5).symmetryFore).toBeCloseTo(symmetryIndex(9, 6), 9);
  });

  it('is told with what it is set against', () => {
    const readings = { leftFore: 9, rightFore: 9, leftHind: 8, rightHind: 4 };
    const { foreSharePercent, hindDifferencePercent, reasons } = standingShares(readings, 40);
    // 60.4 ± 4.8 % (S); 4 kg of 40 kg are 10 %, over 8.7 % (C).
    expect(foreSharePercent).toMatchObject({ unit: '%', sources: ['standingShare'] });
    expect(foreSharePercent.notes[0]).toContain('60.4 ± 4.8 %');
    expect(hindDifferencePercent.value).toBeCloseTo(10, 9);
    expect(hindDifferencePercent.inputs).toEqual([{ label: 'Body weight', value: 40, unit: 'kg' }]);
    expect(reasons).toMatchObject([
      { code: 'hind-difference', params: { difference: 10, limit: 8.7 } },
    ]);
  });
});

describe('the gait at a speed', () => {
  it('changes at the thresholds themselves: a trot from 0.5, either from 2 to 3 (M)', () => {
    // Half a metre at the withers: the speeds that make the Froude number come out whole.
    const { trotSpeed, canterSpeed } = gaitChanges({ heightM: 0.5 });
    const near = (speedMps: number) => likelyGait({ speedMps, heightM: 0.5 }).froude.value;
    expect(near(trotSpeed.value)).toBeCloseTo(0.5, 9);
    expect(near(canterSpeed.low)).toBeCloseTo(2, 9);
    expect(near(canterSpeed.high)).toBeCloseTo(3, 9);
    expect(near(canterSpeed.mid)).toBeCloseTo(2.5, 9);
  });

  it('is told with speed and height, and with the thresholds in force', () => {
    const { froude } = likelyGait({ speedMps: 2, heightM: 0.5, rules: { froudeTrot: 0.6 } });
    expect(froude).toMatchObject({
      unit: '',
      formula: 'v² / (g × h)',
      inputs: [
        { label: 'Speed', value: 2, unit: 'm/s' },
        { label: 'Height at the withers', value: 0.5, unit: 'm' },
      ],
      mark: 'M',
      rules: ['froudeTrot', 'froudeCanterLow', 'froudeCanterHigh'],
    });
    expect(froude.sources.length).toBeGreaterThan(0);
    expect(froude.notes[0]).toMatch(/near 0\.6, .* 2–3/);
  });

  it('tells each speed and pace with its unit, its height and its rule', () => {
    const { trotSpeed, canterSpeed, canterPace } = gaitChanges({ heightM: 0.5 });
    const inputs = [{ label: 'Height at the withers', value: 0.5, unit: 'm' }];
    expect(trotSpeed).toMatchObject({ unit: 'm/s', inputs, rules: ['froudeTrot'] });
    const canter = {
      inputs,
      rangeMeaning: 'Froude 2–3',
      rules: ['froudeCanterLow', 'froudeCanterHigh'],
    };
    expect(canterSpeed.figure).toMatchObject({ unit: 'm/s', ...canter });
    expect(canterPace.figure).toMatchObject({ unit: 'min/km', ...canter });
  });
});

describe('the total of a questionnaire', () => {
  const total = (name: string, day: string, points: number): QuestionnaireTotal => ({
    name,
    day,
    total: points,
  });
  const before = [
    total('LOAD', '2026-02-01', 20),
    total(' load', '2026-03-01', 16),
    total('LOAD', '2026-01-01', 30),
    total('COI', '2026-03-20', 40),
    total('LOAD', '2026-04-01', 9),
    total('LOAD', '2026-05-01', 2),
  ];

  it('is set against the last earlier one of its name', () => {
    const change = judgeTotal(total('Load ', '2026-04-01', 15), before);
    expect(change).toMatchObject({ change: -1, since: before[1], leastImportant: 4 });
    expect(judgeTotal(total('LOAD', '2026-01-01', 15), before)).toBeNull();
    const twice = [total('COI', '2026-03-01', 1), total('COI', '2026-03-01', 2)];
    expect(judgeTotal(total('COI', '2026-04-01', 2), twice)!.since).toBe(twice[1]);
  });

  // Least important differences of 4 and 14 points (S); fewer points are better.
  it.each([
    ['LOAD', 12, 'better'],
    ['LOAD', 13, 'no important change'],
    ['LOAD', 16, 'no important change'],
    ['LOAD', 19, 'no important change'],
    ['LOAD', 20, 'worse'],
    ['COI', 2, 'better'],
    ['COI', 3, 'no important change'],
    ['COI', 30, 'worse'],
    ['Our own', 0, 'not judged'],
  ])('of %s, 16 points before and %d now: %s', (name, points, verdict) => {
    const then = [total(name, '2026-03-01', 16)];
    expect(judgeTotal(total(name, '2026-04-01', points), then)!.verdict).toBe(verdict);
  });
});

describe('lameness of two visits', () => {
  it('is better with a lower grade only, worse with a higher one', () => {
    const verdicts = (before: number, now: number) =>
      compareLameness({ walk: { leftFore: before } }, { walk: { leftFore: now } }).map(
        ({ verdict }) => verdict,
      );
    expect([verdicts(2, 1), verdicts(2, 2), verdicts(2, 3)]).toEqual([
      ['better'],
      ['same'],
      ['worse'],
    ]);
  });
});

describe('the spread of strides', () => {
  const hind = (touchDowns: number[]) =>
    footfallTiming([{ limb: 'leftHind', touchDowns, liftOffs: [] }]).strideS!;

  // 0.4, 0.5 and 0.6 s: mean 0.5, squares 0.01 + 0 + 0.01 over 2, their root 0.1 (C).
  it('is that of a sample', () => {
    const { mean, sd, count } = hind([0, 0.4, 0.9, 1.5]);
    expect([mean, sd, count]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.1, 9), 3]);
  });

  it('on the circle is that of the line where nothing crosses its end', () => {
    // The other foot 20, 30 and 40 % into strides of 1 s: mean 30, deviation 10 (C).
    const phase = footfallTiming([
      { limb: 'leftHind', touchDowns: [1, 2, 3, 4], liftOffs: [] },
      { limb: 'leftFore', touchDowns: [1.2, 2.3, 3.4], liftOffs: [] },
    ]).lateralPhase.left!;
    expect([phase.mean, phase.sd]).toEqual([expect.closeTo(30, 1), expect.closeTo(10, 1)]);
  });

  it('finds no phase in a stride the other foot left out, nor in another stride', () => {
    const phase = footfallTiming([
      { limb: 'leftHind', touchDowns: [1, 2, 3, 4], liftOffs: [] },
      { limb: 'leftFore', touchDowns: [0.9, 1.4, 3.4, 4.2], liftOffs: [] },
    ]).lateralPhase.left!;
    expect(phase).toMatchObject({ count: 2 });
    expect(phase.mean).toBeCloseTo(40, 6);
  });
});
