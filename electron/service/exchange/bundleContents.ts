import type { Context } from '../database/context.ts';
import { keepContent } from '../files/store.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import type { Work } from '../work.ts';
import { takeContents, type BundleIn } from './bundleRead.ts';
import { markImport } from './importMark.ts';

/**
 * Keeps attached files of a bundle, then runs `keep`. When either fails, the files that no record
 * names are removed again.
 */
export async function withContents<T>(
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
