import type { HandoutKind } from '../../contract/records.ts';
import type { Material } from './material.ts';
import { exercises } from './told.ts';

/**
 * Why a sheet would say nothing for this dog, as a sentence; null where it can be printed. A dog
 * that may not run still gets the sheet of its running plan: it tells the owner why.
 */
export function whyNoSheet(kind: HandoutKind, material: Material): string | null {
  const { assessment, file, state } = material;
  if (kind === 'strength-sheet' && exercises(material).length === 0) {
    return state.screening.outcome === 'vet first'
      ? `The vet sees ${file.dog.name} first: no exercises are printed before that.`
      : `No exercises have been chosen for ${file.dog.name} yet: do it at a visit.`;
  }
  // Tips for the first runs beside “no running until the vet has seen it” would unsay it.
  if (kind === 'kit-sheet' && state.screening.outcome === 'vet first') {
    return `The vet sees ${file.dog.name} first: no running tips are printed before that.`;
  }
  if (kind === 'bowl-labels') {
    return (state.ration?.ration?.items ?? []).some(({ treat }) => !treat)
      ? null
      : `No food in grams has been decided for ${file.dog.name} yet: do it at a visit.`;
  }
  if (kind === 'feeding-sheet') {
    if (state.ration !== null || assessment.food.verdict === 'refer') return null;
    return `No ration has been decided for ${file.dog.name} yet: do it at a visit.`;
  }
  if (kind !== 'running-plan' || state.programme.kind !== 'none') return null;
  if (state.mayRun !== 'ready to start') return null;
  return `${file.dog.name} has no running plan yet: make one at a visit.`;
}

/** Which of the sheets can be printed, and why the others cannot, a sentence each. */
export function printable(kinds: readonly HandoutKind[], material: Material) {
  const problems = kinds.map((kind) => whyNoSheet(kind, material));
  return {
    printed: kinds.filter((_, index) => problems[index] === null),
    leftOut: problems.filter((problem) => problem !== null),
  };
}
