import { metresPerDegree, RADIANS } from '../../../core/track/geodesic.ts';
import type { Track, TrackPoint } from '../../../core/track/types.ts';
import { random as seededRandom, type Random } from '../../calibration/random.ts';

/** What somebody did on an outing, in the order done. */
export interface Leg {
  readonly kind: 'run' | 'walk' | 'pause';
  readonly seconds: number;
}

export interface Walk {
  readonly legs: readonly Leg[];
  readonly walkMps: number;
  readonly runMps: number;
  /** Standard error of a point, m: it wanders smoothly over a minute, as a receiver filters it. */
  readonly errorM: number;
  /** What is new at each point beside that, m. */
  readonly jitterM: number;
  readonly everyS: number;
  /** Times without a point, from and to, s. */
  readonly tunnels?: readonly (readonly [number, number])[];
  readonly seed: number;
}

export interface Truth {
  readonly distanceKm: number;
  readonly runMinutes: number;
  readonly runs: readonly { readonly fromS: number; readonly seconds: number }[];
}

const START = { timeS: 1_770_000_000, latDeg: 50.1, lonDeg: 8.6 };
/** A person takes about so long to change speed, s. */
const CHANGE_S = 3;
/** How long an error of the receiver lasts, s. */
const WANDER_S = 60;

/** A seeded outing with its track: a winding way, an even speed with small changes, a noisy receiver. */
export function walked(
  walk: Walk,
  startS = START.timeS,
): { readonly track: Track; readonly truth: Truth } {
  const random = seededRandom(walk.seed);
  const scale = metresPerDegree(START.latDeg);
  const targets = walk.legs.flatMap(({ kind, seconds }) =>
    Array.from({ length: seconds }, () =>
      kind === 'pause' ? 0 : kind === 'run' ? walk.runMps : walk.walkMps,
    ),
  );
  const points: TrackPoint[] = [];
  let [x, y, heading, speed, metres] = [0, 0, 0, 0, 0];
  const [east, north] = [wander(walk.errorM, random), wander(walk.errorM, random)];
  targets.forEach((target, second) => {
    if (second % walk.everyS === 0 && !inTunnel(walk, second)) {
      points.push({
        timeS: startS + second,
        latDeg: START.latDeg + (y + north() + random.normal() * walk.jitterM) / scale.lat,
        lonDeg: START.lonDeg + (x + east() + random.normal() * walk.jitterM) / scale.lon,
        elevationM: null,
      });
    }
    speed += (target * (1 + random.normal() * 0.03) - speed) / CHANGE_S;
    heading += random.normal() * 4 * RADIANS;
    [x, y] = [x + speed * Math.sin(heading), y + speed * Math.cos(heading)];
    metres += speed;
    east.step();
    north.step();
  });
  return { track: { segments: [points] }, truth: truthOf(walk.legs, metres) };
}

/** An error of a given standard deviation that wanders smoothly: noise filtered twice. */
function wander(errorM: number, random: Random) {
  const stays = Math.exp(-1 / WANDER_S);
  // Of noise filtered twice with the same constant a, the variance is (1 + a²) / (1 − a²)³.
  const fresh = errorM * Math.sqrt((1 - stays ** 2) ** 3 / (1 + stays ** 2));
  let [once, twice] = [0, 0];
  const step = (): void => {
    once = once * stays + random.normal() * fresh;
    twice = twice * stays + once;
  };
  for (let second = 0; second < 10 * WANDER_S; second += 1) step();
  return Object.assign(() => twice, { step });
}

const inTunnel = ({ tunnels = [] }: Walk, second: number): boolean =>
  tunnels.some(([from, to]) => second >= from && second < to);

function truthOf(legs: readonly Leg[], metres: number): Truth {
  let at = 0;
  const runs: { fromS: number; seconds: number }[] = [];
  for (const { kind, seconds } of legs) {
    if (kind === 'run') runs.push({ fromS: at, seconds });
    at += seconds;
  }
  const runSeconds = runs.reduce((sum, { seconds }) => sum + seconds, 0);
  return { distanceKm: metres / 1000, runMinutes: runSeconds / 60, runs };
}

/** The legs of a planned outing: warm-up walk, then bouts of run and walk in minutes, then cool-down. */
export function boutLegs(times: number, runMin: number, walkMin: number): Leg[] {
  const bout: Leg[] = [
    { kind: 'run', seconds: runMin * 60 },
    { kind: 'walk', seconds: walkMin * 60 },
  ];
  return [
    { kind: 'walk', seconds: 300 },
    ...Array.from({ length: times }, () => bout).flat(),
    { kind: 'walk', seconds: 300 },
  ];
}
