import { createHash } from 'node:crypto';
import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import { contentToKeep } from '../files/content.ts';
import { unreadable } from './bundleZip.ts';

/** What a picture of a bundle becomes: the place it was taken at and the like are gone. */
export interface Cleaned {
  readonly hash: string;
  readonly bytes: number;
}

/** The pictures of a bundle that are kept otherwise than they came, by the hash they came with. */
export type CleanedContents = ReadonlyMap<string, Cleaned>;

/** Null for a content that is kept as it came. @throws Refusal (input) for a picture cut off */
export function cleanedOf(content: Buffer, name: string): Cleaned | null {
  const clean = cleaned(content, name);
  if (clean.equals(content)) return null;
  return { hash: createHash('sha256').update(clean).digest('hex'), bytes: clean.length };
}

function cleaned(content: Buffer, name: string): Buffer {
  try {
    return contentToKeep(content, { recording: true }).content;
  } catch {
    throw unreadable(`${name} in the bundle is a picture that is cut off or damaged.`);
  }
}

/** The records of a bundle, naming what is kept instead of what came. */
export function namingCleaned(records: BundleRecords, contents: CleanedContents): BundleRecords {
  if (contents.size === 0) return records;
  return {
    ...records,
    attachments: records.attachments.map((file) => ({ ...file, ...contents.get(file.hash) })),
  };
}
