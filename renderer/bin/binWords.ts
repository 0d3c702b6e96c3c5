import type {
  BinKind,
  BinLine,
  ErasureGround,
  Keeping,
  RecordCounts,
} from '../../electron/contract/keeping/bin.ts';
import type { Shown } from '../units/shown.ts';
import { counted } from '../words.ts';

/** Why records are removed, as the options of a radio group. */
export const GROUND_WORDS: Readonly<Record<ErasureGround, string>> = {
  'asked by the owner': 'The owner asked for it',
  'retention period over': 'The retention period is over',
  'entered by mistake': 'It was entered by mistake',
};

/** "the visit of 02.03.2026", "Bess"; what a record is called inside a sentence. */
export function recordName(kind: BinKind, title: string, shown: Shown): string {
  if (kind === 'visit') return `the visit of ${shown.day(title)}`;
  return kind === 'attachment' ? `the file “${title}”` : title;
}

const KIND_WORDS: Readonly<Record<BinKind, string>> = {
  client: 'Owner',
  dog: 'Dog',
  visit: 'Visit',
  attachment: 'File',
};

/** "Visit of 02.03.2026", "Dog: Bess"; what a record is called in a list. */
export function recordHead({ kind, title }: BinLine, shown: Shown): string {
  if (kind === 'visit') return `Visit of ${shown.day(title)}`;
  return `${KIND_WORDS[kind]}: ${title}`;
}

const some = (count: number, one: string, many?: string): readonly string[] =>
  count === 0 ? [] : [counted(count, one, many)];

/** What a record holds beside itself: "2 visits", "1 version of the running plan". */
export function holdings(counts: RecordCounts, itself: BinKind | null = null): readonly string[] {
  const others = (kind: BinKind, count: number): number => (itself === kind ? count - 1 : count);
  return [
    ...some(others('dog', counts.dogs), 'dog'),
    ...some(others('visit', counts.visits), 'visit'),
    ...some(counts.plans, 'version of a running plan', 'versions of running plans'),
    ...some(counts.foodDecisions, 'decision on the food', 'decisions on the food'),
    ...some(counts.sessions, 'session result'),
    ...some(counts.weighings, 'weighing between visits', 'weighings between visits'),
    ...some(others('attachment', counts.files), 'photo or letter', 'photos or letters'),
  ];
}

/** "2 visits, 1 session result and 3 weighings between visits"; empty for none. */
export function listed(parts: readonly string[]): string {
  if (parts.length < 2) return parts[0] ?? '';
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** Whether the retention period runs, in a sentence. */
export function keepingSentence(keeping: Keeping, shown: Shown): string {
  const until = shown.day(keeping.keepUntil);
  const since = shown.day(keeping.latestEntryDay);
  return keeping.insideRetention
    ? `The retention period of this practice runs until ${until}; the latest entry in the owner’s records is of ${since}.`
    : `The retention period of this practice is over; the latest entry in the owner’s records is of ${since}.`;
}
