import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { footfallTiming, hildebrandClass, type FootfallTimes } from '../../../core/training.ts';
import { circularSpread, spread } from '../../../core/gait/spread.ts';
import { evenly, holds } from '../../support/laws.ts';

type LimbId = FootfallTimes['limb'];

/** Regular strides: each limb's contact as % of the stride after the left hind one. */
function strides(
  stride: number,
  dutyPercent: number,
  offsets: Readonly<Partial<Record<LimbId, number>>>,
  count = 8,
): FootfallTimes[] {
  return (Object.entries(offsets) as [LimbId, number][]).map(([limb, offset]) => {
    const touchDowns = Array.from({ length: count }, (_, i) => (i + offset / 100) * stride);
    return { limb, touchDowns, liftOffs: touchDowns.map((t) => t + (dutyPercent / 100) * stride) };
  });
}

const symmetrical = (phase: number) => ({
  leftHind: 0,
  rightHind: 50,
  leftFore: phase,
  rightFore: (phase + 50) % 100,
});

describe('footfall timing', () => {
  it('finds stride, duty factor and phase again that strides were made from', () => {
    holds(
      fc.property(evenly(0.2, 1.5), evenly(10, 90), evenly(1, 99), (stride, duty, phase) => {
        const timing = footfallTiming(strides(stride, duty, symmetrical(phase)));
        expect(timing.strideS!.mean).toBeCloseTo(stride, 9);
        expect(timing.strideS!.sd).toBeCloseTo(0, 9);
        expect(timing.dutyPercent!.mean).toBeCloseTo(duty, 6);
        expect(timing.lateralPhase.both!.mean).toBeCloseTo(phase, 6);
        expect(timing.footing).toBe(duty > 50 ? 'walking' : 'running');
        expect(timing.pairPhase.hind!.mean).toBeCloseTo(50, 6);
        expect(timing.stanceSymmetry.hind).toBeCloseTo(0, 6);
        expect(timing.strides).toBe(7);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('takes a pace that scatters round 0 % as a pace', () => {
    const times = strides(0.5, 45, symmetrical(0), 12).map((entry) => ({
      ...entry,
      touchDowns: entry.touchDowns.map((time, index) =>
        entry.limb.endsWith('Fore') ? time + 1 + (index % 2 === 0 ? 0.01 : -0.01) : time + 1,
      ),
      liftOffs: entry.liftOffs.map((time) => time + 1),
    }));
    const timing = footfallTiming(times);
    expect(timing.gait).toBe('pace');
    expect(timing.lateralPhase.both!.sd).toBeLessThan(5);
  });

  it('calls a gallop asymmetrical, and says that a lame dog can look so', () => {
    const gallop = { leftHind: 0, rightHind: 15, leftFore: 55, rightFore: 70 };
    const timing = footfallTiming(strides(0.45, 30, gallop));
    expect(timing.gait).toBe('asymmetrical (canter or gallop)');
    expect(timing.reasons[0]!.text).toMatch(/lame/);
    expect(timing.reasons[0]!.params).toEqual({ tolerance: 10 });
  });

  it.each([
    ['hind', { leftHind: 0, rightHind: 20, leftFore: 50, rightFore: 0 }],
    ['fore', { leftHind: 0, rightHind: 50, leftFore: 50, rightFore: 70 }],
  ])('calls it so where only the %s pair is uneven', (_, offsets) => {
    expect(footfallTiming(strides(0.5, 40, offsets)).gait).toBe('asymmetrical (canter or gallop)');
  });

  it('tells what it can from one limb, and no gait', () => {
    const timing = footfallTiming(strides(0.6, 40, { leftFore: 0 }));
    expect(timing.limbs[0]!.dutyPercent!.mean).toBeCloseTo(40, 6);
    expect(timing.gait).toBeNull();
    expect(timing.lateralPhase.both).toBeNull();
    expect(timing.reasons.map(({ code }) => code)).toContain('gait-pair-missing');
  });

  it('tells one side’s phase and says that symmetry is assumed', () => {
    const timing = footfallTiming(strides(0.6, 40, { leftHind: 0, leftFore: 50 }));
    expect(timing.gait).toBe('trot');
    expect(timing.reasons.map(({ code }) => code)).toContain('gait-pair-missing');
  });

  it('shows the stance that one limb shortens', () => {
    const even = strides(0.5, 40, symmetrical(50));
    const lame = even.map((entry) =>
      entry.limb === 'leftHind'
        ? { ...entry, liftOffs: entry.liftOffs.map((time) => time - 0.04) }
        : entry,
    );
    expect(footfallTiming(lame).stanceSymmetry.hind).toBeCloseTo(
      (200 * (0.16 - 0.2)) / (0.16 + 0.2),
      6,
    );
  });

  it('warns of few strides, and has no spread of a single one', () => {
    const timing = footfallTiming(strides(0.5, 40, symmetrical(50), 2));
    expect(timing.strides).toBe(1);
    expect(timing.limbs[0]!.strideS!.sd).toBeNull();
    const few = timing.reasons.find(({ code }) => code === 'gait-few-strides');
    expect(few).toMatchObject({ params: { strides: 1 }, sources: ['ownDecision'], mark: 'D' });
    const enough = footfallTiming(strides(0.5, 40, symmetrical(50), 6));
    expect(enough.reasons).toEqual([]);
  });

  it('takes a limb that touched down once beside those that went on', () => {
    const [hind, fore] = strides(0.5, 40, { leftHind: 0, rightHind: 50 });
    const once = { ...fore!, touchDowns: fore!.touchDowns.slice(0, 1), liftOffs: [] };
    const timing = footfallTiming([hind!, once]);
    expect(timing.strides).toBe(7);
    expect(timing.stanceSymmetry.hind).toBeNull();
    expect(footfallTiming([once]).strides).toBe(0);
  });

  it('takes a missing lift-off as a stance that was not timed', () => {
    const [entry] = strides(0.5, 40, { leftFore: 0 });
    const missing = { ...entry!, liftOffs: entry!.liftOffs.filter((_, index) => index !== 2) };
    const timing = footfallTiming([missing]);
    expect(timing.limbs[0]!.dutyPercent!.count).toBe(6);
    expect(timing.limbs[0]!.dutyPercent!.mean).toBeCloseTo(40, 6);
  });

  it('of nothing is nothing', () => {
    const timing = footfallTiming([]);
    expect(timing).toMatchObject({ gait: null, footing: null, strides: 0, strideS: null });
  });

  it('refuses times that do not rise, and phases beyond the stride', () => {
    const bad = { limb: 'leftFore', touchDowns: [0.5, 0.4], liftOffs: [] } as const;
    expect(() => footfallTiming([bad])).toThrow(/leftFore.*rise, but 0.4 s follows 0.5 s/);
    expect(() => footfallTiming([{ ...bad, touchDowns: [0.5, 0.5] }])).toThrow(/rise/);
    expect(() => footfallTiming([{ ...bad, touchDowns: [-1] }])).toThrow(RangeError);
    expect(() => hildebrandClass(101)).toThrow(/lateralPhasePercent/);
  });
});

describe('a spread on the circle', () => {
  it('is that of the line, wherever on the circle the values lie', () => {
    const values = fc.array(evenly(0, 45), { minLength: 2 });
    const turned = evenly(0, 100);
    holds(
      fc.property(values, turned, (line, by) => {
        const onLine = spread(line)!;
        const onCircle = circularSpread(line.map((value) => (value + by) % 100))!;
        expect(onCircle.sd).toBeCloseTo(onLine.sd!, 6);
        const off = Math.abs(onCircle.mean - ((onLine.mean + by) % 100));
        expect(Math.min(off, 100 - off)).toBeCloseTo(0, 6);
      }),
    );
  });
});
