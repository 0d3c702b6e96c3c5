import { saying } from './quantityText.ts';

/** The accepted range of a numeric argument, shown in every error about it. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/**
 * Bad input to `core`: names the argument, its unit and the accepted range, so that a form can put
 * the message beside the right field.
 */
export class ArgumentError extends RangeError {
  readonly argument: string;
  readonly unit: string;
  readonly range: Range | undefined;
  /** The message with its amounts marked, where it holds any beside those of the argument. */
  readonly said: string | undefined;

  constructor(argument: string, unit: string, range: Range | undefined, problem: string) {
    const { text, said } = saying(problem);
    super(text);
    this.name = 'RangeError';
    this.argument = argument;
    this.unit = unit;
    this.range = range;
    this.said = said;
  }
}

/**
 * Returns `value` when it is a finite number inside `min..max` (both included).
 * @throws ArgumentError (a RangeError) that names the argument, its unit and the accepted range.
 * @example
 * inRange('bcs', 5, 'of 9', { min: 1, max: 9 }) // => 5
 * inRange('bcs', 10, 'of 9', { min: 1, max: 9 }) // throws bcs must be from 1 to 9 of 9, but is 10
 */
export function inRange(argument: string, value: number, unit: string, range: Range): number {
  if (typeof value === 'number' && value >= range.min && value <= range.max) return value;
  const spelled = unit === '' ? '' : ` ${unit}`;
  throw new ArgumentError(
    argument,
    unit,
    range,
    `${argument} must be from ${range.min} to ${range.max}${spelled}, but is ${String(value)}`,
  );
}

/**
 * As `inRange`, for a whole number.
 * @example
 * wholeInRange('weeks', 4, 'weeks', { min: 1, max: 52 }) // => 4
 * wholeInRange('weeks', 4.5, 'weeks', { min: 1, max: 52 }) // throws weeks must be a whole number
 */
export function wholeInRange(argument: string, value: number, unit: string, range: Range): number {
  inRange(argument, value, unit, range);
  if (Number.isInteger(value)) return value;
  const spelled = unit === '' ? '' : ` ${unit}`;
  throw new ArgumentError(
    argument,
    unit,
    range,
    `${argument} must be a whole number from ${range.min} to ${range.max}${spelled}, but is ${value}`,
  );
}

/**
 * As `inRange`, for one of a fixed list of words.
 * @example
 * oneOf('goal', 'lose', ['lose', 'hold']) // => 'lose'
 * oneOf('goal', 'grow', ['lose', 'hold']) // throws goal must be one of lose, hold, but is grow
 */
export function oneOf<T extends string>(argument: string, value: T, allowed: readonly T[]): T {
  if (allowed.includes(value)) return value;
  throw new ArgumentError(
    argument,
    '',
    undefined,
    `${argument} must be one of ${allowed.join(', ')}, but is ${String(value)}`,
  );
}

/**
 * Returns `value` when it is a list. @throws ArgumentError that names the argument.
 * @example listOf('weights', [30, 29.6]) // => [30, 29.6]
 */
export function listOf<T>(argument: string, value: readonly T[]): readonly T[] {
  if (Array.isArray(value)) return value;
  throw new ArgumentError(
    argument,
    '',
    undefined,
    `${argument} must be a list, but is ${String(value)}`,
  );
}

/**
 * What is known of these facts: what a record keeps as null is left out, as inputs of core have it.
 * @example known({ bcs: 5, muscle: null }) // => { bcs: 5 }
 */
export function known<T extends object>(facts: T): { [K in keyof T]?: NonNullable<T[K]> } {
  const told = Object.entries(facts).filter(([, fact]) => fact !== null && fact !== undefined);
  return Object.fromEntries(told) as { [K in keyof T]?: NonNullable<T[K]> };
}

/** Body weights the program accepts: the lightest toy puppy to the heaviest giant breed, in kg (D). */
export const WEIGHT_KG: Range = { min: 0.1, max: 150 };

/**
 * Checks a body weight in kg.
 * @example
 * weightInRange('weightKg', 30) // => 30
 * weightInRange('weightKg', 0) // throws weightKg must be from 0.1 to 150 kg, but is 0
 */
export function weightInRange(argument: string, weightKg: number): number {
  return inRange(argument, weightKg, 'kg', WEIGHT_KG);
}
