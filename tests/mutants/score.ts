import { readFileSync } from 'node:fs';
import type { Stryker } from '@stryker-mutator/core';

type Result = Awaited<ReturnType<Stryker['runMutationTest']>>[number];

export type Mutant = Pick<
  Result,
  'fileName' | 'location' | 'mutatorName' | 'replacement' | 'status'
>;

/** A test failed, or never came to its end. */
export const detected = ({ status }: Mutant): boolean =>
  status === 'Killed' || status === 'Timeout';

/** Not those that were never tried. */
export const isCounted = (mutant: Mutant): boolean =>
  detected(mutant) || mutant.status === 'Survived' || mutant.status === 'NoCoverage';

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** `core/day.ts:12 no test fails: a < b -> a <= b` */
export function lineOf({ fileName, location: { start, end }, replacement }: Mutant): string {
  const lines = readFileSync(fileName, 'utf8')
    .split('\n')
    .slice(start.line - 1, end.line);
  const last = lines.length - 1;
  lines[last] = lines[last]!.slice(0, end.column - 1);
  lines[0] = lines[0]!.slice(start.column - 1);
  const was = oneLine(lines.join('\n'));
  return `${fileName}:${start.line} no test fails: ${was} -> ${oneLine(replacement ?? '')}`;
}

function row(name: string, mutants: readonly Mutant[]): string {
  const killed = mutants.filter(detected).length;
  const percent = mutants.length === 0 ? '–' : ((100 * killed) / mutants.length).toFixed(1);
  return `| ${name} | ${killed} of ${mutants.length} | ${percent} % |`;
}

/** A line a file, and one for all. */
export function table(mutants: readonly Mutant[]): string {
  const files = Map.groupBy(mutants, ({ fileName }) => fileName);
  const rows = [...files].map(([file, own]) => row(file, own));
  return ['| file | noticed | share |', '| - | - | - |', ...rows, row('all', mutants)].join('\n');
}
