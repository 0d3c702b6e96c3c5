import type { Content, TableCell } from 'pdfmake/interfaces';
import { HEAT_BANDS, type HeatBandId, type HeatTable } from '../../core/training.ts';
import { fill, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { bullets, calmTable, paragraph } from './layout.ts';
import { levelMark } from './sources.ts';

type HeatWords = OwnerWords['heat'];

interface BandLine {
  readonly band: HeatBandId;
  /** "to 10 °C", or "above 20 °C" for the last. */
  readonly range: string;
}

const neverRuns = ({ rows }: HeatTable): boolean =>
  rows.every((row) => row.every((band) => band === 'no run'));

/** The dog's bands with their limits; one line where it may not run at any temperature. */
function bandLines(table: HeatTable, words: HeatWords, format: Format): BandLine[] {
  if (neverRuns(table)) return [{ band: 'no run', range: words.always }];
  const { limits } = table;
  const to = (celsius: number) => fill(words.upTo, { to: format.temperature(celsius) });
  return [
    { band: 'usual care', range: to(limits.usualToC) },
    { band: 'caution', range: to(limits.cautionToC) },
    { band: 'half the run time', range: to(limits.halfToC) },
    { band: 'walk only', range: to(limits.walkToC) },
    {
      band: 'no run',
      range: fill(words.above, { from: format.temperature(limits.walkToC) }),
    },
  ];
}

/** The bands side by side: temperature over what to do. */
export function heatStrip(table: HeatTable, words: HeatWords, tools: Press): Content {
  const lines = bandLines(table, words, tools.format);
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: lines.map(() => '*'),
      body: [
        lines.map(({ range }): TableCell => ({ text: range, bold: true })),
        lines.map(({ band }): TableCell => ({ text: words.bands[band] })),
      ],
    },
    layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2 },
  };
}

/** The bands one under another, with what each means, in large type. */
export function heatLadder(table: HeatTable, words: HeatWords, tools: Press): Content {
  const body = bandLines(table, words, tools.format).map(({ band, range }): TableCell[] => [
    { text: range, font: 'Serif', fontSize: 13 },
    { text: words.bands[band], bold: true, fontSize: 12, margin: [0, 1, 0, 0] },
    { text: words.advice[band], margin: [0, 1, 0, 0] },
  ]);
  return {
    table: { dontBreakRows: true, widths: [112, 130, '*'], body },
    layout: { ...calmTable(tools.colours, 0), paddingTop: () => 5, paddingBottom: () => 5 },
  };
}

/** Why the limits of this dog lie lower than those of others; nothing when they do not. */
export function heatReasons(
  table: HeatTable,
  dog: string,
  words: HeatWords,
  format: Format,
): readonly Content[] {
  // The limits themselves stand in the ladder.
  const reasons = table.reasons.filter(({ code }) => code !== 'heat-bands');
  if (reasons.length === 0) return [];
  const { shiftC } = table.limits;
  const lower = fill(words.lower, { dog, shift: format.degrees(shiftC) });
  const because = reasons.map(
    (reason) =>
      `${words.shifts[reason.code] ?? format.sentence(reason.text)}\u00a0${levelMark(reason.evidence)}`,
  );
  return [...(shiftC > 0 && !neverRuns(table) ? [paragraph(lower, 2)] : []), bullets(because, 0.5)];
}

/** Shades from paper to grey, so that the order of the bands shows without colour. */
const SHADES = ['#ffffff', '#f4f6f5', '#e4e9e6', '#cfd6d2', '#b4bdb8'] as const;

/**
 * The temperatures at which damp air changes what this dog may do; every cell names its band. Null
 * when it changes nothing: a grid of equal columns would only pretend to say something.
 */
export function dampAirGrid(table: HeatTable, words: HeatWords, tools: Press): Content | null {
  const { tempsC, humiditiesPct, rows } = table;
  const telling = rows.flatMap((row, index) =>
    row.some((band) => band !== row[0]) ? [{ row, tempC: tempsC[index] ?? 0 }] : [],
  );
  if (telling.length === 0) return null;
  const head = humiditiesPct.map((humidity): TableCell => ({
    text: tools.format.percent(humidity),
    style: 'tableHead',
    alignment: 'center',
  }));
  const body = telling.map(({ row, tempC }): TableCell[] => [
    { text: tools.format.temperature(tempC), bold: true },
    ...row.map((band): TableCell => ({
      text: words.short[band],
      alignment: 'center',
      fontSize: 8.5,
      fillColor: SHADES[HEAT_BANDS.indexOf(band)],
    })),
  ]);
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: [66, ...humiditiesPct.map(() => '*' as const)],
      body: [[{ text: words.gridHead, style: 'tableHead' }, ...head], ...body],
    },
    layout: {
      ...calmTable(tools.colours),
      paddingTop: () => 2,
      paddingBottom: () => 1,
      paddingLeft: () => 2,
      paddingRight: () => 2,
    },
  };
}
