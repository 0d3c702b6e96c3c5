import type { TimedPoint } from './clean.ts';
import { metresPerDegree } from './geodesic.ts';

/** How freely speed changes: power of white acceleration, m²/s³ (D; a run begins within seconds). */
const ACCELERATION = 0.15;
/** A receiver's error is taken to be inside these, m (D). */
const ERROR_M = { min: 0.5, max: 15 } as const;
/** Errors of a receiver are taken to last so long, s (D). */
const ERROR_LASTS_S = 5;
/** Before the first point the speed is anything on foot, m/s. */
const FIRST_SPEED_SD = 3;

/** Where and how fast at a moment, the receiver's error taken out; m and m/s on a local plane. */
export interface Motion {
  readonly timeS: number;
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

/**
 * The likeliest movement behind a piece of a track: a Kalman filter with the Rauch-Tung-Striebel
 * smoother on a place and a speed that changes at random (white acceleration), the receiver's error
 * estimated from the piece itself. Textbook method; from memory (M).
 */
export function smoothPiece(points: readonly TimedPoint[]): Motion[] {
  const first = points[0]!;
  const scale = metresPerDegree(first.latDeg);
  const xs = points.map(({ lonDeg }) => (lonDeg - first.lonDeg) * scale.lon);
  const ys = points.map(({ latDeg }) => (latDeg - first.latDeg) * scale.lat);
  const times = points.map(({ timeS }) => timeS);
  const errorM = receiverError(times, xs, ys);
  const [east, north] = [smoothAxis(times, xs, errorM), smoothAxis(times, ys, errorM)];
  return times.map((timeS, at) => ({
    timeS,
    x: east[at]!.place,
    y: north[at]!.place,
    vx: east[at]!.speed,
    vy: north[at]!.speed,
  }));
}

/**
 * Standard error of a single point, m: from how far each lies off the straight line between those
 * some seconds before and after it, by the median so that corners count little. A receiver's errors
 * last: the points within that time share one error, so that each is worth the less.
 */
function receiverError(times: readonly number[], xs: readonly number[], ys: readonly number[]) {
  const typicalS = (times.at(-1)! - times[0]!) / Math.max(1, times.length - 1);
  const apart = Math.max(1, Math.round(ERROR_LASTS_S / typicalS));
  const off: number[] = [];
  for (let at = apart; at < times.length - apart; at += 1) {
    const [before, after] = [at - apart, at + apart];
    const share = (times[at]! - times[before]!) / (times[after]! - times[before]!);
    // The variance of a point less a weighted mean of two others, in variances of a point.
    const spread = Math.sqrt(1 + share ** 2 + (1 - share) ** 2);
    for (const axis of [xs, ys]) {
      const line = axis[before]! * (1 - share) + axis[after]! * share;
      off.push(Math.abs(axis[at]! - line) / spread);
    }
  }
  off.sort((a, b) => a - b);
  // A normal error is inside 0.6745 of its standard deviation half the time.
  const errorM = (off[Math.floor(off.length / 2)] ?? ERROR_M.min) / 0.6745;
  return Math.min(Math.max(errorM, ERROR_M.min), ERROR_M.max) * Math.sqrt(apart);
}

interface AxisState {
  readonly place: number;
  readonly speed: number;
}

/** State and covariance: variance of place, covariance, variance of speed. */
type Gauss = readonly [place: number, speed: number, pp: number, ps: number, ss: number];

function smoothAxis(
  times: readonly number[],
  seen: readonly number[],
  errorM: number,
): AxisState[] {
  const variance = errorM ** 2;
  const filtered: Gauss[] = [];
  const foretold: Gauss[] = [];
  let state: Gauss = [seen[0]!, 0, variance, 0, FIRST_SPEED_SD ** 2];
  times.forEach((time, at) => {
    const ahead = at === 0 ? state : foretell(state, time - times[at - 1]!);
    foretold.push(ahead);
    state = at === 0 ? ahead : correct(ahead, seen[at]!, variance);
    filtered.push(state);
  });
  const smoothed: AxisState[] = [];
  let next: AxisState | null = null;
  for (let at = times.length - 1; at >= 0; at -= 1) {
    const now: AxisState =
      next === null
        ? { place: filtered[at]![0], speed: filtered[at]![1] }
        : back(filtered[at]!, foretold[at + 1]!, next, times[at + 1]! - times[at]!);
    smoothed.push(now);
    next = now;
  }
  return smoothed.reverse();
}

function foretell([place, speed, pp, ps, ss]: Gauss, dt: number): Gauss {
  const q = ACCELERATION;
  return [
    place + speed * dt,
    speed,
    pp + 2 * ps * dt + ss * dt * dt + (q * dt ** 3) / 3,
    ps + ss * dt + (q * dt * dt) / 2,
    ss + q * dt,
  ];
}

function correct([place, speed, pp, ps, ss]: Gauss, seen: number, variance: number): Gauss {
  const total = pp + variance;
  const [gainP, gainS] = [pp / total, ps / total];
  const miss = seen - place;
  return [
    place + gainP * miss,
    speed + gainS * miss,
    (1 - gainP) * pp,
    (1 - gainP) * ps,
    ss - gainS * ps,
  ];
}

/** One step of the smoother: what came after corrects what was filtered. */
function back(filtered: Gauss, foretold: Gauss, next: AxisState, dt: number): AxisState {
  const [place, speed, pp, ps, ss] = filtered;
  const [aheadP, aheadS, app, aps, ass] = foretold;
  // Gain = P Fᵀ (foretold covariance)⁻¹, written out for two by two.
  const [cp1, cp2] = [pp + ps * dt, ps];
  const [cs1, cs2] = [ps + ss * dt, ss];
  const determinant = app * ass - aps * aps;
  const gain = (c1: number, c2: number): readonly [number, number] => [
    (c1 * ass - c2 * aps) / determinant,
    (c2 * app - c1 * aps) / determinant,
  ];
  const [missP, missS] = [next.place - aheadP, next.speed - aheadS];
  const [p1, p2] = gain(cp1, cp2);
  const [s1, s2] = gain(cs1, cs2);
  return { place: place + p1 * missP + p2 * missS, speed: speed + s1 * missP + s2 * missS };
}
