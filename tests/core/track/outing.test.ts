import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runAgainstPlan, trackOutings, type Track, type TrackOuting } from '../../../core/index.ts';
import { boutLegs, walked, type Truth, type Walk } from './walker.ts';
import { evenly, holds } from '../../support/laws.ts';

const trackOuting = (...of: Parameters<typeof trackOutings>): TrackOuting | null =>
  trackOutings(...of)[0] ?? null;

const PLAN = { walkMps: 1.4, errorM: 3, jitterM: 0.3, everyS: 1 };
const RUNS = [
  [6, 1, 2],
  [4, 0.5, 4],
  [5, 2, 2],
  [4, 3, 2],
  [3, 4, 1],
  [1, 20, 0.5],
] as const;

function outingOf(walk: Walk): { outing: TrackOuting; truth: Truth } {
  const { track, truth } = walked(walk);
  return { outing: trackOuting(track, { heightM: 0.5 })!, truth };
}

/** Each run where it was, within twelve seconds at both ends. */
function sameRuns({ bouts }: TrackOuting, truth: Truth): boolean {
  const runs = bouts.filter(({ kind }) => kind === 'run');
  return (
    runs.length === truth.runs.length &&
    runs.every(({ fromS, seconds }, at) => {
      const meant = truth.runs[at]!;
      const late = fromS + seconds - meant.fromS - meant.seconds;
      return Math.abs(fromS - meant.fromS) <= 12 && Math.abs(late) <= 12;
    })
  );
}

const share = (of: readonly boolean[]): number => of.filter(Boolean).length / of.length;
const quantile = (of: readonly number[], at: number): number =>
  of.toSorted((a, b) => a - b)[Math.floor(at * (of.length - 1))]!;

/** Every plan at three speeds, three times each. */
function triedWith(everyS: number, errorM: number): ReturnType<typeof outingOf>[] {
  return RUNS.flatMap(([times, runMin, walkMin], plan) =>
    [2.2, 2.6, 3.0].flatMap((runMps, speed) =>
      [1, 2, 3].map((seed) =>
        outingOf({
          legs: boutLegs(times, runMin, walkMin),
          walkMps: 1.4,
          runMps,
          errorM,
          jitterM: errorM / 10,
          everyS,
          seed: seed + 10 * speed + 100 * plan + 1000 * everyS + errorM * 10_000,
        }),
      ),
    ),
  );
}

const percent = (of: number): string => `${(100 * of).toFixed(1)} %`;

describe('tracks of a receiver 3, 6 and 10 m off', () => {
  test.each([1, 2, 5, 10])('with a point every %i s', (everyS) => {
    const rights = [3, 6, 10].map((errorM) => {
      const tried = triedWith(everyS, errorM);
      const off = (of: (one: (typeof tried)[number]) => number) =>
        tried.map((one) => Math.abs(of(one) - 1));
      const distance = off(({ outing, truth }) => outing.distanceKm / truth.distanceKm);
      const minutes = off(({ outing, truth }) => outing.runMinutes / truth.runMinutes);
      const right = share(tried.map(({ outing, truth }) => sameRuns(outing, truth)));
      console.log(
        `Tracks, every ${everyS} s, ${errorM} m: distance within ${percent(quantile(distance, 0.95))}, ` +
          `run-minutes within ${percent(quantile(minutes, 0.9))}, bouts right in ${percent(right)} of ${tried.length}.`,
      );
      expect(quantile(distance, 0.95)).toBeLessThan(0.03);
      expect(quantile(minutes, 0.9)).toBeLessThan(0.05);
      return right;
    });
    const all = rights.reduce((sum, right) => sum + right, 0) / rights.length;
    expect(all).toBeGreaterThanOrEqual(everyS === 1 ? 0.95 : 0.9);
  });
});

describe('an outing with pauses and tunnels', () => {
  const walk: Walk = {
    ...PLAN,
    runMps: 2.6,
    seed: 7,
    legs: [
      { kind: 'walk', seconds: 300 },
      { kind: 'run', seconds: 180 },
      { kind: 'pause', seconds: 120 },
      { kind: 'run', seconds: 180 },
      { kind: 'walk', seconds: 300 },
    ],
    tunnels: [[900, 960]],
  };

  test('counts a pause as no time moving, and covers the tunnel', () => {
    const { outing, truth } = outingOf(walk);
    expect(Math.abs(outing.distanceKm / truth.distanceKm - 1)).toBeLessThan(0.03);
    expect(sameRuns(outing, truth)).toBe(true);
    expect(outing.gapSeconds).toBe(61);
    expect(Math.abs(outing.movingSeconds - 960)).toBeLessThan(30);
    expect(outing.bouts.reduce((sum, { seconds }) => sum + seconds, 0)).toBe(outing.seconds);
  });

  test('leaves out a point that nobody on foot reaches, and says so', () => {
    const { track, truth } = walked(walk);
    const points = [...track.segments[0]!];
    points[400] = { ...points[400]!, latDeg: points[400]!.latDeg + 0.02 };
    const outing = trackOuting({ segments: [points] })!;
    expect(outing.droppedPoints).toBe(1);
    expect(Math.abs(outing.distanceKm / truth.distanceKm - 1)).toBeLessThan(0.03);
  });

  test('believes the receiver again where the first place was the slip', () => {
    const { track, truth } = walked(walk);
    const points = [...track.segments[0]!];
    points[0] = { ...points[0]!, lonDeg: points[0]!.lonDeg + 1 };
    const outing = trackOuting({ segments: [points] })!;
    expect(outing.seconds).toBeGreaterThan(1000);
    expect(outing.distanceKm).toBeGreaterThan(truth.distanceKm * 0.9);
  });
});

describe('what a track can be', () => {
  const point = { timeS: 0, latDeg: 50, lonDeg: 8, elevationM: null };

  test('says nothing of a track without times, or of a single point', () => {
    expect(trackOuting({ segments: [] })).toBeNull();
    expect(trackOuting({ segments: [[point]] })).toBeNull();
    expect(trackOuting({ segments: [[point, { ...point, timeS: null }]] })).toBeNull();
  });

  test('counts a climb once it is higher than the receiver’s error', () => {
    const heights = [...Array(60).keys()].map((at) => 100 + (at < 30 ? at : 60 - at) + (at % 2));
    const hill: Track = {
      segments: [heights.map((elevationM, at) => ({ ...point, timeS: 10 * at, elevationM }))],
    };
    const flat: Track = {
      segments: [
        heights.map((_, at) => ({ ...point, timeS: 10 * at, elevationM: 100 + (at % 4) })),
      ],
    };
    expect(trackOuting(hill)!.climbM!).toBeGreaterThan(22);
    expect(trackOuting(hill)!.climbM!).toBeLessThan(32);
    expect(trackOuting(flat)!.climbM).toBe(0);
  });

  test('never fails, and its bouts add up, whatever the points', () => {
    const anyPoint = fc.record({
      timeS: fc.option(fc.integer({ min: 0, max: 20_000 })),
      latDeg: evenly(-89, 89),
      lonDeg: evenly(-180, 180),
      elevationM: fc.option(evenly(-400, 8000)),
    });
    holds(
      fc.property(fc.array(fc.array(anyPoint, { maxLength: 30 }), { maxLength: 3 }), (segments) => {
        const outing = trackOuting({ segments });
        if (outing === null) return;
        const seconds = outing.bouts.reduce((sum, bout) => sum + bout.seconds, 0);
        expect(seconds).toBe(outing.seconds);
        expect(outing.distanceKm).toBeGreaterThanOrEqual(0);
        expect(outing.longestRunMinutes).toBeLessThanOrEqual(outing.runMinutes + 1e-9);
      }),
    );
  });
});

describe('against the plan of the day', () => {
  const { outing } = outingOf({ ...PLAN, runMps: 2.6, legs: boutLegs(4, 3, 2), seed: 3 });

  test('counts the planned bouts that were run', () => {
    const run = runAgainstPlan([outing], { times: 4, runMin: 3 });
    expect(run).toMatchObject({ boutsDone: 4, outcome: 'done' });
    expect(run.runMinutes).toBeCloseTo(12, 0);
  });

  test('calls an outing with bouts left out shortened', () => {
    const run = runAgainstPlan([outing], { times: 6, runMin: 3 });
    expect(run).toMatchObject({ boutsDone: 4, outcome: 'shortened' });
  });

  test('counts the minutes of a run that was not planned', () => {
    const run = runAgainstPlan([outing, outing], null);
    expect(run).toMatchObject({ boutsDone: null, outcome: null });
    expect(run.runMinutes).toBeCloseTo(24, 0);
    expect(run.longestRunMinutes).toBeCloseTo(3, 0);
    // Two outings of 12: no session of 24 was carried.
    expect(run.longestOutingMinutes).toBeCloseTo(12, 0);
  });
});
