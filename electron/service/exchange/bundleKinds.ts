import {
  DOGS,
  OWNERS,
  SESSIONS,
  VISITS,
  WEIGHINGS,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import type { HistoryKind } from '../../contract/calls/history.ts';
import type { BundleRecordKind } from '../../contract/exchange/bundleImport.ts';
import { toRow } from '../../contract/records/columns.ts';
import { FOOD_DECISIONS, PLANS } from '../../contract/records/decided.ts';
import type { Fields } from '../../contract/records/fieldKinds.ts';
import { searchableClient, searchableDog } from '../dogs/records.ts';
import type { Schema } from '../database/schema.ts';

/** A record of any kind but history, which is named by the record it is of. */
export type NamedKind = BundleRecordKind;
export type Named<K extends NamedKind = NamedKind> = BundleRecords[K][number];

interface Kind {
  readonly table: keyof Schema;
  /** What one record is called in a sentence. */
  readonly word: string;
  /** How it is declared; null for what has columns of its own making. */
  readonly fields: Fields | null;
  /** Null for what is made once and has no history. */
  readonly history: HistoryKind | null;
}

/** What there is in a bundle, owners first: a record comes after the one around it. */
export const KINDS = {
  owners: { table: 'client', word: 'owner', fields: OWNERS, history: 'client' },
  dogs: { table: 'dog', word: 'dog', fields: DOGS, history: 'dog' },
  visits: { table: 'visit', word: 'visit', fields: VISITS, history: 'visit' },
  plans: { table: 'plan', word: 'running plan', fields: PLANS, history: null },
  sessions: {
    table: 'sessionResult',
    word: 'session result',
    fields: SESSIONS,
    history: 'session',
  },
  foodDecisions: {
    table: 'foodDecision',
    word: 'decision on the food',
    fields: FOOD_DECISIONS,
    history: null,
  },
  weighings: { table: 'weighing', word: 'weighing', fields: WEIGHINGS, history: 'weighing' },
  attachments: { table: 'attachment', word: 'attached file', fields: null, history: 'attachment' },
} as const satisfies Readonly<Record<NamedKind, Kind>>;
export const NAMED_KINDS = Object.keys(KINDS) as readonly NamedKind[];

/** What is made for each kind. */
export const byKind = <T>(make: (kind: NamedKind) => T): Record<NamedKind, T> =>
  Object.fromEntries(NAMED_KINDS.map((kind) => [kind, make(kind)])) as Record<NamedKind, T>;

/** The id of the record around one: the owner of a dog, the visit of a file, else the dog. */
export function aroundOf(kind: NamedKind, record: Named): string | null {
  if (kind === 'owners') return null;
  if (kind === 'dogs') return (record as Named<'dogs'>).clientId;
  if (kind === 'attachments') return (record as Named<'attachments'>).visitId;
  return (record as Named<'visits'>).dogId;
}

type RowIn<K extends NamedKind> = Schema[(typeof KINDS)[K]['table']];

/** A record of a bundle as a row of its table; the way back is in bundleRecords.ts. */
export function rowOf<K extends NamedKind>(kind: K, record: Named<K>): RowIn<K> {
  return rowsBy[kind](record as never) as RowIn<K>;
}

const rowsBy: { readonly [K in NamedKind]: (record: Named<K>) => RowIn<K> } = {
  owners: (owner) => ({ ...toRow(OWNERS, owner), searchText: searchableClient(owner) }),
  dogs: (dog) => ({ ...toRow(DOGS, dog), searchText: searchableDog(dog) }),
  visits: (visit) => toRow(VISITS, visit),
  plans: (plan) => toRow(PLANS, plan),
  sessions: (session) => toRow(SESSIONS, session),
  foodDecisions: (decision) => toRow(FOOD_DECISIONS, decision),
  weighings: (weighing) => toRow(WEIGHINGS, weighing),
  attachments({ mediaType: _mediaType, bytes: _bytes, thumbnail, ...row }) {
    return { ...row, thumbnail: thumbnail === null ? null : Buffer.from(thumbnail, 'base64') };
  },
};
