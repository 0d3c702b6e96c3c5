import type { Origin } from './origin.ts';
import type { Saying } from './quantityText.ts';
import type { RuleId } from './rules/all.ts';

/** Where a figure or reason comes from. */
export interface Provenance extends Origin {
  /**
   * The practice's editable rules that decided it, the one that counts most first. Left out where
   * none did, and in what was kept before reasons named their rules.
   */
  readonly rules?: readonly RuleId[];
}

/** One input that went into a figure, as it is shown: "Body weight 24.0 kg". */
export interface FigureInput {
  readonly label: string;
  readonly value: number | string;
  readonly unit: string;
}

/**
 * A number that can explain itself. Built once in core; the "why this number" component on screen
 * and the footnotes of a handout both print it as it stands.
 */
export interface Figure extends Provenance {
  /** Stable key, the same on screen and in wording files, e.g. `restingEnergy`. */
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  /** The range, where there is one; `rangeMeaning` says what it is, e.g. "90 % interval". */
  readonly low?: number;
  readonly high?: number;
  readonly rangeMeaning?: string;
  /** The formula in words and symbols, e.g. `70 × kg^0.75`. */
  readonly formula: string;
  readonly inputs: readonly FigureInput[];
  /** What the reader should know before leaning on it; amounts are marked (`quantityText.ts`). */
  readonly notes: readonly string[];
}

/** A central value with its range, all in the same unit, and the figure that explains it. */
export interface Estimate {
  readonly mid: number;
  readonly low: number;
  readonly high: number;
  readonly figure: Figure;
}

/**
 * One reason behind an outcome or a proposal. `code` is stable (wording files translate it);
 * `text` is the English sentence in SI, `said` the same with its amounts marked, where it has any
 * (not in what was kept before); `change` says what would change it.
 */
export interface Reason extends Provenance, Saying {
  readonly code: string;
  readonly params: Readonly<Record<string, number | string>>;
  readonly change?: string;
}

/** What a caller supplies to `estimate`: everything but the three numbers. */
export type FigureText = Omit<Figure, 'value' | 'low' | 'high' | 'notes' | 'inputs'> & {
  readonly notes?: readonly string[];
  readonly inputs?: readonly FigureInput[];
};

/**
 * Builds a `Figure` without a range.
 * @example
 * figure(0.5, sample.figureText) // => { id: 'height', value: 0.5, unit: 'm', notes: [], … }
 */
export function figure(value: number, text: FigureText): Figure {
  return { ...text, value, notes: text.notes ?? [], inputs: text.inputs ?? [] };
}

/**
 * Builds an `Estimate` and its figure from the same three numbers.
 * @example
 * estimate(0.5, 0.4, 0.6, sample.figureText).figure // => { value: 0.5, low: 0.4, high: 0.6, … }
 */
export function estimate(mid: number, low: number, high: number, text: FigureText): Estimate {
  return { mid, low, high, figure: { ...figure(mid, text), low, high } };
}
