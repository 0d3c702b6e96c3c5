import type { Estimate, FigureText, Provenance, Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { saying } from '../quantityText.ts';
import type { FoodCase, FoodVerdict } from './foodTypes.ts';
import { ownEnergyAt } from './ownEnergy.ts';
import type { Forecast } from './foodTypes.ts';

/** A proposal before floors, foods and warnings are looked at. */
export interface FoodDraft {
  readonly verdict: FoodVerdict;
  readonly kcalPerDay: number | null;
  readonly reasons: readonly Reason[];
  /** Warnings that belong to this draft. */
  readonly warnings?: readonly Reason[];
  readonly formula?: Pick<FigureText, 'formula' | 'evidence' | 'mark' | 'sources'>;
  readonly referral?: string;
  readonly waitingFor?: string;
  readonly forecast?: Forecast;
  /** True once the rate is known well enough to weigh monthly. */
  readonly settled?: boolean;
}

export const HAND: Provenance = from('C', 'S', 'hand2010');
export const GERMAN: Provenance = from('A', 'S', 'german2011');
/** Size of a step: from memory, with one handbook case (920 to 725 kcal) read. */
export const STEP: Provenance = from('D', 'M', 'hand2010');
const RUNNING: Provenance = from('A', 'C', 'taylor1982', 'bryce2017');

export function because(
  code: string,
  said: string,
  { evidence, mark, sources }: Provenance,
  params: Reason['params'] = {},
): Reason {
  return { code, ...saying(said), params, evidence, mark, sources };
}

/** A draft that proposes nothing and sends the dog to the vet. */
export function refer(
  code: string,
  said: string,
  provenance: Provenance,
  params: Reason['params'] = {},
): FoodDraft {
  const reason = because(code, said, provenance, params);
  return { verdict: 'refer', kcalPerDay: null, reasons: [reason], referral: reason.text };
}

export interface Need {
  readonly kcal: number;
  /** The 90 % range around it. */
  readonly low: number;
  readonly high: number;
  readonly text: string;
  /** True when it comes from the dog's own record. */
  readonly own: boolean;
  readonly provenance: Provenance;
}

/** The need to feed for: the dog's own record where that tells more, at its present weight; else `formula`. */
export function needOf(input: FoodCase, formula: Estimate = input.maintenance): Need {
  const own = input.own?.informative === true ? input.own : undefined;
  const used = own ?? formula;
  const { evidence, mark, sources } = used.figure;
  const { mid, low, high } = own === undefined ? formula : ownEnergyAt(own, input.weightKg);
  return {
    kcal: mid,
    low,
    high,
    text: own === undefined ? 'maintenance energy by formula' : 'the dog’s own maintenance energy',
    own: own !== undefined,
    provenance: { evidence, mark, sources },
  };
}

/** The reason that goes with food for running; none when there is no running. */
export function runningReasons(kcalPerDay: number): Reason[] {
  const kcal = Math.round(kcalPerDay);
  if (kcal === 0) return [];
  const text =
    kcal > 0
      ? `The planned running adds about {${kcal} kcal} a day on average.`
      : `Less running is planned: about {${-kcal} kcal} a day less on average.`;
  return [because('running-food', text, RUNNING, { kcal })];
}
