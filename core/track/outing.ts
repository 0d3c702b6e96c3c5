import { inRange } from '../check.ts';
import { GRAVITY, HEIGHT_M, PACE_MIN_PER_KM, speedOfPace } from '../gait/froude.ts';
import { gaitsOf } from './bouts.ts';
import { cleanTrack, type CleanTrack, type TimedPoint } from './clean.ts';
import { climbOf } from './climb.ts';
import { stepMetres } from './geodesic.ts';
import { smoothPiece, type Motion } from './smooth.ts';
import type { Track, TrackBout, TrackOuting } from './types.ts';

/** Standing still, below this, m/s (D). */
const STILL_MPS = 0.5;
/** Between these somewhere an owner's walk becomes a run, m/s (D; people change over near 2). */
const SPLIT_MPS = { min: 1.7, max: 2.3 } as const;
/** The walk becomes a trot for the dog near this Froude number (M): a run is not slower. */
const FROUDE_TROT = 0.5;
/** At this share of the owner's own pace it is no walk any more (D). */
const PACE_SHARE = 0.85;

/** So long without a point, and another outing begins, s (D). */
const NEW_OUTING_AFTER_S = 3600;
/** Longer without such a break is no outing on foot but a clock that went wrong, s (D). */
const LONGEST_S = 24 * 3600;

type Pieces = CleanTrack['pieces'];

/**
 * The outings of a recorded track, in the order of time: distance, climb, time moving, and bouts,
 * run and walk told apart by speed. None where fewer than two points have a time.
 *
 * @param heightM height at the withers, 0.1–1.2 m, where known: a run is no slower than its trot
 * @param paceMinPerKm the owner's pace, 2–20 min/km, where known
 * @throws RangeError when one of the two is out of range, or an outing lasts longer than 24 h
 * @example trackOutings(sample.track)[0] // => { seconds: 600, distanceKm: 1.32, runMinutes: 5, … }
 */
export function trackOutings(
  track: Track,
  known: { readonly heightM?: number | null; readonly paceMinPerKm?: number | null } = {},
): TrackOuting[] {
  const ends = endsOf(known.heightM ?? null, known.paceMinPerKm ?? null);
  const { pieces, dropped } = cleanTrack(track);
  return apart(pieces)
    .filter((of) => of.flat().length >= 2)
    .map((of, index) => outingOf(of, index === 0 ? dropped : 0, ends));
}

/** Pieces of one outing each. */
function apart(pieces: Pieces): Pieces[] {
  const outings: (typeof pieces)[number][][] = [];
  for (const piece of pieces) {
    const last = outings.at(-1);
    const before = last?.at(-1)?.at(-1);
    if (before !== undefined && piece[0]!.timeS - before.timeS <= NEW_OUTING_AFTER_S) {
      last!.push(piece);
    } else outings.push([piece]);
  }
  return outings;
}

function outingOf(
  pieces: Pieces,
  dropped: number,
  ends: Parameters<typeof gaitsOf>[1],
): TrackOuting {
  const points = pieces.flat();
  const [first, last] = [points[0]!, points.at(-1)!];
  inRange('seconds', last.timeS - first.timeS, 's', { min: 0, max: LONGEST_S });
  const { metres, gapSeconds } = secondsOf(pieces);
  const { runs, splitMps } = gaitsOf(metres, ends);
  const bouts = boutsOf(metres, runs);
  const run = bouts.filter(({ kind }) => kind === 'run');
  const sum = (of: readonly TrackBout[], what: 'seconds' | 'distanceM'): number =>
    of.reduce((total, bout) => total + bout[what], 0);
  return {
    startS: first.timeS,
    seconds: metres.length,
    movingSeconds: metres.filter((metre) => metre > STILL_MPS).length,
    distanceKm: sum(bouts, 'distanceM') / 1000,
    runKm: sum(run, 'distanceM') / 1000,
    climbM: climbOf(points.map(({ elevationM }) => elevationM)),
    bouts,
    runMinutes: sum(run, 'seconds') / 60,
    longestRunMinutes: Math.max(0, ...run.map(({ seconds }) => seconds)) / 60,
    runSpeedMps: run.length === 0 ? null : sum(run, 'distanceM') / sum(run, 'seconds'),
    speedsMps: metres,
    splitMps,
    gapSeconds,
    droppedPoints: dropped,
  };
}

function endsOf(heightM: number | null, paceMinPerKm: number | null) {
  const trot =
    heightM === null
      ? 0
      : Math.sqrt(FROUDE_TROT * GRAVITY * inRange('heightM', heightM, 'm', HEIGHT_M));
  const slowestRunMps = Math.min(Math.max(SPLIT_MPS.min, trot), SPLIT_MPS.max);
  const pace =
    paceMinPerKm === null
      ? SPLIT_MPS.max
      : PACE_SHARE *
        speedOfPace(inRange('paceMinPerKm', paceMinPerKm, 'min per km', PACE_MIN_PER_KM));
  return {
    slowestRunMps: Math.min(slowestRunMps, pace),
    fastestWalkMps: Math.min(SPLIT_MPS.max, pace),
  };
}

/** Metres of every second of the outing, gaps covered in a straight line at an even speed. */
function secondsOf(pieces: readonly (readonly TimedPoint[])[]) {
  const start = pieces[0]![0]!.timeS;
  const length = Math.round(pieces.at(-1)!.at(-1)!.timeS - start);
  const metres = Array.from({ length }, () => 0);
  const cover = (fromS: number, toS: number, speed: number): void => {
    const [first, last] = [Math.round(fromS - start), Math.round(toS - start)];
    for (let second = first; second < last; second += 1) metres[second] = speed;
  };
  let gapSeconds = 0;
  pieces.forEach((piece, index) => {
    const before = pieces[index - 1]?.at(-1);
    if (before !== undefined) {
      const seconds = piece[0]!.timeS - before.timeS;
      gapSeconds += seconds;
      cover(before.timeS, piece[0]!.timeS, stepMetres(before, piece[0]!) / seconds);
    }
    const motions = smoothPiece(piece);
    motions.slice(1).forEach((motion, at) => {
      cover(motions[at]!.timeS, motion.timeS, speedBetween(motions[at]!, motion));
    });
  });
  return { metres, gapSeconds };
}

const speedBetween = (a: Motion, b: Motion): number =>
  Math.hypot(b.x - a.x, b.y - a.y) / (b.timeS - a.timeS);

function boutsOf(metres: readonly number[], runs: readonly boolean[]): TrackBout[] {
  const bouts: TrackBout[] = [];
  metres.forEach((metre, second) => {
    const kind = runs[second] === true ? 'run' : 'walk';
    const last = bouts.at(-1);
    if (last?.kind === kind) {
      bouts[bouts.length - 1] = {
        ...last,
        seconds: last.seconds + 1,
        distanceM: last.distanceM + metre,
      };
    } else bouts.push({ kind, fromS: second, seconds: 1, distanceM: metre });
  });
  return bouts;
}
