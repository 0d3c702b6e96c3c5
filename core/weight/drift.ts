import type { Reason } from '../figure.ts';
import { RECORD_DAYS } from './ownEnergy.ts';
import { STABLE_DAYS, STABLE_PERCENT, type WeightTrend } from './trend.ts';

/** Weight gone over half a year without a plan that sends a dog to the vet, % (D). */
export const UNPLANNED_LOSS_PERCENT = 5;

/**
 * A slow change of weight in a dog on no plan, where the record shows one: at least 1 % in all over
 * more than 14 days, the whole 90 % interval on one side. Null otherwise. A longer record counts for
 * the vet by what its rate comes to in half a year.
 * @example weightDrift(sample.trend)?.code // => 'drift-down'
 * Source: 1 % over more than 14 days German et al. 2011 (S); 5 % to the vet our own choice (D).
 */
export function weightDrift(trend: WeightTrend): Reason | null {
  const { change, spanDays } = trend;
  if (change === null || spanDays <= STABLE_DAYS) return null;
  const shown = change.high < 0 || change.low > 0;
  if (!shown || Math.abs(change.mid) < STABLE_PERCENT) return null;
  const size = Math.abs(change.mid).toFixed(1);
  const losing = change.mid < 0;
  const inHalfAYear = -change.mid * Math.min(1, RECORD_DAYS / spanDays);
  const toVet = losing && inHalfAYear >= UNPLANNED_LOSS_PERCENT;
  const what = `Without a plan the dog ${losing ? 'lost' : 'gained'} about ${size} % in ${spanDays} days.`;
  return {
    code: toVet ? 'drift-vet' : losing ? 'drift-down' : 'drift-up',
    text: toVet ? `${what} Ask the vet for the cause.` : what,
    params: { percent: Math.round(change.mid * 10) / 10, days: spanDays },
    evidence: toVet ? 'D' : 'A',
    mark: toVet ? 'D' : 'S',
    sources: toVet ? ['ownDecision'] : ['german2011'],
  };
}
