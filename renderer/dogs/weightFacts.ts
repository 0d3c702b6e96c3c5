import { weightTrend, type Assessment } from '../../core/index.ts';
import { toWeighing } from '../../electron/contract/visits/assessInput.ts';
import type { DogFile } from '../../electron/contract/contract.ts';

/** What the weight record of a dog shows. */
export interface WeightFacts extends Pick<Assessment, 'trend' | 'corridor'> {
  readonly targetKg: number | null;
  /** Null before there is a target. */
  readonly projection: Assessment['projection'] | null;
  /** The weight to be held; null with another aim, and while the dog grows. */
  readonly holdKg: number | null;
}

/**
 * What is known of a dog's weight; null before the first weighing. Before the first visit there is
 * neither a target nor a corridor, but weighings between visits have a trend already.
 */
export function weightFacts({ assessment, weighings, state }: DogFile): WeightFacts | null {
  if (assessment !== null) {
    const { trend, corridor, projection, targetWeightKg, growing } = assessment;
    const targetKg = state?.targetKg ?? null;
    return {
      trend,
      corridor,
      targetKg,
      projection: targetKg === null ? null : projection,
      holdKg: state?.aim === 'hold' && !growing ? targetWeightKg : null,
    };
  }
  if (weighings.length === 0) return null;
  const trend = weightTrend(weighings.map(toWeighing));
  return { trend, corridor: [], targetKg: null, projection: null, holdKg: null };
}
