import geodesic from 'geographiclib-geodesic';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stepMetres } from '../../core/track/geodesic.ts';
import { evenly, holds } from '../support/laws.ts';

// Reference: GeographicLib's geodesic on WGS 84 (Karney 2013, J Geodesy 87:43-55), the library of
// its author (npm geographiclib-geodesic).
const { WGS84 } = geodesic.Geodesic;

const place = fc.record({ latDeg: evenly(-80, 80), lonDeg: evenly(-180, 180) });

test('a step of a track is within 0.01 % of the geodesic, up to 10 km and outside the polar caps', () => {
  holds(
    fc.property(
      place,
      evenly(0, 360),
      fc.integer({ min: 1, max: 10_000 }),
      (from, bearing, metres) => {
        const to = WGS84.Direct(from.latDeg, from.lonDeg, bearing, metres);
        const stepped = stepMetres(from, { latDeg: to.lat2!, lonDeg: to.lon2! });
        expect(Math.abs(stepped / metres - 1)).toBeLessThan(1e-4);
      },
    ),
  );
});

test('one hundredth of a degree of latitude at 50° north is 1112.3 m', () => {
  const [a, b] = [
    { latDeg: 50, lonDeg: 8 },
    { latDeg: 50.01, lonDeg: 8 },
  ];
  const reference = WGS84.Inverse(50, 8, 50.01, 8).s12!;
  expect(stepMetres(a, b)).toBeCloseTo(reference, 2);
  expect(reference).toBeCloseTo(1112.3, 1);
});
