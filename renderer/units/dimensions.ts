import {
  celsiusFromFahrenheit,
  CM_PER_INCH,
  GRAMS_PER_OUNCE,
  KG_PER_LB,
  KJ_PER_KCAL,
  KM_PER_MILE,
} from '../../core/units.ts';
import type { Practice } from '../../electron/contract/records.ts';

/** What kind of quantity a field holds; each is kept in one SI-like base unit. */
export type Dimension =
  | 'weight'
  | 'scaleStep'
  | 'length'
  | 'grams'
  | 'energy'
  | 'energyPer100g'
  | 'energyPerDay'
  | 'distance'
  | 'climb'
  | 'pace'
  | 'minutes'
  | 'months'
  | 'percent'
  | 'temperature'
  | 'temperatureShift'
  | 'degrees'
  | 'girth'
  | 'count';

/** A unit that may be typed: its spellings (lower case) and how many base units one of it is. */
export interface Unit {
  readonly name: string;
  readonly spellings: readonly string[];
  readonly factor: number;
  /** Where its zero lies, in base units; 0 for all but temperatures. */
  readonly zero: number;
  /** Digits behind the point when shown. */
  readonly digits: number;
  /** Shown without zeros at its end: a scale counts by 0.1 kg, whatever smaller ones can be typed. */
  readonly trimmed?: true;
}

const unit = (name: string, factor: number, digits: number, ...spellings: string[]): Unit => ({
  name,
  factor,
  zero: 0,
  digits,
  spellings: [name.toLowerCase(), ...spellings],
});

const KG = unit('kg', 1, 1, 'kgs', 'kilo', 'kilos');
const LB = unit('lb', KG_PER_LB, 1, 'lbs', 'pound', 'pounds');
const GRAM_OF_KG = unit('g', 0.001, 0);
const OUNCE_OF_KG = unit('oz', GRAMS_PER_OUNCE / 1000, 1);

const KG_STEP: Unit = { ...KG, digits: 3, trimmed: true };
const POUND_STEP: Unit = { ...LB, digits: 2, trimmed: true };

/** The step a scale is taken to count by until it is told, kg: a tenth, or two of a pound (D). */
export const firstStepKg = (weightUnit: Practice['weightUnit']): number =>
  weightUnit === 'lb' ? 0.2 * KG_PER_LB : 0.1;

const CM = unit('cm', 1, 0);
const METRE = unit('m', 100, 2);
const MM = unit('mm', 0.1, 0);
const INCH = unit('in', CM_PER_INCH, 1, '"', 'inch', 'inches');

const FIXED: Record<
  Exclude<
    Dimension,
    | 'weight'
    | 'scaleStep'
    | 'length'
    | 'girth'
    | 'energy'
    | 'energyPer100g'
    | 'energyPerDay'
    | 'distance'
    | 'pace'
    | 'temperature'
    | 'temperatureShift'
  >,
  readonly [Unit, ...Unit[]]
> = {
  grams: [unit('g', 1, 0, 'gram', 'grams'), unit('oz', GRAMS_PER_OUNCE, 1), unit('kg', 1000, 2)],
  climb: [unit('m', 1, 0), unit('ft', 0.3048, 0, 'feet')],
  minutes: [unit('min', 1, 1, 'minutes', 'm'), unit('h', 60, 2, 'hour', 'hours')],
  months: [unit('months', 1, 0, 'month', 'mo'), unit('years', 12, 1, 'year', 'y', 'yr')],
  percent: [unit('%', 1, 1, 'percent')],
  degrees: [unit('°', 1, 0, 'deg', 'degrees')],
  count: [unit('', 1, 0)],
};

const CELSIUS = unit('°C', 1, 0, 'c');
/** A difference of temperatures: five ninths of a degree each, and no zero to move. */
const FAHRENHEIT_SHIFT = unit('°F', 5 / 9, 1, 'f');
const FAHRENHEIT: Unit = {
  ...unit('°F', 5 / 9, 0, 'f'),
  zero: celsiusFromFahrenheit(0),
};

type UnitChoices = Pick<Practice, 'weightUnit' | 'energyUnit' | 'distanceUnit' | 'temperatureUnit'>;

/** An amount of a unit in the base unit. */
export const toBase = (amount: number, { factor, zero }: Unit): number => amount * factor + zero;

/** A base value as an amount of a unit. */
export const fromBase = (value: number, { factor, zero }: Unit): number => (value - zero) / factor;

/** The units that may be typed for a quantity, the practice's own first. */
export function unitsOf(dimension: Dimension, choices: UnitChoices): readonly [Unit, ...Unit[]] {
  const pounds = choices.weightUnit === 'lb';
  const kilojoule = choices.energyUnit === 'kJ';
  const miles = choices.distanceUnit === 'mi';
  switch (dimension) {
    case 'weight':
      return pounds ? [LB, KG, OUNCE_OF_KG, GRAM_OF_KG] : [KG, LB, GRAM_OF_KG, OUNCE_OF_KG];
    case 'scaleStep':
      return pounds
        ? [POUND_STEP, KG_STEP, GRAM_OF_KG, OUNCE_OF_KG]
        : [KG_STEP, GRAM_OF_KG, POUND_STEP, OUNCE_OF_KG];
    case 'energy':
      return energyUnits('', kilojoule);
    case 'energyPer100g':
      return energyUnits('/100 g', kilojoule);
    case 'energyPerDay':
      return energyUnits('/day', kilojoule);
    case 'distance': {
      const km = unit('km', 1, 1);
      const mi = unit('mi', KM_PER_MILE, 1, 'mile', 'miles');
      return miles ? [mi, km] : [km, mi, unit('m', 0.001, 0)];
    }
    // Who runs in miles measures in inches.
    case 'length':
      return miles ? [INCH, CM, METRE] : [CM, INCH, METRE];
    case 'girth':
      return miles
        ? [{ ...INCH, digits: 2 }, { ...CM, digits: 1 }, MM]
        : [{ ...CM, digits: 1 }, INCH, MM];
    case 'pace': {
      const perKm = unit('min/km', 1, 2, 'min per km', '/km');
      const perMile = unit('min/mi', 1 / KM_PER_MILE, 2, 'min per mi', 'min/mile', '/mi');
      return miles ? [perMile, perKm] : [perKm, perMile];
    }
    case 'temperature':
      return choices.temperatureUnit === 'F' ? [FAHRENHEIT, CELSIUS] : [CELSIUS, FAHRENHEIT];
    case 'temperatureShift':
      return choices.temperatureUnit === 'F'
        ? [FAHRENHEIT_SHIFT, CELSIUS]
        : [CELSIUS, FAHRENHEIT_SHIFT];
    default:
      return FIXED[dimension];
  }
}

function energyUnits(per: string, kilojouleFirst: boolean): readonly [Unit, ...Unit[]] {
  const kcal = unit(`kcal${per}`, 1, 0, 'kcal', 'cal');
  const kj = unit(`kJ${per}`, 1 / KJ_PER_KCAL, 0, 'kj');
  return kilojouleFirst ? [kj, kcal] : [kcal, kj];
}
