/** One-sided 95 % of a normal distribution. */
const Z95 = 1.6448536269514722;

/** One observation on a line, with the standard deviation of its own error. */
export interface Observation {
  readonly x: number;
  readonly y: number;
  readonly sd: number;
  /** Observations of the same group share one unknown offset (a second scale, a harness). */
  readonly group?: string | null;
  /** Standard deviation of that offset. */
  readonly groupSd?: number;
}

/** A straight line through observations, each weighted by its own error. */
export interface LineFit {
  readonly slope: number;
  readonly slopeSd: number;
  /** The line's pivot, where height and slope are independent of one another. */
  readonly meanX: number;
  readonly meanY: number;
  readonly meanSd: number;
  /** Factor by which the errors were widened because the points scatter more than they explain. */
  readonly widened: number;
}

/**
 * Generalised least squares with known errors: independent errors, plus one shared offset for each
 * group. Where the points scatter more than their errors explain (chi-square beyond its 95 %
 * point), the errors are widened by the square root of the reduced chi-square, the usual treatment
 * of inconsistent measurements; they are never narrowed. Widening for less would make the interval
 * of honest weighings hold more than it says. Null when fewer than two different x are given.
 */
export function fitLine(observations: readonly Observation[]): LineFit | null {
  const origin = observations[0]?.x ?? 0;
  const x = observations.map((point) => point.x - origin);
  const y = observations.map((point) => point.y);
  const one = observations.map(() => 1);
  const inner = innerProduct(observations);
  const weight = inner(one, one);
  const meanX = inner(one, x) / weight;
  const meanY = inner(one, y) / weight;
  const dx = x.map((value) => value - meanX);
  const spread = inner(dx, dx);
  if (!(spread > 1e-9)) return null;
  const slope = inner(dx, y) / spread;
  const residuals = y.map((value, index) => value - meanY - slope * dx[index]!);
  const widened = widening(inner(residuals, residuals), observations.length - 2);
  return {
    slope,
    slopeSd: widened / Math.sqrt(spread),
    meanX: meanX + origin,
    meanY,
    meanSd: widened / Math.sqrt(weight),
    widened,
  };
}

/** Factor on the errors: 1 while the scatter is one that such errors give 95 times in 100. */
function widening(chiSquare: number, freedom: number): number {
  if (freedom < 1 || chiSquare <= chiSquare95(freedom)) return 1;
  return Math.sqrt(chiSquare / freedom);
}

/** 95 % point of chi-square, by Wilson and Hilferty's cube; within 3 % from one degree on. */
export function chiSquare95(freedom: number): number {
  const ninth = 2 / (9 * freedom);
  return freedom * (1 - ninth + Z95 * Math.sqrt(ninth)) ** 3;
}

/** The line's height at `x` and the standard deviation of that height. */
export function lineAt(fit: LineFit, x: number): { readonly y: number; readonly sd: number } {
  const distance = x - fit.meanX;
  return {
    y: fit.meanY + fit.slope * distance,
    sd: Math.hypot(fit.meanSd, fit.slopeSd * distance),
  };
}

type InnerProduct = (u: readonly number[], v: readonly number[]) => number;

/**
 * `uᵀ V⁻¹ v` for the covariance V of the errors. V is a block for each group, a diagonal plus a
 * constant, so that its inverse is known in closed form (Sherman–Morrison).
 */
function innerProduct(observations: readonly Observation[]): InnerProduct {
  const blocks = new Map<string, { readonly offset: number; readonly members: number[] }>();
  observations.forEach(({ group, groupSd }, index) => {
    const key = group ?? '';
    const offset = group === undefined || group === null ? 0 : (groupSd ?? 0) ** 2;
    const block = blocks.get(key) ?? { offset, members: [] };
    block.members.push(index);
    blocks.set(key, block);
  });
  const precision = observations.map(({ sd }) => 1 / (sd * sd));
  return (u, v) => {
    let total = 0;
    for (const { offset, members } of blocks.values()) {
      let [both, left, right, all] = [0, 0, 0, 0];
      for (const index of members) {
        const weight = precision[index]!;
        both += weight * u[index]! * v[index]!;
        left += weight * u[index]!;
        right += weight * v[index]!;
        all += weight;
      }
      total += both - (offset * left * right) / (1 + offset * all);
    }
    return total;
  };
}
