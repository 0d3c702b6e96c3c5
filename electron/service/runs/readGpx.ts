import { SaxesParser, type SaxesTagNS } from 'saxes';
import { grouped } from '../../../core/quantityText.ts';
import type { Track, TrackPoint } from '../../../core/index.ts';

/** GPX 1.1 (topografix.com schema) and its forerunner; some recorders name no namespace at all. */
const NAMESPACES: readonly string[] = [
  'http://www.topografix.com/GPX/1/1',
  'http://www.topografix.com/GPX/1/0',
  '',
];
/** About three days at a point a second (D). */
export const MOST_POINTS = 250_000;
/** Elements inside one another; the schema itself needs five. */
const DEEPEST = 32;

/** A file that is no track, in a sentence for the person who chose it. */
export class TrackFileError extends Error {}

interface OpenPoint {
  lat: number;
  lon: number;
  timeS: number | null;
  elevationM: number | null;
}

/** Characters read before other calls get their turn. */
const AT_ONCE = 256 * 1024;

/**
 * Reads the tracks of a GPX file: all their segments, in order. Routes, waypoints and extensions are
 * passed over; a point without a place is left out. A long file is read in parts, so that nothing
 * else waits for it.
 * @throws TrackFileError that says what is wrong with the file
 */
export async function readGpx(text: string): Promise<Track> {
  const reader = new Reader();
  const parser = new SaxesParser({ xmlns: true });
  parser.on('doctype', () => {
    throw new TrackFileError('This file declares entities of its own, which no track needs.');
  });
  parser.on('opentag', (tag) => reader.open(tag));
  parser.on('text', (part) => reader.text(part));
  parser.on('closetag', (tag) => reader.close(tag));
  parser.on('error', () => {
    throw new TrackFileError('This file is not well-formed XML: it cannot be read as a track.');
  });
  for (let at = 0; at < text.length; at += AT_ONCE) {
    if (at > 0) await new Promise((resolve) => setImmediate(resolve));
    parser.write(text.slice(at, at + AT_ONCE));
  }
  parser.close();
  if (!reader.isGpx) throw new TrackFileError('This is no GPX file.');
  if (reader.segments.length === 0) throw new TrackFileError('There is no track in this file.');
  return { segments: reader.segments };
}

/** What of the file is open at the moment. */
class Reader {
  isGpx = false;
  readonly segments: TrackPoint[][] = [];
  private readonly path: string[] = [];
  private point: OpenPoint | null = null;
  private words = '';
  private points = 0;

  open({ local, uri, attributes }: SaxesTagNS): void {
    // What is in a namespace of its own is an extension, and so is what it holds.
    this.path.push(NAMESPACES.includes(uri) ? local : `{${uri}}`);
    if (this.path.length > DEEPEST) {
      throw new TrackFileError('This file is nested deeper than any track.');
    }
    this.words = '';
    const at = this.path.join('/');
    if (at === 'gpx') this.isGpx = true;
    if (at === 'gpx/trk/trkseg') this.segments.push([]);
    if (at === 'gpx/trk/trkseg/trkpt') {
      this.point = {
        lat: numberOf(attributes['lat']?.value),
        lon: numberOf(attributes['lon']?.value),
        timeS: null,
        elevationM: null,
      };
    }
  }

  text(part: string): void {
    if (this.point !== null) this.words += part;
  }

  close({ local }: SaxesTagNS): void {
    const at = this.path.join('/');
    this.path.pop();
    const { point } = this;
    if (point === null) return;
    if (at === 'gpx/trk/trkseg/trkpt/time') point.timeS = secondsOf(this.words);
    if (at === 'gpx/trk/trkseg/trkpt/ele') point.elevationM = heightOf(this.words);
    if (local === 'trkpt' && at === 'gpx/trk/trkseg/trkpt') {
      this.keep(point);
      this.point = null;
    }
  }

  private keep({ lat, lon, timeS, elevationM }: OpenPoint): void {
    this.points += 1;
    if (this.points > MOST_POINTS) {
      throw new TrackFileError(
        `This file has more than ${grouped(MOST_POINTS)} points: split it into single outings.`,
      );
    }
    if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) return;
    this.segments.at(-1)!.push({ latDeg: lat, lonDeg: lon, timeS, elevationM });
  }
}

const numberOf = (text: string | undefined): number =>
  text === undefined || text.trim() === '' ? Number.NaN : Number(text);

/** ISO 8601 as the schema asks for; a time without a zone is taken as UTC. */
function secondsOf(text: string): number | null {
  const written = text.trim();
  const zoned = /(Z|[+-]\d\d:?\d\d)$/i.test(written) ? written : `${written}Z`;
  const seconds = Date.parse(zoned) / 1000;
  return Number.isFinite(seconds) ? seconds : null;
}

function heightOf(text: string): number | null {
  const height = numberOf(text);
  return Number.isFinite(height) && Math.abs(height) < 10_000 ? height : null;
}
