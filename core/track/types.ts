/** One point of a recorded track; null for what the recorder left out. */
export interface TrackPoint {
  /** Seconds since 1970-01-01T00:00:00Z. */
  readonly timeS: number | null;
  /** Degrees on WGS 84, north and east positive. */
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number | null;
}

/** A recorded outing: segments in the order of the file, each without a break of the recorder's own. */
export interface Track {
  readonly segments: readonly (readonly TrackPoint[])[];
}

/** A stretch in one gait of the owner: run, or walk with its stops. */
export interface TrackBout {
  readonly kind: 'run' | 'walk';
  /** From the first point of the track, s. */
  readonly fromS: number;
  readonly seconds: number;
  readonly distanceM: number;
}

/** What a record keeps of a run as it was; null where not told. No place is kept. */
export interface RunAsItWas {
  /** Run, walks and stops left out. */
  readonly runKm: number | null;
  /** Run-minutes of the longest outing of the day, walks between its runs left out. */
  readonly longestRunMinutes: number | null;
  /** Metres climbed on the whole outing. */
  readonly climbedM: number | null;
}

/** What a track says of an outing. */
export interface TrackOuting {
  /** Time of the first point, seconds since 1970 UTC. */
  readonly startS: number;
  /** From the first to the last point. */
  readonly seconds: number;
  readonly movingSeconds: number;
  readonly distanceKm: number;
  /** Run alone, walks left out. */
  readonly runKm: number;
  /** Metres climbed; null where the track has no heights. */
  readonly climbM: number | null;
  readonly bouts: readonly TrackBout[];
  readonly runMinutes: number;
  /** The longest run without a walk between, min. */
  readonly longestRunMinutes: number;
  /** Mean speed over the run bouts; null where nothing was run. */
  readonly runSpeedMps: number | null;
  /** Speed in every second, m/s. */
  readonly speedsMps: readonly number[];
  /** The speed that told run from walk, m/s. */
  readonly splitMps: number;
  /** Time without a point, s: covered in a straight line, in the gait before it. */
  readonly gapSeconds: number;
  /** Points left out because nobody on foot gets there in that time, or of a time told twice. */
  readonly droppedPoints: number;
}
