import type { HandoutKind } from '../../contract/records.ts';
import type { Material } from './material.ts';

/**
 * Why a sheet would say nothing for this dog, as a sentence; null where it can be printed. A dog
 * that may not run still gets the sheet of its running plan: it tells the owner why.
 */
export function whyNoSheet(kind: HandoutKind, { assessment, file, plan }: Material): string | null {
  if (kind !== 'running-plan' || plan !== null) return null;
  if (assessment.screening.outcome !== 'ready to start') return null;
  return `${file.dog.name} has no running plan yet: make one at a visit.`;
}
