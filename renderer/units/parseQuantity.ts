import type { Range } from '../../core/check.ts';
import { fromBase, toBase, type Dimension, type Unit } from './dimensions.ts';
import { minutesSeconds } from './shown.ts';

/** What typed text means: a number in the base unit, nothing, or a sentence why it is refused. */
export type Reading =
  | { readonly kind: 'empty' }
  | { readonly kind: 'value'; readonly value: number; readonly unit: Unit }
  | { readonly kind: 'refused'; readonly message: string };

/** The quantity a field asks for. The range is in the base unit. */
export interface Asked extends Range {
  readonly label: string;
  readonly dimension: Dimension;
  readonly units: readonly [Unit, ...Unit[]];
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
  if (canBeReadTwice(figures, unit, asked)) {
    const digits = figures.replace(/[.,]/, '');
    return refuse(
      `${asked.label}: “${figures}” can be read two ways; write ${digits} or ${Number(decimal(figures))}.`,
    );
  }
  return bounded(decimal(figures), unit, asked);
}

/** The base value in the first unit, as text for a field; no trailing zeros. */
export function writeQuantity(value: number, units: readonly [Unit, ...Unit[]]): string {
  const unit = units[0];
  if (unit.name.startsWith('min/')) return minutesSeconds(fromBase(value, unit));
  return String(Number(fromBase(value, unit).toFixed(unit.digits + 1)));
}

/** "0.1 to 150 kg", in the practice's own unit. */
export function rangeText(asked: Asked): string {
  const unit = asked.units[0];
  const shown = (value: number) => String(Number(fromBase(value, unit).toPrecision(4)));
  return `${shown(asked.min)} to ${shown(asked.max)}${unit.name === '' ? '' : ` ${unit.name}`}`;
}

function bounded(amount: number, unit: Unit, asked: Asked): Reading {
  const value = toBase(amount, unit);
  if (value >= asked.min && value <= asked.max) return { kind: 'value', value, unit };
  return { kind: 'refused', message: `${asked.label} must be from ${rangeText(asked)}.` };
}

function canBeReadTwice(figures: string, unit: Unit, asked: Asked): boolean {
  if (!THOUSAND_OR_POINT.test(figures)) return false;
  const thousands = toBase(Number(figures.replace(/[.,]/, '')), unit);
  return thousands >= asked.min && thousands <= asked.max;
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

function example(asked: Asked): string {
  const middle = asked.dimension === 'weight' ? 28.4 : Math.max(asked.min, 1);
  return `${middle} ${asked.units[0].name}`.trim();
}
