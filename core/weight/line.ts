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

/** One-sided 95 % of a normal distribution. */
const Z95 = 1.6448536269514722;

/** Weighted sums of the observations that share one offset (or of those that share none). */
interface Block {
  /** Name of the group; the empty one has no offset. */
  readonly group: string;
  /** Variance of the shared offset; 0 for none. */
  readonly offset: number;
  w: number;
  x: number;
  y: number;
  xx: number;
  xy: number;
  yy: number;
}

/**
 * All that a line needs to know of its observations: sums, so that the line without one of them
 * costs a subtraction. Counted from the first observation, which keeps the sums small and exact.
 */
export interface Moments {
  readonly originX: number;
  readonly originY: number;
  /** The first is that of no group. */
  readonly blocks: Block[];
  count: number;
}

/** The sums of some observations, counted from the first. */
export function momentsOf(observations: readonly Observation[]): Moments {
  const originX = observations[0]?.x ?? 0;
  const originY = observations[0]?.y ?? 0;
  const own: Block = { group: '', offset: 0, w: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0 };
  const moments: Moments = { originX, originY, blocks: [own], count: observations.length };
  let w = 0;
  let sx = 0;
  let sy = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  // Most observations share nothing; summed in the loop itself, which is many times faster.
  for (let index = 0; index < observations.length; index += 1) {
    const point = observations[index]!;
    if ((point.group ?? '') !== '') {
      addToBlock(moments, point, 1);
      continue;
    }
    const weight = 1 / (point.sd * point.sd);
    const x = point.x - originX;
    const y = point.y - originY;
    const weightX = weight * x;
    const weightY = weight * y;
    w += weight;
    sx += weightX;
    sy += weightY;
    xx += weightX * x;
    xy += weightX * y;
    yy += weightY * y;
  }
  own.w = w;
  own.x = sx;
  own.y = sy;
  own.xx = xx;
  own.xy = xy;
  own.yy = yy;
  return moments;
}

/** Adds an observation to the sums (`sign` 1), or takes one that was added away (−1). */
export function addTo(moments: Moments, point: Observation, sign: 1 | -1): void {
  addToBlock(moments, point, sign);
  moments.count += sign;
}

function addToBlock(moments: Moments, point: Observation, sign: 1 | -1): void {
  const w = sign / (point.sd * point.sd);
  const x = point.x - moments.originX;
  const y = point.y - moments.originY;
  const block = blockOf(moments, point);
  const wx = w * x;
  const wy = w * y;
  block.w += w;
  block.x += wx;
  block.y += wy;
  block.xx += wx * x;
  block.xy += wx * y;
  block.yy += wy * y;
}

function blockOf({ blocks }: Moments, { group, groupSd }: Observation): Block {
  const key = group ?? '';
  for (let index = 0; index < blocks.length; index += 1) {
    if (blocks[index]!.group === key) return blocks[index]!;
  }
  const offset = (groupSd ?? 0) ** 2;
  const block = { group: key, offset, w: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0 };
  blocks.push(block);
  return block;
}

/**
 * The line through the observations behind the sums; null when fewer than two different x are left.
 *
 * Each product is `uᵀ V⁻¹ v` for the covariance V of the errors. V is a block for each group, a
 * diagonal plus a constant, so that its inverse is known in closed form (Sherman–Morrison).
 */
export function lineFrom({ originX, originY, blocks, count }: Moments): LineFit | null {
  let { w, x, y, xx, xy, yy } = blocks[0]!;
  for (let index = 1; index < blocks.length; index += 1) {
    const block = blocks[index]!;
    const share = block.offset / (1 + block.offset * block.w);
    w += block.w - share * block.w * block.w;
    x += block.x - share * block.w * block.x;
    y += block.y - share * block.w * block.y;
    xx += block.xx - share * block.x * block.x;
    xy += block.xy - share * block.x * block.y;
    yy += block.yy - share * block.y * block.y;
  }
  const meanX = x / w;
  const meanY = y / w;
  const spread = xx - x * meanX;
  // What subtraction leaves of the sums' last digits is no spread.
  if (!(spread > 1e-9 + 1e-12 * xx)) return null;
  const slope = (xy - x * meanY) / spread;
  const chiSquare = Math.max(0, yy - y * meanY - slope * slope * spread);
  const widened = widening(chiSquare, count - 2);
  return {
    slope,
    slopeSd: widened / Math.sqrt(spread),
    meanX: meanX + originX,
    meanY: meanY + originY,
    meanSd: widened / Math.sqrt(w),
    widened,
  };
}

/** Factor on the errors: 1 while the scatter is one that such errors give 95 times in 100. */
function widening(chiSquare: number, freedom: number): number {
  // No scatter below its expectation lies beyond the 95 % point: most lines need no cube.
  if (freedom < 1 || chiSquare <= freedom || chiSquare <= chiSquare95(freedom)) return 1;
  return Math.sqrt(chiSquare / freedom);
}

/** 95 % point of chi-square, by Wilson and Hilferty's cube; within 3 % from one degree on. */
export function chiSquare95(freedom: number): number {
  const ninth = 2 / (9 * freedom);
  return freedom * (1 - ninth + Z95 * Math.sqrt(ninth)) ** 3;
}

/**
 * Generalised least squares with known errors: independent errors, plus one shared offset for each
 * group. Where the points scatter more than their errors explain (chi-square beyond its 95 %
 * point), the errors are widened by the square root of the reduced chi-square, the usual treatment
 * of inconsistent measurements; they are never narrowed. Widening for less would make the interval
 * of honest weighings hold more than it says. Null when fewer than two different x are given.
 */
export function fitLine(observations: readonly Observation[]): LineFit | null {
  return lineFrom(momentsOf(observations));
}

/** The line's height at `x` and the standard deviation of that height. */
export function lineAt(fit: LineFit, x: number): { readonly y: number; readonly sd: number } {
  const distance = x - fit.meanX;
  const bySlope = fit.slopeSd * distance;
  return {
    y: fit.meanY + fit.slope * distance,
    // Not Math.hypot: these are never near the ends of the number range, and it is many times slower.
    sd: Math.sqrt(fit.meanSd * fit.meanSd + bySlope * bySlope),
  };
}
