import { join } from 'node:path';
import { z } from 'zod';
import { isBeyond, type JsonLimits } from '../jsonLimits.ts';
import { contentFile, copyOut } from './contents.ts';
import { damaged } from './refusals.ts';

/** The names inside the archive, in the order they stand in, and of what is unpacked. */
export const PACKED = {
  manifest: 'manifest.json',
  sum: 'manifest.json.sha256',
  readme: 'README.txt',
  records: 'trotwell.sqlite',
  contents: 'files',
} as const;

const count = z.int().min(0);
const hash = z.string().regex(/^[0-9a-f]{64}$/);

const manifestSchema = z.strictObject({
  /** When the backup was made, UTC instant. */
  madeAt: z.iso.datetime(),
  /** Version of the program that made it. */
  program: z.string().max(40),
  summary: z.strictObject({
    practiceName: z.string().max(1000),
    schemaVersion: z.int().min(1),
    owners: count,
    dogs: count,
    visits: count,
    plans: count,
    attachments: count,
    newestEntry: z.string().max(40).nullable(),
  }),
  /** The database, a whole SQLite file. */
  records: z.strictObject({ bytes: z.int().min(1), hash }),
  /** Contents of attachments, in the order they follow, named by their SHA-256. */
  contents: z.array(z.strictObject({ bytes: count, hash })),
  /** Contents the records name, but that were missing or damaged when the backup was made. */
  missing: z.array(hash),
});

export type Manifest = z.output<typeof manifestSchema>;

/** What a manifest lists, in the order it follows in, and where each part lies once it is unpacked. */
export const partsOf = ({ records, contents }: Manifest) => [
  { ...records, name: PACKED.records as string, place: PACKED.records as string },
  ...contents.map((content) => ({
    ...content,
    name: `${PACKED.contents}/${content.hash}`,
    place: contentFile(PACKED.contents, content.hash),
  })),
];

/** Copies a part out and checks it; without a folder it goes nowhere. */
export async function keepPart(
  pieces: AsyncIterable<Uint8Array>,
  { hash, place }: { readonly hash: string; readonly place: string },
  into: string | null,
): Promise<void> {
  const copied = await copyOut(pieces, into === null ? null : join(into, place));
  if (copied !== hash) throw damaged('a part of it is not what it was');
}

/** A manifest larger than this is not ours: room for some hundred thousand attachments. */
export const MOST_MANIFEST_BYTES = 64 * 1024 * 1024;

/** A list of pairs, and a group beside it (D); as many pairs as there is room for, and no more. */
const LIMITS: JsonLimits = { deepest: 8, mostParts: 3_000_000 };

/** @throws Refusal when the text is no manifest. */
export function readManifest(json: string): Manifest {
  if (isBeyond(json, LIMITS)) {
    throw damaged('its list of contents holds more, or goes deeper, than any of ours');
  }
  const parsed = manifestSchema.safeParse(tryJson(json));
  if (!parsed.success) throw damaged('its list of contents cannot be read');
  return parsed.data;
}

function tryJson(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}
