export interface PosteriorInput {
  /** The prior of the quantity's logarithm: normal. */
  readonly logMid: number;
  readonly logSd: number;
  /** The likelihood of the quantity itself: normal. */
  readonly mean: number;
  readonly sd: number;
}

/** Standard deviations of the prior that the first look spans to either side. */
const REACH = 8;
const POINTS = 801;
/** Parts of the density further than this below its top, in log units, hold nothing that counts. */
const NEGLIGIBLE = 25;

/**
 * Quantiles of a quantity with a log-normal prior and a normal likelihood, by a grid on the log
 * scale: a first look finds where the density lies, a second one resolves it.
 * @returns a function from a share (0–1) to the quantile
 */
export function posteriorOf(input: PosteriorInput): (share: number) => number {
  const logDensity = (log: number): number =>
    -0.5 * ((log - input.logMid) / input.logSd) ** 2 -
    0.5 * ((Math.exp(log) - input.mean) / input.sd) ** 2;
  let from = input.logMid - REACH * input.logSd;
  let to = input.logMid + REACH * input.logSd;
  // More than once: a very exact record can lie between two points of the first grid.
  for (let look = 0; look < 3; look += 1) {
    const step = (to - from) / (POINTS - 1);
    const values = Array.from({ length: POINTS }, (_, index) => logDensity(from + index * step));
    const top = Math.max(...values);
    const first = values.findIndex((value) => value > top - NEGLIGIBLE);
    const last = values.findLastIndex((value) => value > top - NEGLIGIBLE);
    [from, to] = [
      from + Math.max(0, first - 1) * step,
      from + Math.min(POINTS - 1, last + 1) * step,
    ];
  }
  return quantiles(from, to, logDensity);
}

function quantiles(
  from: number,
  to: number,
  logDensity: (log: number) => number,
): (share: number) => number {
  const step = (to - from) / (POINTS - 1);
  const values = Array.from({ length: POINTS }, (_, index) => logDensity(from + index * step));
  const top = Math.max(...values);
  const density = values.map((value) => Math.exp(value - top));
  const cumulative = [0];
  for (let index = 1; index < POINTS; index += 1) {
    cumulative.push(cumulative[index - 1]! + (density[index]! + density[index - 1]!) / 2);
  }
  const total = cumulative.at(-1)!;
  return (share) => {
    const wanted = share * total;
    const index = Math.max(
      1,
      cumulative.findIndex((value) => value >= wanted),
    );
    const before = cumulative[index - 1]!;
    const within = (wanted - before) / (cumulative[index]! - before);
    return Math.exp(from + (index - 1 + within) * step);
  };
}
