import type { Practice } from '../../contract/records.ts';
import { DAY_FORMATS } from '../../contract/records.ts';
import {
  DECIMAL_SIGNS,
  SEPARATORS,
  type DecimalSign,
  type GuessedMapping,
  type Separator,
  type TableWeightUnit,
} from '../../contract/exchange/weightImport.ts';
import { readDay, readWeight } from './cells.ts';
import { readCsv, type TableRow } from './csvRead.ts';

/** Rows looked at; the practitioner sees and corrects what was guessed. */
const LOOKED_AT = 200;
/** A comma comes last: it may also stand inside the numbers. */
const IN_ORDER: readonly Separator[] = [';', '\t', '|', ','];

/** The separator that cuts most of the first rows into the same number of columns. */
export function guessSeparator(text: string): Separator {
  const told = /^sep=(.)\r?\n/i.exec(text)?.[1];
  const named = SEPARATORS.find((separator) => separator === told);
  if (named !== undefined) return named;
  const scored = IN_ORDER.map((separator) => ({ separator, score: evenness(text, separator) }));
  return scored.reduce((best, next) => (next.score > best.score ? next : best)).separator;
}

/** Share of the first rows with the usual number of columns; 0 where that is one. */
function evenness(text: string, separator: Separator): number {
  try {
    const widths = readCsv(text, separator, LOOKED_AT).map(({ cells }) => cells.length);
    const usual = mostFrequent(widths) ?? 1;
    if (usual < 2) return 0;
    return widths.filter((width) => width === usual).length / widths.length;
  } catch {
    // Cut in this way, it is no table.
    return 0;
  }
}

function mostFrequent(numbers: readonly number[]): number | null {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

type Home = Pick<Practice, 'dayFormat' | 'weightUnit'>;

const HEADINGS = {
  dog: /\b(dog|name|hund|chien|perro|animal|patient|pet)\b/i,
  owner: /\b(owner|client|halter|besitzer|propri[eé]taire|due[nñ]o)\b/i,
  day: /\b(day|date|datum|tag|jour|fecha|d[ií]a)\b/i,
  weight: /\b(weight|gewicht|poids|peso|kg|lbs?)\b/i,
} as const;

/** What each column holds, by its heading and by what most of its cells can be read as. */
export function guessMapping(
  rows: readonly TableRow[],
  separator: Separator,
  home: Home,
): GuessedMapping {
  const first = rows[0]?.cells ?? [];
  const headed = isHeading(first);
  const body = rows.slice(headed ? 1 : 0, LOOKED_AT).map(({ cells }) => cells);
  const heading = (column: number): string => (headed ? (first[column] ?? '') : '');
  const columns = first.map((_, column) => column);
  const by = (test: (column: number) => boolean): number | null => columns.find(test) ?? null;
  const inColumn = (column: number) => body.map((cells) => cells[column] ?? '');

  const dayColumn = likeliestDays(
    columns.map((column) => ({
      column,
      named: HEADINGS.day.test(heading(column)),
      share: guessDays(inColumn(column), home).share,
    })),
  );
  const isNumber = (column: number) =>
    column !== dayColumn && shareOf(inColumn(column), isWeight) > MOST;
  const weightColumn =
    by((column) => isNumber(column) && HEADINGS.weight.test(heading(column))) ?? by(isNumber);
  const free = (column: number) => column !== dayColumn && column !== weightColumn;
  const ownerColumn = by((column) => free(column) && HEADINGS.owner.test(heading(column)));
  const dogColumn = by(
    (column) => free(column) && column !== ownerColumn && HEADINGS.dog.test(heading(column)),
  );
  const days = guessDays(dayColumn === null ? [] : inColumn(dayColumn), home);
  const weights = weightColumn === null ? [] : inColumn(weightColumn);
  return {
    separator,
    headed,
    dogColumn,
    ownerColumn,
    dayColumn,
    weightColumn,
    dayFormat: days.format,
    dayFormatSure: days.sure,
    unit: guessUnit(weightColumn === null ? '' : heading(weightColumn), home),
    decimalSign: guessDecimalSign(weights),
  };
}

/** A column of weights is what can be read as one in more than half of its filled cells. */
const MOST = 0.5;
/** A column whose heading does not name it is no column of days below this share (D). */
const SOME = 0.25;

interface Candidate {
  readonly column: number;
  /** The heading says that days are in it. */
  readonly named: boolean;
  /** Of its filled cells, those that can be read as a day. */
  readonly share: number;
}

/** The column with the most readable days, so that bad rows do not hide it; named ones win a tie. */
function likeliestDays(candidates: readonly Candidate[]): number | null {
  const possible = candidates.filter(({ named, share }) => share >= SOME || (named && share > 0));
  const [best] = possible.sort(
    (a, b) => b.share - a.share || Number(b.named) - Number(a.named) || a.column - b.column,
  );
  return best?.column ?? null;
}

function shareOf(cells: readonly string[], test: (cell: string) => boolean): number {
  const filled = cells.filter((cell) => cell !== '');
  return filled.length === 0 ? 0 : filled.filter(test).length / filled.length;
}

/** A first row without any number or day names the columns. */
const isHeading = (cells: readonly string[]): boolean =>
  cells.length > 0 &&
  !cells.some((cell) => isWeight(cell) || DAY_FORMATS.some((f) => readDay(cell, f).value !== null));

const isWeight = (cell: string): boolean =>
  (['kg', 'g'] as const).some((unit) =>
    DECIMAL_SIGNS.some((decimalSign) => readWeight(cell, { unit, decimalSign }).value !== null),
  );

/** The format most cells can be read in; that of the practice where several do equally well. */
function guessDays(cells: readonly string[], { dayFormat }: Home) {
  const order = [dayFormat, ...DAY_FORMATS.filter((format) => format !== dayFormat)];
  const scored = order.map((format) => ({
    format,
    share: shareOf(cells, (cell) => readDay(cell, format).value !== null),
  }));
  const best = scored.reduce((a, b) => (b.share > a.share ? b : a));
  const sure = scored.filter(({ share }) => share === best.share).length === 1;
  return { ...best, sure };
}

function guessUnit(heading: string, { weightUnit }: Home): TableWeightUnit {
  if (/\b(lbs?|pounds?)\b/i.test(heading)) return 'lb';
  if (/\bkg\b/i.test(heading)) return 'kg';
  return weightUnit;
}

function guessDecimalSign(cells: readonly string[]): DecimalSign {
  const commas = cells.filter((cell) => /\d,\d/.test(cell)).length;
  const points = cells.filter((cell) => /\d\.\d/.test(cell)).length;
  return commas > points ? ',' : '.';
}
