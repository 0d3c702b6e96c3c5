import type { Track } from '../../../core/index.ts';

/** A track as a recorder writes it (GPX 1.1). */
export function gpxOf({ segments }: Track): string {
  const points = segments.map((segment) =>
    segment.map(({ timeS, latDeg, lonDeg, elevationM }) => {
      const height = elevationM === null ? '' : `<ele>${elevationM}</ele>`;
      const time = timeS === null ? '' : `<time>${new Date(timeS * 1000).toISOString()}</time>`;
      return `<trkpt lat="${latDeg}" lon="${lonDeg}">${height}${time}</trkpt>`;
    }),
  );
  const body = points.map((of) => `<trkseg>${of.join('')}</trkseg>`).join('');
  return `<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk>${body}</trk></gpx>`;
}
