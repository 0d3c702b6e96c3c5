import type { Selectable } from 'kysely';
import type { DogDeed, HistoryAction, HistoryKind } from '../../contract/calls/history.ts';
import { MOST_DEEDS } from '../../contract/dogs/list.ts';
import type { Handlers } from '../database/context.ts';
import { readDog } from './dogs.ts';
import type { HistoryRow } from '../database/schema.ts';

type Row = Selectable<HistoryRow>;

/** What an entry kept of its record; an entry that brought one back kept nothing. */
interface Kept {
  readonly day?: string;
  readonly name?: string;
  readonly visitId?: string;
}

function deedFrom(row: Row, kept: Kept, gone: boolean): DogDeed {
  const { id, recordId, at, author, reason } = row;
  const kind = row.kind as HistoryKind;
  const action = row.action as HistoryAction;
  const of = { day: kept.day ?? null, name: kind === 'attachment' ? (kept.name ?? '') : '' };
  const visitId = kind === 'visit' ? recordId : (kept.visitId ?? null);
  return { id, kind, recordId, action, at, author, reason, ...of, visitId, gone };
}

const takesOut = ({ action }: Row): boolean => action === 'removed' || action === 'binned';

/** The deeds on one record, latest first. */
function ofRecord(rows: readonly Row[]): DogDeed[] {
  const kept = rows.map(({ before }) => JSON.parse(before) as Kept | null);
  const gone = takesOut(rows[0]!);
  return rows.map((row, index) => {
    // Where an entry kept nothing, the one nearest to it tells day and name.
    const near = kept[index] ?? kept.slice(index + 1).find(Boolean) ?? kept.find(Boolean) ?? {};
    return deedFrom(row, near, gone);
  });
}

export const deedHandlers: Handlers<'dogs/deeds'> = {
  'dogs/deeds': async ({ db }, { dogId }) => {
    await readDog(db, dogId);
    const rows = await db
      .selectFrom('history')
      .selectAll()
      .where('dogId', '=', dogId)
      .orderBy('id', 'desc')
      .limit(MOST_DEEDS)
      .execute();
    const records = Map.groupBy(rows, ({ kind, recordId }) => `${kind} ${recordId}`);
    return [...records.values()].flatMap(ofRecord).sort((a, b) => b.id - a.id);
  },
};
