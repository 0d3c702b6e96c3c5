import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { TimedPoint } from '../../../core/track/clean.ts';
import { metresPerDegree } from '../../../core/track/geodesic.ts';
import { smoothPiece } from '../../../core/track/smooth.ts';
import { evenly, holds } from '../../support/laws.ts';

// Reference: of a linear model with normal errors the smoother is the weighted least squares of all
// its equations at once (Rauch, Tung, Striebel 1965; M): here solved as one system, without a filter.

const HOME = { latDeg: 50.1, lonDeg: 8.6 };
const SCALE = metresPerDegree(HOME.latDeg);
/** Power of the white acceleration, m²/s³, and what the speed may be before the first point (D). */
const POWER = 0.15;
const FIRST_SPEED_SD = 3;

interface Seen {
  readonly timeS: number;
  readonly x: number;
  readonly y: number;
}

const pointOf = ({ timeS, x, y }: Seen): TimedPoint => ({
  timeS,
  latDeg: HOME.latDeg + y / SCALE.lat,
  lonDeg: HOME.lonDeg + x / SCALE.lon,
  elevationM: null,
});

/** Adds `weight × (Σ row − target)²` to the normal equations. */
function add(system: number[][], row: ReadonlyMap<number, number>, target: number, weight: number) {
  for (const [i, a] of row) {
    for (const [j, b] of row) system[i]![j]! += weight * a * b;
    system[i]![system.length]! += weight * a * target;
  }
}

function solved(system: number[][]): number[] {
  const n = system.length;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const factor = system[j]![i]! / system[i]![i]!;
      for (let k = i; k <= n; k += 1) system[j]![k]! -= factor * system[i]![k]!;
    }
  }
  const found: number[] = [];
  for (let i = n - 1; i >= 0; i -= 1) {
    let rest = system[i]![n]!;
    for (let k = i + 1; k < n; k += 1) rest -= system[i]![k]! * found[k]!;
    found[i] = rest / system[i]![i]!;
  }
  return found;
}

/** Places and speeds in turn, by least squares of all that is seen and of every step. */
function leastSquares(times: readonly number[], seen: readonly number[], errorM: number): number[] {
  const n = 2 * times.length;
  const system = Array.from({ length: n }, () => Array.from({ length: n + 1 }, () => 0));
  seen.forEach((place, at) => add(system, new Map([[2 * at, 1]]), place, 1 / errorM ** 2));
  add(system, new Map([[1, 1]]), 0, 1 / FIRST_SPEED_SD ** 2);
  times.slice(1).forEach((time, before) => {
    const dt = time - times[before]!;
    const [p, v, p2, v2] = [2 * before, 2 * before + 1, 2 * before + 2, 2 * before + 3];
    // Of white acceleration over dt: the change of speed, and what the place is off its middle.
    add(
      system,
      new Map([
        [v2, 1],
        [v, -1],
      ]),
      0,
      1 / (POWER * dt),
    );
    const half = dt / 2;
    add(
      system,
      new Map([
        [p2, 1],
        [p, -1],
        [v, -half],
        [v2, -half],
      ]),
      0,
      12 / (POWER * dt ** 3),
    );
  });
  return solved(system);
}

function expectLeastSquares(points: readonly Seen[], errorM: number): void {
  const times = points.map(({ timeS }) => timeS);
  const found = smoothPiece(points.map(pointOf));
  for (const axis of ['x', 'y'] as const) {
    const from = points[0]![axis];
    const reference = leastSquares(
      times,
      points.map((point) => point[axis] - from),
      errorM,
    );
    found.forEach((motion, at) => {
      expect(motion[axis]).toBeCloseTo(reference[2 * at]!, 4);
      expect(axis === 'x' ? motion.vx : motion.vy).toBeCloseTo(reference[2 * at + 1]!, 4);
    });
  }
}

const startsHome = (points: readonly Seen[]): Seen[] =>
  points.map((point, at) => (at === 0 ? { ...point, x: 0, y: 0 } : point));

it('is the least squares of what was seen and how a body moves', () => {
  const metres = evenly(-40, 40);
  const steps = fc.array(fc.record({ dt: fc.integer({ min: 1, max: 4 }), x: metres, y: metres }), {
    minLength: 1,
    maxLength: 4,
  });
  holds(
    fc.property(steps, (list) => {
      let timeS = 0;
      const points = list.map(({ dt, x, y }) => ({ timeS: (timeS += dt), x, y }));
      // Too few for two some seconds before and after: the least error is taken, half a metre half
      // the time. Errors that last 5 s are shared by the points within them.
      const typicalS = (timeS - points[0]!.timeS) / Math.max(1, points.length - 1);
      const shared = Math.max(1, Math.round(5 / typicalS));
      fc.pre(points.length <= 2 * shared);
      const apart = points.length === 1 ? 1 : shared;
      expectLeastSquares(startsHome(points), (0.5 / 0.6745) * Math.sqrt(apart));
    }),
  );
});

// Every other point is 4 m off: each lies 4 m from the middle of its neighbours, a difference whose
// variance is 1 + 1/4 + 1/4 of a point's. A normal error is inside 0.6745 of its own half the time.
it('takes the receiver’s error from how far points lie off the line of those around them', () => {
  const zigzag = Array.from({ length: 9 }, (_, at) => ({
    timeS: 5 * at,
    x: at % 2 === 0 ? 0 : 4,
    y: at % 2 === 0 ? 0 : -4,
  }));
  expectLeastSquares(zigzag, 4 / Math.sqrt(1.5) / 0.6745);
});

it('follows an even way as it is', () => {
  const way = Array.from({ length: 40 }, (_, at) => ({ timeS: 2 * at, x: 3 * at, y: -4 * at }));
  const found = smoothPiece(way.map(pointOf));
  found.slice(5, -5).forEach(({ x, y, vx, vy }, at) => {
    expect(Math.hypot(x - 3 * (at + 5), y + 4 * (at + 5))).toBeLessThan(0.05);
    expect(Math.hypot(vx, vy)).toBeCloseTo(2.5, 1);
  });
});
