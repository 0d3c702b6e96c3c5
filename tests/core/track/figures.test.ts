import { describe, expect, it } from 'vitest';
import { runAgainstPlan, trackOutings, type TrackOuting } from '../../../core/index.ts';
import { metresPerDegree } from '../../../core/track/geodesic.ts';
import type { TrackPoint } from '../../../core/track/types.ts';

const LAT = 50;
const { lat } = metresPerDegree(LAT);

/** Straight north, a point a second: so many seconds at each speed, m/s. */
function north(
  legs: readonly (readonly [seconds: number, mps: number])[],
  startS = 0,
): TrackPoint[] {
  let metres = 0;
  let timeS = startS;
  const point = () => ({ timeS, latDeg: LAT + metres / lat, lonDeg: 8, elevationM: null });
  const points: TrackPoint[] = [point()];
  for (const [seconds, mps] of legs) {
    for (let second = 0; second < seconds; second += 1) {
      metres += mps;
      timeS += 1;
      points.push(point());
    }
  }
  return points;
}
const outings = (...pieces: readonly (readonly TrackPoint[])[]) =>
  trackOutings({ segments: pieces });

describe('the figures of an outing', () => {
  const legs = [
    [300, 1.2],
    [240, 2.8],
    [60, 0],
    [120, 2.8],
    [180, 1.2],
  ] as const;

  it('are those of what was run and walked', () => {
    const [outing] = outings(north(legs, 1000));
    expect(outing).toMatchObject({ startS: 1000, seconds: 900, gapSeconds: 0, droppedPoints: 0 });
    expect(outing!.bouts.map(({ kind }) => kind)).toEqual(['walk', 'run', 'walk', 'run', 'walk']);
    // 480 s at 1.2 and 360 s at 2.8 m/s.
    expect(outing!.distanceKm).toBeCloseTo(1.584, 2);
    expect(outing!.runKm).toBeCloseTo(1.008, 1);
    expect(Math.abs(outing!.runMinutes - 6)).toBeLessThan(0.15);
    expect(Math.abs(outing!.longestRunMinutes - 4)).toBeLessThan(0.1);
    expect(Math.abs(outing!.runSpeedMps! - 2.8)).toBeLessThan(0.1);
    expect(Math.abs(outing!.movingSeconds - 840)).toBeLessThan(8);
    expect(outing!.speedsMps).toHaveLength(900);
    const [first, second] = outing!.bouts;
    expect(first!.fromS).toBe(0);
    expect(second!.fromS).toBe(first!.seconds);
    expect(first!.distanceM / first!.seconds).toBeCloseTo(1.2, 1);
  });

  it('say nothing of a run where none was', () => {
    const [outing] = outings(north([[600, 1.2]]));
    expect(outing).toMatchObject({
      runMinutes: 0,
      longestRunMinutes: 0,
      runSpeedMps: null,
      runKm: 0,
    });
  });

  it('cover a time without a point in a straight line at an even speed', () => {
    const points = north([[400, 1.2]]).filter((_, second) => second <= 100 || second >= 200);
    const [outing] = outings(points);
    expect(outing).toMatchObject({ seconds: 400, gapSeconds: 100 });
    expect(outing!.distanceKm).toBeCloseTo(0.48, 2);
    expect(outing!.speedsMps[150]).toBeCloseTo(1.2, 2);
  });

  it('begin anew with another outing after an hour without a point', () => {
    const morning = north([[300, 1.2]]);
    const after = (seconds: number) => outings(morning, north([[400, 1.2]], 300 + seconds));
    expect(after(3600).map(({ seconds }) => seconds)).toEqual([4300]);
    expect(after(3601).map(({ seconds }) => seconds)).toEqual([300, 400]);
    const lost = outings([...morning, morning[3]!], north([[400, 1.2]], 9000));
    expect(lost.map(({ droppedPoints }) => droppedPoints)).toEqual([1, 0]);
    expect(outings(morning, north([], 9000))).toHaveLength(1);
  });

  it('are refused of a clock that went wrong', () => {
    const every = (hours: number) =>
      outings(Array.from({ length: hours * 2 + 1 }, (_, index) => north([], 1800 * index)[0]!));
    expect(every(24)[0]!.seconds).toBe(24 * 3600);
    expect(() => every(25)).toThrow(/seconds must be from 0 to 86400 s/);
  });
});

describe('what is a run', () => {
  const splitOf = (known: Parameters<typeof trackOutings>[1]) =>
    trackOutings({ segments: [north([[300, 1]])] }, known)[0]!.splitMps;
  // One speed alone: halfway between the slowest run and the fastest walk.
  const halfway = (slowest: number, fastest: number) => (slowest + fastest) / 2;

  it('depends on the height of the dog: no slower than its trot, Froude number 0.5', () => {
    expect(splitOf({})).toBeCloseTo(halfway(1.7, 2.3), 9);
    // √(0.5 × 9.81 × height): 1.40 m/s at 0.4 m, 1.98 at 0.8 m, 2.43 at 1.2 m.
    expect(splitOf({ heightM: 0.4 })).toBeCloseTo(halfway(1.7, 2.3), 9);
    expect(splitOf({ heightM: 0.8 })).toBeCloseTo(halfway(1.981, 2.3), 2);
    expect(splitOf({ heightM: 1.2 })).toBeCloseTo(2.3, 9);
  });

  it('depends on the pace of the owner: from 0.85 of it on', () => {
    // 5 min/km are 3.33 m/s; 8 are 2.083, 0.85 of it 1.771; 10 are 1.667, 0.85 of it 1.417.
    expect(splitOf({ paceMinPerKm: 5 })).toBeCloseTo(halfway(1.7, 2.3), 9);
    expect(splitOf({ paceMinPerKm: 8 })).toBeCloseTo(halfway(1.7, 1.771), 3);
    expect(splitOf({ paceMinPerKm: 10 })).toBeCloseTo(1.417, 3);
  });

  it.each([
    [{ heightM: 0.05 }, /heightM must be from 0.1 to 1.2 m/],
    [{ paceMinPerKm: 21 }, /paceMinPerKm must be from 2 to 20 min per km/],
  ])('refuses %j', (known, message) => {
    expect(() => splitOf(known)).toThrow(message);
  });
});

describe('the outings of a day against its plan', () => {
  const outing = (runs: readonly number[], climbM: number | null = null): TrackOuting => ({
    ...outings(north([[60, 1.2]]))[0]!,
    bouts: runs.flatMap((seconds) => [
      { kind: 'run', fromS: 0, seconds, distanceM: 2.5 * seconds },
      { kind: 'walk', fromS: 0, seconds: 900, distanceM: 900 },
    ]),
    runMinutes: runs.reduce((sum, seconds) => sum + seconds, 0) / 60,
    longestRunMinutes: Math.max(0, ...runs) / 60,
    runKm: (2.5 * runs.reduce((sum, seconds) => sum + seconds, 0)) / 1000,
    climbM,
  });
  const against = (runs: readonly number[], times: number, runMin: number) => {
    const { boutsDone, outcome } = runAgainstPlan([outing(runs)], { times, runMin });
    return [boutsDone, outcome];
  };

  // A run of 0.8 of the planned one counts, an outing of 0.9 of the planned minutes is done.
  it('counts a run from four fifths of it on, and a long one as several', () => {
    expect(against([96, 120, 120], 3, 2)).toEqual([3, 'done']);
    expect(against([95, 120, 120], 3, 2)).toEqual([2, 'done']);
    expect(against([336], 3, 2)).toEqual([3, 'done']);
    expect(against([335], 3, 2)).toEqual([2, 'done']);
    expect(against([600, 120], 3, 2)).toEqual([3, 'done']);
    expect(against([], 3, 2)).toEqual([0, 'shortened']);
  });

  it('is done from nine tenths of the planned minutes on', () => {
    expect(against([540], 1, 10)[1]).toBe('done');
    expect(against([539], 1, 10)[1]).toBe('shortened');
    expect(against([540], 2, 10)[1]).toBe('shortened');
  });

  it('adds up all outings, and looks back on the longest', () => {
    const day = runAgainstPlan([outing([120, 60], 30), outing([150], null), outing([], 12)], null);
    expect(day).toMatchObject({ runMinutes: 5.5, climbM: 42, longestRunMinutes: 2.5 });
    expect(day).toMatchObject({ longestOutingMinutes: 3, boutsDone: null, outcome: null });
    expect(day.runKm).toBeCloseTo(0.825, 9);
    expect(day.runSpeedMps).toBeCloseTo(2.5, 9);
    expect(runAgainstPlan([outing([])], null)).toMatchObject({ runSpeedMps: null, climbM: null });
  });
});
