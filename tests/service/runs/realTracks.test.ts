import { readFileSync } from 'node:fs';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, test } from 'vitest';
import { trackOutings, type Track } from '../../../core/index.ts';
import { readGpx } from '../../../electron/service/runs/readGpx.ts';

// Real recordings; where they are from stands beside them in fixtures/LICENCES.md. Reference for
// distances: GeographicLib's geodesic over every recorded point (npm geographiclib-geodesic).
const { WGS84 } = geodesic.Geodesic;

const textOf = (name: string): string =>
  readFileSync(new URL(`./fixtures/${name}.gpx`, import.meta.url), 'utf8');

function geodesicKm({ segments }: Track): number {
  const points = segments.flat();
  const metres = points.slice(1).map((to, at) => {
    const from = points[at]!;
    return WGS84.Inverse(from.latDeg, from.lonDeg, to.latDeg, to.lonDeg).s12!;
  });
  return metres.reduce((sum, step) => sum + step, 0) / 1000;
}

describe('a real recording', () => {
  test.each([
    { name: 'run-12-minutes', points: 206, seconds: 948 },
    { name: 'run-39-minutes', points: 1919, seconds: 2347 },
    { name: 'ride', points: 850, seconds: 1338 },
  ])('$name is read whole', async ({ name, points, seconds }) => {
    const track = await readGpx(textOf(name));
    const read = track.segments.flat();
    expect(read).toHaveLength(points);
    expect(read.every(({ timeS, elevationM }) => timeS !== null && elevationM !== null)).toBe(true);
    const outings = trackOutings(track);
    expect(outings).toHaveLength(1);
    expect(outings[0]!.seconds).toBe(seconds);
    expect(outings[0]!.bouts.reduce((sum, bout) => sum + bout.seconds, 0)).toBe(seconds);
    expect(Math.abs(outings[0]!.distanceKm / geodesicKm(track) - 1)).toBeLessThan(0.04);
  });

  test('of a run comes to the distance its recorder showed, 5.77 km', async () => {
    const [outing] = trackOutings(await readGpx(textOf('run-39-minutes')));
    expect(Math.abs(outing!.distanceKm / 5.77 - 1)).toBeLessThan(0.03);
    expect(outing!.runSpeedMps).toBeCloseTo(3, 1);
  });

  test('of a ride is no run of a dog: points faster than anyone on foot are left out', async () => {
    const [outing] = trackOutings(await readGpx(textOf('ride')));
    expect(outing!.droppedPoints).toBeGreaterThan(0);
  });
});
