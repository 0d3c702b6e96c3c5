import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_POINTS, readGpx, TrackFileError } from '../../../electron/service/runs/readGpx.ts';
import { holdsAsync } from '../../support/laws.ts';

const gpx = (inside: string, head = 'xmlns="http://www.topografix.com/GPX/1/1"'): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="test" ${head}>${inside}</gpx>`;
const point = (lat: number, lon: number, inside = ''): string =>
  `<trkpt lat="${lat}" lon="${lon}">${inside}</trkpt>`;
const track = (...segments: string[]): string =>
  `<trk><name>Out &amp; back</name>${segments.map((one) => `<trkseg>${one}</trkseg>`).join('')}</trk>`;

describe('a GPX file', () => {
  test('gives its segments with places, times and heights', async () => {
    const read = await readGpx(
      gpx(
        track(
          point(50, 8, '<ele>101.5</ele><time>2026-03-02T06:00:00Z</time>') +
            point(50.001, 8, '<time>2026-03-02T07:00:01+01:00</time>'),
          point(50.002, 8, '<time>2026-03-02T06:00:02</time>'),
        ),
      ),
    );
    const at = Date.UTC(2026, 2, 2, 6) / 1000;
    expect(read.segments).toEqual([
      [
        { latDeg: 50, lonDeg: 8, timeS: at, elevationM: 101.5 },
        { latDeg: 50.001, lonDeg: 8, timeS: at + 1, elevationM: null },
      ],
      [{ latDeg: 50.002, lonDeg: 8, timeS: at + 2, elevationM: null }],
    ]);
  });

  test.each([
    ['xmlns="http://www.topografix.com/GPX/1/0"'],
    [''],
    ['xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:example"'],
  ])('is read with the head %s', async (head) => {
    expect((await readGpx(gpx(track(point(50, 8)), head))).segments).toHaveLength(1);
  });

  test('is read with a prefix of its own', async () => {
    const text =
      '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:trk><g:trkseg>' +
      '<g:trkpt lat="1" lon="2"/></g:trkseg></g:trk></g:gpx>';
    expect((await readGpx(text)).segments[0]).toHaveLength(1);
  });

  test('is read without its extensions, routes and waypoints', async () => {
    const read = await readGpx(
      gpx(
        `<wpt lat="1" lon="2"/><rte><rtept lat="1" lon="2"/></rte>${track(
          point(
            50,
            8,
            '<extensions><x:hr>120</x:hr><x:time>2020-01-01T00:00:00Z</x:time></extensions>',
          ),
        )}`,
        'xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:example"',
      ),
    );
    expect(read.segments).toEqual([[{ latDeg: 50, lonDeg: 8, timeS: null, elevationM: null }]]);
  });

  test('leaves out a point without a place, and a time or height that is none', async () => {
    const read = await readGpx(
      gpx(
        track('<trkpt lon="8"/>' + point(95, 8) + point(50, 8, '<time>noon</time><ele>high</ele>')),
      ),
    );
    expect(read.segments).toEqual([[{ latDeg: 50, lonDeg: 8, timeS: null, elevationM: null }]]);
  });
});

describe('what is no track', () => {
  const bomb = `<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>${gpx(track(point(1, 2)))}`;
  test.each([
    ['nothing at all', ''],
    ['another kind of text', 'day,weight\n2026-01-01,20'],
    ['half a file', gpx(track(point(1, 2))).slice(0, -20)],
    ['entities of its own', bomb],
    ['an unknown entity', gpx('<trk><name>&boo;</name></trk>')],
    ['another kind of XML', '<svg xmlns="http://www.w3.org/2000/svg"><trk/></svg>'],
    ['no track', gpx('<wpt lat="1" lon="2"/>')],
    ['deep nesting', gpx('<a>'.repeat(50_000))],
  ])('%s is refused in a sentence', async (_, text) => {
    await expect(readGpx(text)).rejects.toThrow(TrackFileError);
  });

  test('too many points are refused', async () => {
    const many = gpx(track(point(1, 2).repeat(MOST_POINTS + 1)));
    await expect(readGpx(many)).rejects.toThrow(/more than 250,000 points/);
  });

  test('a malformed file is read or refused, never a fault of the program', async () => {
    const good = gpx(track(point(50, 8, '<time>2026-03-02T06:00:00Z</time>').repeat(3)));
    await holdsAsync(
      fc.asyncProperty(
        fc.nat(good.length),
        fc.nat(30),
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.constantFrom('<', '&', ']]>', '<![CDATA[', '\0'),
        ),
        async (at, cut, put) => {
          const spoilt = good.slice(0, at) + put + good.slice(at + cut);
          try {
            await readGpx(spoilt);
          } catch (error) {
            expect(error).toBeInstanceOf(TrackFileError);
          }
        },
      ),
      { numRuns: 600 },
    );
  });
});
