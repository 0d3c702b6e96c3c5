import type { Range } from '../../core/check.ts';
import { fromBase, toBase, type Dimension, type Unit } from './dimensions.ts';
import { minutesSeconds } from './shown.ts';

/** What typed text means: a number in the base unit, nothing, or a sentence why it is refused. */
export type Reading =
  | { readonly kind: 'empty' }
  | {
      readonly kind: 'value';
      readonly value: number;
      readonly unit: Unit;
      /** True where the text had a second reading, outside the range: the field says what it took. */
      readonly doubtful?: boolean;
    }
  | { readonly kind: 'refused'; readonly message: string };

/** The quantity a field asks for. The range is in the base unit. */
export interface Asked extends Range {
  readonly label: string;
  readonly dimension: Dimension;
  readonly units: readonly [Unit, ...Unit[]];
  /** What a plain number counts ("a day"), where its unit has no name. */
  readonly counted?: string;
  /** True where only whole numbers are taken. */
  readonly whole?: boolean;
}

const NUMBER_THEN_UNIT = /^(-?\d+(?:[.,]\d*)?|[.,]\d+)\s*(\D.*)?$/;
const MINUTES_SECONDS = /^(\d{1,3}):([0-5]\d)\s*(\D.*)?$/;
const POUNDS_OUNCES = /^(\d+)\s*(?:lb|lbs)\s+(\d+(?:[.,]\d+)?)\s*oz$/;
/** "1,200": one mark with three digits behind it, which half the world reads as one thousand. */
const THOUSAND_OR_POINT = /^[1-9]\d{0,2}[.,]\d{3}$/;
const OUNCES_PER_POUND = 16;

/**
 * Reads a quantity as people type it: point or comma, with or without a unit ("62 lb", "28,4"),
 * "6:30" for a pace, "62 lb 4 oz" for a weight. Without a unit it is the practice's own unit.
 */
export function readQuantity(typed: string, asked: Asked): Reading {
  const text = typed.trim().toLowerCase().replaceAll(' ', ' ').replaceAll('−', '-');
  if (text === '') return { kind: 'empty' };
  const refuse = (message: string): Reading => ({ kind: 'refused', message });

  const compound = asked.dimension === 'weight' ? POUNDS_OUNCES.exec(text) : null;
  if (compound !== null) {
    const pounds = Number(compound[1]) + decimal(compound[2] ?? '') / OUNCES_PER_POUND;
    return bounded(pounds, findUnit('lb', asked.units) ?? asked.units[0], asked);
  }
  const timed = asked.dimension === 'pace' ? MINUTES_SECONDS.exec(text) : null;
  const plain = timed ?? NUMBER_THEN_UNIT.exec(text);
  if (plain === null)
    return refuse(`${asked.label}: write a number, for example ${example(asked)}.`);

  const suffix = (timed === null ? plain[2] : plain[3])?.trim() ?? '';
  const unit = suffix === '' ? asked.units[0] : findUnit(suffix, asked.units);
  if (unit === undefined) {
    return refuse(`${asked.label}: the unit “${suffix}” is not known here; use ${names(asked)}.`);
  }
  if (timed !== null) return bounded(Number(timed[1]) + Number(timed[2]) / 60, unit, asked);

  const figures = plain[1] ?? '';
  return THOUSAND_OR_POINT.test(figures)
    ? oneOfTwo(figures, unit, asked)
    : bounded(decimal(figures), unit, asked);
}

/**
 * "1,200" as one thousand two hundred or as 1.2: taken where the range leaves only one of them, or
 * where it is the end of the range, which a refusal writes with its thousands apart.
 */
function oneOfTwo(figures: string, unit: Unit, asked: Asked): Reading {
  const grouped = Number(figures.replace(/[.,]/, ''));
  const split = decimal(figures);
  const readings = [split, grouped].map((amount) => bounded(amount, unit, asked));
  const [first, second] = readings.filter(({ kind }) => kind === 'value');
  if (first === undefined) return readings[0]!;
  if (second === undefined) return { ...first, doubtful: true } as Reading;
  if (second.kind === 'value' && second.value === asked.max) return { ...second, doubtful: true };
  const message = `${asked.label}: “${figures}” can be read two ways; write ${grouped} or ${split}, whichever is meant.`;
  return { kind: 'refused', message };
}

/** The base value in the first unit, as text for a field; no trailing zeros. */
export function writeQuantity(value: number, units: readonly [Unit, ...Unit[]]): string {
  const unit = units[0];
  if (unit.name.startsWith('min/')) return minutesSeconds(fromBase(value, unit));
  return String(Number(fromBase(value, unit).toFixed(unit.digits + 1)));
}

/** "0.1 to 150 kg", in the practice's own unit; whatever lies inside is accepted. */
export function rangeText(asked: Asked): string {
  const unit = asked.units[0];
  const high = inward(fromBase(asked.max, unit), unit.digits, Math.floor);
  const span = `${lowEnd(asked)} to ${high}`.replaceAll('-', '−');
  return `${span} ${unit.name || (asked.counted ?? '')}`.trimEnd();
}

/** The least that is accepted, in the practice's own unit. */
function lowEnd({ min, units: [unit] }: Asked): number {
  return inward(fromBase(min, unit), unit.digits, Math.ceil);
}

/** What arithmetic between units may add or lose of an amount. */
const NOISE = 1e-9;

/** An end of a range, rounded into it to two figures, unless it is a plain number as it stands. */
function inward(end: number, digits: number, round: (value: number) => number): number {
  const plain = Number(end.toPrecision(3));
  if (Math.abs(end - plain) <= NOISE * Math.abs(end)) return plain;
  const figures = 10 ** (Math.floor(Math.log10(Math.abs(end))) - 1);
  const step = Math.max(figures, 10 ** -digits);
  // A quotient that is whole but for noise is whole.
  const steps = end / step;
  const whole = Math.abs(steps - Math.round(steps)) < NOISE ? Math.round(steps) : round(steps);
  return Number((whole * step).toPrecision(4));
}

function bounded(amount: number, unit: Unit, asked: Asked): Reading {
  const exact = toBase(amount, unit);
  // An end of the range typed in another unit is the end itself.
  const nearest = Math.min(asked.max, Math.max(asked.min, exact));
  const value = Math.abs(nearest - exact) <= NOISE * Math.abs(exact) ? nearest : exact;
  const part = asked.whole === true && !Number.isInteger(value);
  if (!part && value >= asked.min && value <= asked.max) return { kind: 'value', value, unit };
  const kind = asked.whole === true ? 'a whole number ' : '';
  return { kind: 'refused', message: `${asked.label} must be ${kind}from ${rangeText(asked)}.` };
}

function decimal(figures: string): number {
  return Number(figures.replace(',', '.'));
}

function findUnit(spelled: string, units: readonly Unit[]): Unit | undefined {
  const compact = spelled.replace(/\.$/, '');
  return units.find((unit) => unit.spellings.includes(compact));
}

function names(asked: Asked): string {
  return asked.units
    .map((unit) => unit.name)
    .filter((name) => name !== '')
    .join(' or ');
}

/** A weight as it is often typed, where it would be taken; else the least that would. */
const WEIGHT_EXAMPLE = 28.4;

function example(asked: Asked): string {
  const unit = asked.units[0];
  const usual = asked.dimension === 'weight' ? toBase(WEIGHT_EXAMPLE, unit) : NaN;
  const fits = usual >= asked.min && usual <= asked.max;
  const amount = fits ? WEIGHT_EXAMPLE : Math.max(lowEnd(asked), 1);
  return `${amount} ${unit.name}`.trim();
}
