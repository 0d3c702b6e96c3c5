import { createHash } from 'node:crypto';
import {
  BUNDLE_SHOWN,
  type BundleDone,
  type BundleLook,
  type BundleRecordKind,
  type StateCounts,
  type Told,
} from '../../contract/exchange/bundleImport.ts';
import { Refusal } from '../../contract/errors.ts';
import type { Context } from '../database/context.ts';
import { hasContent, keepContent } from '../files/store.ts';
import type { Taken } from '../files/transfer.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import type { Work } from '../work.ts';
import { contradictionsIn } from './bundleCheck.ts';
import { compare, toldOf, type Comparison } from './bundleCompare.ts';
import { readHere } from './bundleHere.ts';
import { historyToKeep, unknownHistory, type Choices } from './bundleHistory.ts';
import { keepBundle, type Understood } from './bundleKeep.ts';
import { byKind, NAMED_KINDS } from './bundleKinds.ts';
import { namer } from './bundleNames.ts';
import { readBundle, takeContents, type BundleIn } from './bundleRead.ts';
import { unreadable } from './bundleZip.ts';
import { markImport } from './importMark.ts';

/** Holds a bundle against the records. The digest changes with anything that changes the outcome. */
async function understand(context: Context, work: Work, bundle: BundleIn): Promise<Understood> {
  const { records, manifest, contents } = bundle;
  const inside = contradictionsIn(records, manifest, contents, context.today());
  const here = await readHere(context.db, records);
  const found = await compare(records, here, work);
  const problems = [...inside, ...found.problems];
  const outcome = [
    bundle.digest,
    NAMED_KINDS.map((kind) => found.fresh[kind].map(({ id }) => id)),
    NAMED_KINDS.map((kind) => found.erased[kind].map(({ id }) => id)),
    found.different.map(({ theirs, changes }) => [theirs.id, changes]),
    problems,
  ];
  const digest = createHash('sha256').update(JSON.stringify(outcome)).digest('hex');
  return { bundle, here, found, problems, digest };
}

const told = <T>(all: readonly T[], most: number): Told<T> => ({
  count: all.length,
  first: all.slice(0, most),
});

/** What a bundle would bring; nothing is kept. @throws Refusal (input, cancelled) */
export async function lookAtBundle(
  context: Context,
  work: Work,
  taken: Taken,
): Promise<BundleLook> {
  const bundle = await readBundle(taken.file, work, true);
  const { found, problems, digest, here } = await understand(context, work, bundle);
  const { madeOn, appVersion, practice, missing } = bundle.manifest;
  const nameOf = namer(bundle.records);
  const erased = found.erasedTops.map(({ kind, record }) => nameOf(kind, record));
  const usual = { different: 'ours', erased: 'leave out' } as const;
  const history = historyToKeep(bundle.records, here, found, usual);
  return {
    name: taken.name,
    madeOn,
    appVersion,
    practice,
    states: statesOf(found),
    newHistory: problems.length > 0 ? 0 : (await unknownHistory(context.db, history)).length,
    files: { here: bundle.contents.size, missing: missing.length },
    different: {
      count: found.different.length,
      first: toldOf(found, bundle.records, BUNDLE_SHOWN),
    },
    erased: told(erased, BUNDLE_SHOWN.records),
    problems: told(problems, BUNDLE_SHOWN.problems),
    digest,
  };
}

function statesOf(found: Comparison): Record<BundleRecordKind, StateCounts> {
  const differing = Map.groupBy(found.different, ({ kind }) => kind);
  return byKind((kind) => ({
    new: found.fresh[kind].length,
    equal: found.equal[kind].length,
    different: differing.get(kind)?.length ?? 0,
    erased: found.erased[kind].length,
  }));
}

export interface RunBundle extends Choices {
  readonly taken: Taken;
  readonly digest: string;
}

/**
 * Keeps what a bundle brings, all of it or nothing.
 * @throws Refusal (conflict) when something else would come of it than in the look, (input) when it
 *   contradicts itself or the records, (cancelled)
 */
export async function runBundle(context: Context, work: Work, run: RunBundle): Promise<BundleDone> {
  const { file, name } = run.taken;
  const bundle = await readBundle(file, work, false);
  const understood = await understand(context, work, bundle);
  if (understood.digest !== run.digest) {
    throw new Refusal({
      kind: 'conflict',
      message:
        'The records have changed since you looked at the bundle. Look at it again; nothing was imported.',
    });
  }
  if (understood.problems.length > 0) throw unreadable(understood.problems[0]!);
  const wanted = wantedContents(context, understood, run);
  return withContents(context, work, { file, bundle, wanted }, () =>
    context.db
      .transaction()
      .execute((db) => keepBundle({ context, db, work, name }, understood, run)),
  );
}

/** The contents of every attached file that is kept, or is here with its content lost. */
function wantedContents(
  context: Context,
  { bundle, found }: Understood,
  choices: Choices,
): Set<string> {
  const back = choices.erased === 'bring back' ? found.erased.attachments : [];
  const kept = [...found.fresh.attachments, ...found.equal.attachments, ...back];
  return new Set(
    kept
      .map(({ hash }) => hash)
      .filter((hash) => bundle.contents.has(hash) && !hasContent(context.folder, hash)),
  );
}

/**
 * Keeps attached files of a bundle, then runs `keep`. When either fails, the files that no record
 * names are removed again.
 */
async function withContents<T>(
  context: Context,
  work: Work,
  { file, bundle, wanted }: { file: string; bundle: BundleIn; wanted: ReadonlySet<string> },
  keep: () => Promise<T>,
): Promise<T> {
  if (wanted.size === 0) return keep();
  const removeMark = markImport(context.folder);
  try {
    await takeContents(file, bundle, wanted, async (content, done) => {
      await work.step({ done, total: wanted.size, step: 'Copying the attached files' });
      await keepContent(context.folder, content);
    });
    return await keep();
  } catch (error) {
    removeUnusedFiles(context);
    throw error;
  } finally {
    removeMark();
  }
}
