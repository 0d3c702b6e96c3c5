import { describe, expect, it } from 'vitest';
import { cleanTrack } from '../../../core/track/clean.ts';
import { climbOf } from '../../../core/track/climb.ts';
import { metresPerDegree } from '../../../core/track/geodesic.ts';
import type { TrackPoint } from '../../../core/track/types.ts';

const LAT = 50;
const { lat } = metresPerDegree(LAT);
/** A point so many metres north of the start. */
const at = (timeS: number | null, metres = 0): TrackPoint => ({
  timeS,
  latDeg: LAT + metres / lat,
  lonDeg: 8,
  elevationM: null,
});
const kept = (points: readonly TrackPoint[]) => {
  const { pieces, dropped } = cleanTrack({ segments: [points] });
  expect(pieces.flat().length + dropped).toBe(points.length);
  return pieces.map((piece) => piece.map(({ timeS }) => timeS));
};

describe('a track without what cannot be', () => {
  it('is in the order of time, each time once, over all segments', () => {
    const { pieces, dropped } = cleanTrack({
      segments: [[at(20), at(null), at(0)], [at(10), at(10, 3)], []],
    });
    expect(pieces.map((piece) => piece.map(({ timeS }) => timeS))).toEqual([[0, 10, 20]]);
    expect(dropped).toBe(2);
    expect(cleanTrack({ segments: [] })).toEqual({ pieces: [], dropped: 0 });
  });

  it('is parted where more than 30 s have no point', () => {
    expect(kept([at(0), at(30), at(60)])).toEqual([[0, 30, 60]]);
    expect(kept([at(0), at(31), at(61)])).toEqual([[0], [31, 61]]);
  });

  // 12 m/s over a step, or 25 m, which say nothing beside a receiver's error.
  it('leaves out a point that nobody on foot reaches', () => {
    expect(kept([at(0), at(1, 24.9), at(2)])).toEqual([[0, 1, 2]]);
    expect(kept([at(0), at(1, 25.2), at(2)])).toEqual([[0, 2]]);
    expect(kept([at(0), at(10, 119), at(20)])).toEqual([[0, 10, 20]]);
    expect(kept([at(0), at(10, 121), at(20)])).toEqual([[0, 20]]);
  });

  it('goes on from five that hold together where the earlier place was the slip', () => {
    const far = (count: number) =>
      Array.from({ length: count }, (_, index) => at(index + 1, 3000 + 3 * index));
    expect(kept([at(0), ...far(4)])).toEqual([[0]]);
    expect(kept([at(0), ...far(5)])).toEqual([[0, 1, 2, 3, 4, 5]]);
    expect(kept([at(0), ...far(4), at(5), at(6)])).toEqual([[0, 5, 6]]);
    // Slips in a row that do not hold together are slips.
    const wild = [3000, 6000, 9000, 12_000, 15_000].map((metres, index) => at(index + 1, metres));
    expect(kept([at(0), ...wild, at(6)])).toEqual([[0, 6]]);
    // A good point between begins the count again.
    expect(
      kept([at(0), ...far(3), at(4), ...far(3).map((p, i) => ({ ...p, timeS: 5 + i }))]),
    ).toEqual([[0, 4]]);
  });
});

describe('metres climbed', () => {
  /** So long at each height that the middle of nine is that height. */
  const over = (...heights: readonly number[]) =>
    heights.flatMap((height) => Array<number>(20).fill(height));

  it.each([
    [[100, 104.9], 0],
    [[100, 105], 5],
    [[105, 100], 0],
    [[100, 110, 105.1, 112], 12],
    [[100, 110, 105, 112], 17],
    [[100, 98, 103], 5],
    [[100, 98, 102.9], 0],
    [[100, 107, 90, 96, 80], 13],
    [[100, 103, 106, 109], 9],
  ])('over %j m: %d', (heights, climbed) => {
    expect(climbOf(over(...heights))).toBeCloseTo(climbed, 9);
  });

  it('count no spike of the receiver, and nothing that is not known', () => {
    const spiked = over(100);
    for (const index of [3, 4, 11, 12]) spiked[index] = 180;
    expect(climbOf(spiked)).toBe(0);
    expect(climbOf(over(100, 120).flatMap((height) => [null, height]))).toBe(20);
  });

  it('are not known without two heights', () => {
    expect(climbOf([])).toBeNull();
    expect(climbOf([null, 100, null])).toBeNull();
    expect(climbOf([100, 120])).not.toBeNull();
  });
});
