import { z } from 'zod';
import { HISTORY_ACTIONS, HISTORY_KINDS } from '../calls/history.ts';
import { ATTACHMENT_KINDS, MEDIA_TYPES } from '../files/attachment.ts';
import { choice, id, line, notes, requiredLine, whole } from '../fields.ts';
import {
  keptBreaches,
  keptChangeover,
  keptKnown,
  keptProposal,
  keptRamp,
  keptRation,
  keptReview,
} from '../records/kept.ts';
import { foodSwitchInput, planRequest, sessionParts, visitParts } from '../records.ts';
import { CLIENT } from '../records/client.ts';
import { FOOD_DECISIONS, PLANS } from '../records/decided.ts';
import { DOG } from '../records/dog.ts';
import { shapeOf } from '../records/input.ts';
import { SESSION } from '../records/session.ts';
import { ARCHIVED, AUTHORED, BINNED, OF_DOG, REVISED, STORED } from '../records/stored.ts';
import { VISIT } from '../records/visit.ts';
import { ORIGIN, WEIGHING } from '../records/weighing.ts';

// The open bundle: everything kept about one owner, or all of them, in forms other programs read.

export const BUNDLE_FORMAT = 'trotwell open bundle';
export const BUNDLE_VERSION = 4;

/** The schema of the records that each form of the bundle holds. */
export const SCHEMA_OF_BUNDLE: Readonly<Record<number, number>> = { 1: 2, 2: 3, 3: 4, 4: 5 };

const instant = z.iso.datetime({ error: 'A time must be a UTC instant.' });
const binned = { binnedAt: instant.nullable() };
const author = line('Initials');
const hash = z.string().regex(/^[0-9a-f]{64}$/, { error: 'A file must be named by its SHA-256.' });

// The records as they are kept, what the service adds included.
export const OWNERS = { ...CLIENT, ...REVISED, ...BINNED };
export const DOGS = { ...DOG, ...REVISED, ...BINNED, ...ARCHIVED };
export const VISITS = { ...VISIT, ...REVISED, ...BINNED, ...AUTHORED };
export const WEIGHINGS = { ...WEIGHING, ...REVISED, ...OF_DOG, ...ORIGIN, ...AUTHORED };
export const SESSIONS = { ...SESSION, ...STORED, ...OF_DOG, ...AUTHORED };

const client = z.strictObject(shapeOf(OWNERS, {}));
const dog = z.strictObject(shapeOf(DOGS, {}));
const visit = z.strictObject(shapeOf(VISITS, visitParts()));
const weighing = z.strictObject(shapeOf(WEIGHINGS, {}));
const session = z.strictObject(shapeOf(SESSIONS, sessionParts()));
const plan = z.strictObject(
  shapeOf(PLANS, {
    request: planRequest(),
    ramp: keptRamp,
    review: keptReview.nullable(),
    keptBreaches,
  }),
);
const foodDecision = z.strictObject(
  shapeOf(FOOD_DECISIONS, {
    ration: keptRation.nullable(),
    foodSwitch: foodSwitchInput().nullable(),
    changeover: keptChangeover.nullable(),
    proposal: keptProposal,
    known: keptKnown,
  }),
);
const history = z.strictObject({
  kind: choice('Kind', HISTORY_KINDS),
  recordId: id(),
  clientId: id('The owner').nullable(),
  dogId: id('The dog').nullable(),
  action: choice('Action', HISTORY_ACTIONS),
  revision: whole('revision').nullable(),
  author,
  reason: notes('Reason'),
  /** What it was until then; null where it was not there, or was removed for good. */
  before: z.record(z.string(), z.json()).nullable(),
  at: instant,
});
const attachment = z.strictObject({
  id: id(),
  visitId: id('The visit'),
  hash,
  mediaType: z.enum(MEDIA_TYPES),
  bytes: z.int().min(1).max(20_971_520),
  kind: choice('Kind of file', ATTACHMENT_KINDS),
  name: requiredLine('Name of the file'),
  /** A small picture, base64; null where there is none. */
  thumbnail: z.base64().max(90_000).nullable(),
  author,
  createdAt: instant,
  ...binned,
});

/** `records.json`: each list in the order it was kept in. */
export const bundleRecords = z.strictObject({
  owners: z.array(client),
  dogs: z.array(dog),
  visits: z.array(visit),
  plans: z.array(plan),
  sessions: z.array(session),
  foodDecisions: z.array(foodDecision),
  weighings: z.array(weighing),
  attachments: z.array(attachment),
  history: z.array(history),
});
export type BundleRecords = z.output<typeof bundleRecords>;
export type BundleKind = keyof BundleRecords;
export const BUNDLE_KINDS = Object.keys(bundleRecords.shape) as readonly BundleKind[];

/** `manifest.json`: what the bundle is and the hash of every other file in it. */
export const bundleManifest = z.strictObject({
  format: z.literal(BUNDLE_FORMAT, { error: 'The file is not a bundle of Trotwell.' }),
  version: z
    .int()
    .min(1)
    .max(BUNDLE_VERSION, {
      error: `The bundle was written in another version of the form; this program reads up to ${BUNDLE_VERSION}.`,
    }),
  madeOn: instant,
  appVersion: z.string().max(100),
  practice: z.string().max(200),
  counts: z.record(z.string(), z.int().min(0)),
  files: z.array(
    z.strictObject({ name: z.string().max(200), sha256: hash, bytes: z.int().min(0) }),
  ),
  /** Attached files that the records name and that were not in the folder of records. */
  missing: z.array(hash),
});
export type BundleManifest = z.output<typeof bundleManifest>;

/** A bundle that was made, ready to be saved. */
export interface BundleMade {
  readonly token: string;
  readonly fileName: string;
  readonly counts: Readonly<Record<BundleKind, number>>;
  /** Attached files that were not in the folder of records, and so are not in the bundle. */
  readonly missing: number;
}
