import { ArgumentError, inRange } from '../check.ts';

/** What the label says, % as fed. */
export interface LabelAnalysis {
  readonly proteinPct: number;
  readonly fatPct: number;
  readonly fibrePct: number;
  readonly moisturePct: number;
  readonly ashPct: number;
}

export interface FoodEnergy {
  /** The four steps of the predictive equation, kcal of metabolisable energy per 100 g as fed. */
  readonly predictive: number;
  /** Modified Atwater factors 3.5 / 8.5 / 3.5, kcal per 100 g as fed. */
  readonly atwater: number;
}

const PERCENT = { min: 0, max: 100 };

/**
 * Nitrogen-free extract by difference, % as fed.
 * @example nitrogenFreeExtract(sample.label) // => 40
 */
export function nitrogenFreeExtract(label: LabelAnalysis): number {
  const { proteinPct, fatPct, fibrePct, moisturePct, ashPct } = label;
  for (const [name, value] of Object.entries({
    proteinPct,
    fatPct,
    fibrePct,
    moisturePct,
    ashPct,
  })) {
    inRange(name, value, '%', PERCENT);
  }
  const nfe = 100 - proteinPct - fatPct - fibrePct - moisturePct - ashPct;
  if (nfe >= -1e-9) return Math.max(0, nfe);
  const total = Math.round((100 - nfe) * 10) / 10;
  throw new ArgumentError(
    'moisturePct',
    '%',
    PERCENT,
    `protein, fat, fibre, moisture and ash must sum to 100 % at most, but sum to ${total} %`,
  );
}

/**
 * Energy of a dog food from its label, kcal per 100 g as fed, by both published methods.
 *
 * Predictive: GE = 5.7 P + 9.4 F + 4.1 (NFE + fibre); digestibility % = 91.2 − 1.43 × fibre % of dry
 * matter; DE = GE × digestibility; ME = DE − 1.04 P. Atwater: 3.5 P + 8.5 F + 3.5 NFE.
 *
 * @throws RangeError for shares outside 0–100 % or a sum over 100 %; moisture must be under 100 %
 * @example foodEnergy({ proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 })
 *   // => { predictive: 375.55, atwater: 358.5 }
 * Source: FEDIAF 2017 p. 118 (S); modified Atwater factors (S).
 */
export function foodEnergy(label: LabelAnalysis): FoodEnergy {
  const nfe = nitrogenFreeExtract(label);
  inRange('moisturePct', label.moisturePct, '%', { min: 0, max: 99.9 });
  const { proteinPct, fatPct, fibrePct, moisturePct } = label;
  const gross = 5.7 * proteinPct + 9.4 * fatPct + 4.1 * (nfe + fibrePct);
  const fibreOfDryMatter = (100 * fibrePct) / (100 - moisturePct);
  const digestible = gross * Math.max(0, (91.2 - 1.43 * fibreOfDryMatter) / 100);
  return {
    predictive: Math.max(0, digestible - 1.04 * proteinPct),
    atwater: 3.5 * proteinPct + 8.5 * fatPct + 3.5 * nfe,
  };
}

/** Difference above which the methods are shown beside one another, as a share. */
export const METHODS_DIFFER_FROM = 0.1;
