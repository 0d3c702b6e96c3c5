/** WGS 84 (NGA standard): semi-major axis in m, and flattening. */
const SEMI_MAJOR_M = 6_378_137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_2 = FLATTENING * (2 - FLATTENING);
export const RADIANS = Math.PI / 180;

/** Metres a degree of latitude and of longitude measures at a latitude, from the radii of curvature. */
export function metresPerDegree(latDeg: number): { readonly lat: number; readonly lon: number } {
  const sin = Math.sin(latDeg * RADIANS);
  const w = 1 - ECCENTRICITY_2 * sin * sin;
  const meridian = (SEMI_MAJOR_M * (1 - ECCENTRICITY_2)) / w ** 1.5;
  const primeVertical = SEMI_MAJOR_M / Math.sqrt(w);
  return {
    lat: meridian * RADIANS,
    lon: primeVertical * Math.cos(latDeg * RADIANS) * RADIANS,
  };
}

/**
 * Distance between two places on the WGS 84 ellipsoid, m, by the radii of curvature at the latitude
 * between them: for the steps of a track. Within 0.01 % of the geodesic up to 10 km, outside the
 * polar caps (C).
 */
export function stepMetres(a: Place, b: Place): number {
  const scale = metresPerDegree((a.latDeg + b.latDeg) / 2);
  const east = ((((b.lonDeg - a.lonDeg + 540) % 360) + 360) % 360) - 180;
  return Math.hypot((b.latDeg - a.latDeg) * scale.lat, east * scale.lon);
}

interface Place {
  readonly latDeg: number;
  readonly lonDeg: number;
}
