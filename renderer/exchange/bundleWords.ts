import { grouped } from '../../core/quantityText.ts';
import type {
  BundleDone,
  BundleLook,
  BundleRecordKind,
  BundleRecordName,
  BundleState,
  StateCounts,
} from '../../electron/contract/exchange/bundleImport.ts';
import type { Shown } from '../units/shown.ts';
import { counted } from '../words.ts';

/** What the rows of the table of a bundle are called, in their order. */
export const BUNDLE_ROWS: readonly { readonly kind: BundleRecordKind; readonly label: string }[] = [
  { kind: 'owners', label: 'Owners' },
  { kind: 'dogs', label: 'Dogs' },
  { kind: 'visits', label: 'Visits' },
  { kind: 'plans', label: 'Versions of running plans' },
  { kind: 'sessions', label: 'Session results' },
  { kind: 'foodDecisions', label: 'Decisions on the food' },
  { kind: 'weighings', label: 'Weighings between visits' },
  { kind: 'attachments', label: 'Photos and letters' },
];

const HEADS: Readonly<Record<BundleRecordKind, string>> = {
  owners: 'Owner',
  dogs: 'Dog',
  visits: 'Visit',
  plans: 'Running plan',
  sessions: 'Session result',
  foodDecisions: 'Decision on the food',
  weighings: 'Weighing',
  attachments: 'File',
};

/** "Visit of 02.03.2026, Bess", "Owner Ada Sample"; what a record is called in a list. */
export function bundleRecordHead(record: BundleRecordName, shown: Shown): string {
  const { kind, name, day, dogName } = record;
  const own = name === '' ? '' : ` ${name}`;
  const when = day === null ? '' : ` of ${shown.day(day)}`;
  const dog = kind === 'owners' || kind === 'dogs' || dogName === null ? '' : `, ${dogName}`;
  return `${HEADS[kind]}${own}${when}${dog}`;
}

/** How many records of a bundle are in each state. */
export function sumsOf({ states }: BundleLook): StateCounts {
  const sum = (state: BundleState): number =>
    Object.values(states).reduce((total, counts) => total + counts[state], 0);
  return {
    new: sum('new'),
    equal: sum('equal'),
    different: sum('different'),
    erased: sum('erased'),
  };
}

export interface BundleChoices {
  different: 'ours' | 'theirs';
  erased: 'leave out' | 'bring back';
}

/** True where the import would change nothing at all. */
export function bringsNothing(look: BundleLook, { different, erased }: BundleChoices): boolean {
  const sums = sumsOf(look);
  const brought = sums.new + look.newHistory + (erased === 'bring back' ? sums.erased : 0);
  return brought + (different === 'theirs' ? sums.different : 0) === 0;
}

function replacedSentence(count: number): string {
  if (count === 0) return '';
  if (count === 1) return '1 record is now as in the bundle; what it was is in its history.';
  return `${grouped(count)} records are now as in the bundle; what they were is in their history.`;
}

/** Why there is nothing to import. */
export const idleSentence = ({ different, erased }: StateCounts): string =>
  different + erased === 0
    ? 'Everything in this bundle is here already.'
    : 'With these choices, the import would change nothing.';

const records = (count: number): string => counted(count, 'record');

/** What came of an import, in sentences. */
export function doneSentences(done: BundleDone): string {
  const added = Object.values(done.added).reduce((total, count) => total + count, 0);
  return [
    added === 0 && done.replaced > 0 ? '' : `${records(added)} came in.`,
    replacedSentence(done.replaced),
    done.kept === 0 ? '' : `${records(done.kept)} that differed stayed as before.`,
    done.leftOut === 0 ? '' : `${records(done.leftOut)} removed here earlier stayed out.`,
    done.filesMissing === 0
      ? ''
      : `${done.filesMissing === 1 ? '1 photo or letter' : `${grouped(done.filesMissing)} photos or letters`} came without the content.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

export const DIFFERENT_OPTIONS = [
  { value: 'ours', label: 'Keep what is here' },
  {
    value: 'theirs',
    label: 'Take what the bundle says',
    hint: 'What is here now stays in the history of each record.',
  },
] as const;

export const ERASED_OPTIONS = [
  { value: 'leave out', label: 'Leave them out' },
  {
    value: 'bring back',
    label: 'Bring them back',
    hint: 'They were removed on purpose. Where the owner asked for it, bring them back only with the owner’s consent.',
  },
] as const;
