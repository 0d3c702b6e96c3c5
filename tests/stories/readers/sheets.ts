import { execFileSync } from 'node:child_process';
import type { Language, Practice } from '../../../electron/contract/records.ts';
import { OWNER_WORDS } from '../../../templates/index.ts';
import { enPractice } from '../../../templates/words/enPractice.ts';
import type { OwnerWords } from '../../../templates/words/words.ts';
import type { Played } from '../play.ts';
import type { Told } from '../told.ts';

// Reads the sheets as a stranger would: the PDF through poppler, the sentences by the wording of the
// sheet's language, with its gaps.

/** In the owner's language. */
const OWNERS = ['running-plan', 'feeding-sheet', 'progress-report'] as const;
/** Between professionals, in English. */
const PROFESSIONAL = ['vet-letter', 'assessment-record'] as const;
type Sheet = (typeof OWNERS)[number] | (typeof PROFESSIONAL)[number];

/** A whole number, its thousands set apart by a comma or a space. */
const WHOLE = '\\d{1,3}(?:[,\\s]\\d{3})*';

/** What stands in a gap of a wording. */
const GAPS: Readonly<Record<string, string>> = {
  energy: `(${WHOLE} (?:kcal|kJ))`,
  weight: '(\\d+[.,]\\d (?:kg|lb))',
  target: '(\\d+[.,]\\d (?:kg|lb))',
  day: '(?:\\p{L}+\\.? )?(\\d[\\d./-]+\\d)',
  minutes: '([\\d.,]+) min',
  week: '(\\d+)',
};

/** A wording with its gaps as a pattern; `dog` is known. */
function pattern(wording: string, only: string): RegExp {
  const escaped = wording
    .replace(/[.*+?^$()|[\]\\]/g, '\\$&')
    .replace('{dog}', 'Rusk')
    .replace(/\{(\w+)\}/g, (_, gap: string) => {
      const inside = GAPS[gap] ?? '(.+?)';
      return gap === only ? inside : inside.replace(/\((?!\?)/, '(?:');
    });
  return new RegExp(escaped.replaceAll(/\s/g, '\\s'), 'u');
}

/** What stands in one gap of a wording; undefined where the sheet does not say it. */
const found = (text: string, wording: string, gap: string): string | undefined =>
  pattern(wording, gap).exec(text)?.[1];

const says = (text: string, wording: string): boolean => pattern(wording, '').test(text);

/** A day as the practice writes it, as an ISO day. */
export function isoDay(written: string, format: Practice['dayFormat']): string {
  const parts = written.split(/[-./]/);
  const places = format.split(/[-./]/);
  const [y, m, d] = ['YYYY', 'MM', 'DD'].map((place) => parts[places.indexOf(place)]);
  return `${y}-${m}-${d}`;
}

interface Page {
  readonly text: string;
  readonly words: OwnerWords;
  readonly dayFormat: Practice['dayFormat'];
}

/** With a comma between thousands, as in English. */
const comma = <T extends string | undefined>(text: T): T =>
  text?.replace(/(?<=\d)\s(?=\d{3}\b)/g, ',') as T;

const wholeOf = (text: string): number => Number(text.replaceAll(/[,\s]/g, ''));

/** With a decimal point. */
const decimal = <T extends string | undefined>(text: T): T => text?.replace(',', '.') as T;

function dayIn({ text, dayFormat }: Page, wording: string): string | undefined {
  const written = found(text, wording, 'day');
  return written === undefined ? undefined : isoDay(written, dayFormat);
}

function outcomeIn({ text, words }: Page): string | undefined {
  return Object.entries(words.screening.outcomes).find(([, line]) => says(text, line))?.[0];
}

/** The weight beside a name in a table of facts. */
function weightBeside(text: string, name: string): string | undefined {
  return decimal(new RegExp(`${name}\\s(\\d+[.,]\\d (?:kg|lb))`, 'u').exec(text)?.[1]);
}

interface PrintedWeek {
  readonly number: number;
  readonly startDay: string;
  readonly minutes: number;
  readonly days: readonly string[];
}

/** The weeks of the log with the days of their outings; the sum beside each must be theirs. */
function printedWeeks({ text, words, dayFormat }: Page): PrintedWeek[] {
  const head = new RegExp(
    `${words.plan.week.replace('{week}', '(\\d+)')}(?:\\s+${words.plan.easyWeek})?\\s+(\\d[\\d./-]+\\d)\\s+·\\s+${words.plan.weekMinutes.replace('{minutes}', '([\\d.,]+) min')}`,
    'gu',
  );
  const heads = [...text.matchAll(head)];
  const weekdays = words.frame.numbers.weekdays.join('|').replaceAll('.', '\\.');
  return heads.map((match, index) => {
    const rows = text.slice(match.index + match[0].length, heads[index + 1]?.index);
    const startDay = isoDay(match[2]!, dayFormat);
    const minutes = Number(decimal(match[3]!));
    const outing = new RegExp(
      `^(?:${weekdays})\\s(\\d[\\d./-]+)\\s[^/\\n]*?([\\d.,]+)(?: / [\\d.,]+)?\\smin$`,
      'gmu',
    );
    const outings = [...rows.matchAll(outing)];
    const sum = outings.reduce((total, row) => total + Number(decimal(row[2]!)), 0);
    if (sum !== minutes) {
      throw new Error(`Week ${match[1]} prints ${minutes} min, its outings come to ${sum} min.`);
    }
    const days = outings.map((row) => dayNear(row[1]!, startDay, dayFormat));
    return { number: Number(match[1]), startDay, minutes, days };
  });
}

/** A day without its year, in the week that begins on `startDay`. */
function dayNear(written: string, startDay: string, format: Practice['dayFormat']): string {
  const year = Number(startDay.slice(0, 4));
  const [a, b] = written.split(/[-./]/).filter((part) => part !== '');
  const monthFirst = format.startsWith('MM') || format.startsWith('YYYY');
  const rest = monthFirst ? `${a}-${b}` : `${b}-${a}`;
  const day = `${year}-${rest}`;
  return day < startDay ? `${year + 1}-${rest}` : day;
}

function runningPlan(page: Page, today: string): Told {
  const { text, words } = page;
  const facts = {
    outcome: outcomeIn(page),
    weight: weightBeside(text, words.findings.weight),
    target: weightBeside(text, words.findings.target),
  };
  if (!says(text, words.plan.weekTable)) return { ...facts, week: null, nextOuting: null };
  const isWalking = says(text, words.walking.kind);
  const weeks = printedWeeks(page);
  const week = weeks.findLast(({ startDay }) => startDay <= today);
  const days = weeks.flatMap((printed) => printed.days);
  return {
    ...facts,
    programme: isWalking ? 'walking' : 'running',
    week: week?.number ?? null,
    lastWeek: weeks.at(-1)?.number ?? null,
    runMinutes: week?.minutes ?? null,
    // A plan under way names the day; one that begins is read from its table.
    nextOuting: dayIn(page, words.plan.nextOuting) ?? days.find((day) => day >= today) ?? null,
    ...(says(text, words.plan.notReached)
      ? {}
      : { goalDay: dayIn(page, isWalking ? words.walking.reachedOn : words.plan.reachedOn) }),
  };
}

function feedingSheet(page: Page): Told {
  const { text, words } = page;
  const { feeding } = words;
  return {
    kcal: comma(found(text, feeding.perDay, 'energy')),
    grams: printedGrams(text),
    nextWeighIn: dayIn(page, `${feeding.weighTitle} {day}`),
    ...(says(text, feeding.aims.hold)
      ? {}
      : { target: decimal(found(text, feeding.target, 'weight')) }),
  };
}

/** Grams a day beside each food, and those of the treats, which stand in a line of their own. */
function printedGrams(text: string): Told['grams'] {
  const foods = text.matchAll(new RegExp(`^(\\p{L}[^:;\\n]*?)\\s(${WHOLE})\\sg\\s\\d`, 'gmu'));
  const treats = text.matchAll(
    new RegExp(`(?:^|;\\s)(\\p{L}[^:;\\n]*?):\\s(${WHOLE})\\sg(?=;|$)`, 'gmu'),
  );
  const rows = [...foods, ...treats].map(([, name, grams]) => [name, wholeOf(grams!)] as const);
  return rows.length === 0 ? null : Object.fromEntries(rows);
}

function progressReport(page: Page): Told {
  const { text, words } = page;
  const { decisions, food } = words.progress;
  const said = Object.entries(decisions).find(([, line]) => says(text, line))?.[0];
  const fed = [food.start, food.change, food.keep, food.wait].map((line) =>
    found(text, line, 'energy'),
  );
  return {
    ...(said === undefined ? {} : { programme: DECIDED[said as keyof typeof decisions] }),
    kcal: comma(fed.find((energy) => energy !== undefined)),
    nextWeighIn: dayIn(page, words.progress.weighOn),
  };
}

/** The programme behind a sentence on the plan. */
const DECIDED = {
  progress: 'running',
  walks: 'walking',
  begin: 'running',
  lower: 'running',
  hold: 'running',
  back: 'running',
  stop: 'held',
  walk: 'held',
  finished: 'finished',
} as const satisfies Record<keyof OwnerWords['progress']['decisions'], Told['programme']>;

/** What the letter's line on a walking programme begins with. */
const WALKS = enPractice.letter.walks.split(':')[0]!;

const letterOutcome = (
  text: string,
  outcomes: Readonly<Record<string, string>> = enPractice.letter.outcomes,
): string | undefined => Object.entries(outcomes).find(([, line]) => says(text, line))?.[0];

function vetLetter({ text, words }: Page): Told {
  const { letter } = enPractice;
  const aim = Object.values(letter.aims).find((name) =>
    says(text, letter.food.replace('{aim}', name)),
  );
  return {
    outcome: letterOutcome(text),
    weight: weightBeside(text, words.findings.weight),
    target: weightBeside(text, words.findings.target),
    kcal: aim === undefined ? null : found(text, letter.food.replace('{aim}', aim), 'energy'),
    ...(says(text, letter.noPlan)
      ? { nextOuting: null }
      : { programme: says(text, WALKS) ? ('walking' as const) : ('running' as const) }),
  };
}

/** The record keeps what was decided at its own visit; an earlier ration is not named in it. */
function assessmentRecord({ text, words }: Page): Told {
  const { letter, record } = enPractice;
  const kcal = found(text, record.foodDecision, 'energy');
  return {
    outcome: letterOutcome(text, { ...letter.outcomes, 'vet first': record.vetFirst }),
    weight: weightBeside(text, words.findings.weight),
    target: weightBeside(text, words.findings.target),
    ...(kcal === undefined ? {} : { kcal }),
  };
}

function read(sheet: Sheet, page: Page, today: string): Told {
  if (sheet === 'running-plan') return runningPlan(page, today);
  if (sheet === 'feeding-sheet') return feedingSheet(page);
  if (sheet === 'progress-report') return progressReport(page);
  return sheet === 'vet-letter' ? vetLetter(page) : assessmentRecord(page);
}

/** What each of the owner's sheets says in a language; a sheet that is refused says nothing. */
export function readOwnersSheets(played: Played, language: Language): Promise<Map<string, Told>> {
  const { plan, feeding, progress } = OWNER_WORDS[language];
  const kinds = [plan.kind, feeding.kind, progress.kind];
  return readSheets(played, language, OWNERS, kinds);
}

export function readProfessionalSheets(played: Played): Promise<Map<string, Told>> {
  const { letter, record } = enPractice;
  return readSheets(played, 'en', PROFESSIONAL, [letter.kind, record.kind]);
}

async function readSheets(
  { desk, file, practice }: Played,
  language: Language,
  sheets: readonly Sheet[],
  kinds: readonly string[],
): Promise<Map<string, Told>> {
  const { base64 } = await desk.ok('handouts/bundle', {
    kinds: [...sheets],
    dogId: file.dog.id,
    paper: null,
    language,
  });
  const pages = textOf(base64).split('\f');
  const said = new Map<string, Told>();
  for (const [index, sheet] of sheets.entries()) {
    const own = pages.filter((text) => text.includes(`Rusk · ${kinds[index]} · `));
    if (own.length === 0) continue;
    const words = OWNER_WORDS[language];
    const page = { text: own.join('\n'), words, dayFormat: practice.dayFormat };
    said.set(`${sheet} in ${language}`, read(sheet, page, file.state!.day));
  }
  return said;
}

/** The text of a PDF in the order it was written, its spaces made alike. */
function textOf(base64: string): string {
  const text = execFileSync('pdftotext', ['-raw', '-', '-'], {
    input: Buffer.from(base64, 'base64'),
    encoding: 'utf8',
  });
  return text.replace(/[^\S\f\n]+/g, ' ').replace(/ ?\n ?/g, '\n');
}
