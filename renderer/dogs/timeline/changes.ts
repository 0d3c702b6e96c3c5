import type { DogDeed } from '../../../electron/contract/calls/history.ts';
import type { DogFile } from '../../../electron/contract/contract.ts';
import { DEED_WORDS } from '../../history/deeds.ts';
import type { Shown } from '../../units/shown.ts';
import { KIND_WORDS } from '../../words.ts';
import { localDay, type TimelineEntry } from './entry.ts';

/** What was amended, removed, put into the bin or brought back, an entry for each deed. */
export function changeEntries(
  deeds: readonly DogDeed[],
  file: DogFile,
  shown: Shown,
): TimelineEntry[] {
  const groups = Map.groupBy(deeds, togetherAs);
  return [...groups.values()].map((group) => changeEntry(group, file, shown));
}

/** What was told anew of several outings at once stands together. */
function togetherAs({ id, kind, action, author, at, reason }: DogDeed): string {
  const alone = kind !== 'session' || reason !== '';
  return alone ? String(id) : `${kind} ${action} ${author} ${localDay(at)}`;
}

function changeEntry(group: readonly DogDeed[], file: DogFile, shown: Shown): TimelineEntry {
  const deed = group[0]!;
  const done = DEED_WORDS[deed.action].toLowerCase();
  const what = group.length === 1 ? nameOf(deed, file, shown) : `${group.length} outings`;
  return {
    key: `change ${deed.id}`,
    kind: 'change',
    day: localDay(deed.at),
    author: deed.author,
    ...(deed.action === 'made'
      ? { title: `${deed.reason}: made, not sent`, to: `/dogs/${file.dog.id}/handouts`, lines: [] }
      : {
          title: `${what} ${done}`,
          to: pathOf(deed, file),
          lines: deed.reason === '' ? [] : [`Reason: ${deed.reason}`],
        }),
  };
}

function nameOf(deed: DogDeed, { visits, dog }: DogFile, shown: Shown): string {
  const on = deed.day === null ? '' : ` of ${shown.day(deed.day)}`;
  switch (deed.kind) {
    case 'visit': {
      const visit = visits.find(({ id }) => id === deed.recordId);
      return `${visit === undefined ? 'Visit' : KIND_WORDS[visit.kind]}${on}`;
    }
    case 'weighing':
      return `Weighing${on}`;
    case 'session':
      return `Outing${on}`;
    case 'attachment':
      return `File “${deed.name}”`;
    default:
      return `Facts of ${dog.name}`;
  }
}

/** Where a deed can be read in full; what is out of the file waits in the bin. */
function pathOf({ kind, gone, visitId }: DogDeed, { dog, visits }: DogFile): string {
  const dogPath = `/dogs/${dog.id}`;
  if (kind === 'weighing') return `${dogPath}#story-weight`;
  if (kind === 'session') return `${dogPath}/plan`;
  if (kind === 'dog') return `${dogPath}/edit`;
  const there = visits.some(({ id }) => id === visitId);
  return there && (kind === 'attachment' || !gone) ? `${dogPath}/visits/${visitId}` : '/bin';
}
