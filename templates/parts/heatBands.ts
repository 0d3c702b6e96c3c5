import type { Content, TableCell } from 'pdfmake/interfaces';
import type { HeatBandId, HeatTable } from '../../core/training.ts';
import { fill, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { bullets, calmTable, paragraph, tableHead } from './layout.ts';
import { levelMark } from './sources.ts';

type HeatWords = OwnerWords['heat'];

interface BandLine {
  readonly band: HeatBandId;
  /** "to 10 °C" for each humidity of the ladder, or "above 20 °C" for the last. */
  readonly ranges: readonly string[];
}

/** True where no warmth or cold allows running: limits would read as leave to run. */
const neverRuns = ({ ladder }: HeatTable): boolean => ladder.length === 0;

/** The dog's bands with their limits at each humidity; the last is "no run". */
function bandLines(table: HeatTable, words: HeatWords, format: Format): BandLine[] {
  const to = (celsius: number) => fill(words.upTo, { to: format.temperatureLimit(celsius) });
  const above = (celsius: number) => fill(words.above, { from: format.temperatureLimit(celsius) });
  const ends = table.ladder.at(-1)?.toC ?? [];
  return [
    ...table.ladder.map(({ band, toC }) => ({ band, ranges: toC.map(to) })),
    { band: 'no run', ranges: ends.map(above) },
  ];
}

const humidities = (table: HeatTable, words: HeatWords, format: Format): string[] =>
  table.ladderHumiditiesPct.map((humidity) => fill(words.upTo, { to: format.percent(humidity) }));

/** The bands side by side, each with its temperature in ordinary and in wet air. */
export function heatStrip(table: HeatTable, words: HeatWords, tools: Press): Content {
  if (neverRuns(table)) return { text: `${words.always}: ${words.bands['no run']}`, bold: true };
  const lines = bandLines(table, words, tools.format);
  const heads = humidities(table, words, tools.format);
  const row = (column: number): TableCell[] => [
    { text: fill(words.humidity, { to: heads[column] ?? '' }), style: 'small' },
    ...lines.map(({ ranges }): TableCell => ({ text: ranges[column] ?? '' })),
  ];
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: [96, ...lines.map(() => '*' as const)],
      body: [
        ['', ...lines.map(({ band }): TableCell => ({ text: words.bands[band], bold: true }))],
        row(0),
        row(heads.length - 1),
      ],
    },
    layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2 },
  };
}

const LADDER_LAYOUT = { paddingTop: () => 2, paddingBottom: () => 1.5 } as const;

/** One line for a dog that does not run, whatever the air. */
function neverLine(words: HeatWords, tools: Press): Content {
  const cells: TableCell[] = [
    { text: words.always, font: 'Serif', fontSize: 13 },
    { text: words.bands['no run'], bold: true, fontSize: 12, margin: [0, 1, 0, 0] },
    { text: words.never, margin: [0, 1, 0, 0] },
  ];
  return {
    table: { dontBreakRows: true, widths: [112, 130, '*'], body: [cells] },
    layout: { ...calmTable(tools.colours, 0), ...LADDER_LAYOUT },
  };
}

/** The bands one under another, with what each means, in large type: limits by humidity. */
export function heatLadder(table: HeatTable, words: HeatWords, tools: Press): Content {
  if (neverRuns(table)) return neverLine(words, tools);
  const heads = humidities(table, words, tools.format).map((to) =>
    tableHead(fill(words.humidity, { to })),
  );
  const body = bandLines(table, words, tools.format).map(({ band, ranges }): TableCell[] => [
    ...ranges.map((text): TableCell => ({ text, font: 'Serif', fontSize: 10.5, noWrap: true })),
    { text: [{ text: words.bands[band], bold: true }, `. ${words.advice[band]}`] },
  ]);
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: [...heads.map(() => 58), '*'],
      body: [[...heads, ''], ...body],
    },
    layout: { ...calmTable(tools.colours), ...LADDER_LAYOUT },
  };
}

/** What holds beside the bands: the watch line of cool air, and the first warm spell. */
export function heatWatch(table: HeatTable, dog: string, words: HeatWords): readonly Content[] {
  if (neverRuns(table)) return [];
  const days = table.notUsedWeeks * 7;
  return [
    { text: fill(words.watch, { dog }), margin: [0, 3, 0, 1] },
    paragraph(fill(words.firstWarm, { dog, days }), 0),
  ];
}

/** What the cold asks of this dog; nothing for one that does not run at all. */
export function coldLines(
  table: HeatTable,
  dog: string,
  words: HeatWords,
  format: Format,
): readonly Content[] {
  if (neverRuns(table)) return [];
  const { cold } = table;
  const limit = (celsius: number) => ({ limit: format.temperature(celsius), dog });
  const minutes = format.minutes(cold.warmUpMinutes);
  return [
    bullets(
      [
        fill(words.cold.warmUp, { ...limit(cold.warmUpBelowC), minutes }),
        ...(cold.coat ? [fill(words.cold.coat, limit(cold.warmUpBelowC))] : []),
        fill(words.cold.half, limit(cold.halfBelowC)),
        fill(words.cold.none, limit(cold.noneBelowC)),
        words.cold.ice,
      ],
      0.5,
    ),
  ];
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
      `${words.shifts[reason.code] ?? format.says(reason)}\u00a0${levelMark(reason.evidence)}`,
  );
  return [...(shiftC > 0 && !neverRuns(table) ? [paragraph(lower, 2)] : []), bullets(because, 0.5)];
}
