import { createHash } from 'node:crypto';
import type {
  BundleManifest,
  BundleRecords,
} from '../../../../electron/contract/exchange/bundle.ts';
import { jsonOf, type Entries } from './bundle.ts';

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;
const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** A bundle with the records of another one and so many copies of them, each with files of its own. */
export function manyOf(entries: Entries, copies: number): Entries {
  const many = new Map(entries);
  const manifest = jsonOf<BundleManifest>(entries, 'manifest.json');
  const text = entries.get('records.json')!.toString();
  const all = JSON.parse(text) as BundleRecords;
  const add = (name: string, bytes: Buffer): void => {
    many.set(name, bytes);
    manifest.files.push({ name, sha256: sha256(bytes), bytes: bytes.length });
  };
  for (let copy = 1; copy <= copies; copy++) {
    const mark = `c0b1e5${copy.toString(16).padStart(6, '0')}`;
    const records = JSON.parse(
      text.replace(UUID, (id) => id.slice(0, -12) + mark),
    ) as BundleRecords;
    for (const file of records.attachments.filter(({ name }) => name.endsWith('.pdf'))) {
      const bytes = Buffer.from(`%PDF-1.4 copy ${copy} ${'x'.repeat(20_000)}`);
      Object.assign(file, { hash: sha256(bytes), bytes: bytes.length });
      add(`files/${file.hash}.pdf`, bytes);
    }
    for (const [kind, list] of Object.entries(records)) {
      (all[kind as keyof BundleRecords] as unknown[]).push(...list);
    }
  }
  const bytes = Buffer.from(JSON.stringify(all));
  const listed = manifest.files.find(({ name }) => name === 'records.json')!;
  Object.assign(listed, { sha256: sha256(bytes), bytes: bytes.length });
  for (const [kind, list] of Object.entries(all)) manifest.counts[kind] = list.length;
  many.set('records.json', bytes);
  many.set('manifest.json', Buffer.from(JSON.stringify(manifest)));
  return many;
}
