import { stepMetres } from './geodesic.ts';
import type { Track, TrackPoint } from './types.ts';

/** Nobody runs faster on foot with a dog in harness over the whole of a step, m/s (D). */
const FASTEST_MPS = 12;
/** A longer time without a point is a gap, s (D). */
const GAP_FROM_S = 30;
/** A step this short says nothing of speed beside a receiver's error, m (D). */
const WITHIN_ERROR_M = 25;
/** So many places in a row that cannot be reached are no slips: the earlier place was one (D). */
const SLIPS_IN_A_ROW = 5;

/** A point with its time. */
export type TimedPoint = TrackPoint & { readonly timeS: number };

/** A track in the order of time, without what cannot be. */
export interface CleanTrack {
  /** Stretches without a gap, in the order of time, none empty. */
  readonly pieces: readonly (readonly TimedPoint[])[];
  readonly dropped: number;
}

const isTimed = (point: TrackPoint): point is TimedPoint => point.timeS !== null;

/** Leaves out points without a time, of a time told twice, and those that nobody on foot reaches. */
export function cleanTrack(track: Track): CleanTrack {
  const all = track.segments.flat();
  const timed = all.filter(isTimed).toSorted((a, b) => a.timeS - b.timeS);
  const kept: TimedPoint[] = [];
  let slips: TimedPoint[] = [];
  for (const point of timed) {
    const last = kept.at(-1);
    if (last?.timeS === point.timeS) continue;
    if (last !== undefined && !reaches(last, point)) {
      slips.push(point);
      if (slips.length < SLIPS_IN_A_ROW || !holdsTogether(slips)) continue;
      kept.push(...slips);
      slips = [];
      continue;
    }
    slips = [];
    kept.push(point);
  }
  return { pieces: piecesOf(kept), dropped: all.length - kept.length };
}

function reaches(from: TimedPoint, to: TimedPoint): boolean {
  const metres = stepMetres(from, to);
  return metres <= WITHIN_ERROR_M || metres <= FASTEST_MPS * (to.timeS - from.timeS);
}

const holdsTogether = (points: readonly TimedPoint[]): boolean =>
  points.slice(1).every((point, index) => reaches(points[index]!, point));

function piecesOf(points: readonly TimedPoint[]): TimedPoint[][] {
  const pieces: TimedPoint[][] = [];
  for (const point of points) {
    const piece = pieces.at(-1);
    const before = piece?.at(-1);
    if (piece === undefined || point.timeS - before!.timeS > GAP_FROM_S) pieces.push([point]);
    else piece.push(point);
  }
  return pieces;
}
