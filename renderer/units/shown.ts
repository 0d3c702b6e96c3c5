import type { Figure } from '../../core/figure.ts';
import type { Practice } from '../../electron/contract/records.ts';
import { wholeLimit } from '../../core/heat/wholeLimit.ts';
import { grouped, inUnits, type Saying } from '../../core/quantityText.ts';
import { fromBase, unitsOf, type Dimension, type Unit } from './dimensions.ts';

/** Narrow no-break space between a number and its unit. */
const THIN = '\u202f';

/** Turns base values into text in the practice's units. Rounds for display only. */
export interface Shown {
  /** "28.4 kg"; a dash when there is no value. */
  amount(dimension: Dimension, value: number | null | undefined, digits?: number): string;
  /** The number without its unit, for a column whose head names the unit. */
  bare(dimension: Dimension, value: number, digits?: number): string;
  unitName(dimension: Dimension): string;
  /** How far two values lie apart as they are shown: between "26.0" and "25.9" it is "0.1 kg". */
  gap(dimension: Dimension, a: number, b: number): string;
  /** What the shown values changed by, without the unit: "−0.1", "+0.3", "0.0". */
  change(dimension: Dimension, from: number, to: number): string;
  /** A core figure's value, whose unit is spelled in SI. */
  figure(value: number, unit: string): string;
  /** "680 to 920 kcal/day"; empty for a figure without a range, or with a point for one. */
  spread(figure: Pick<Figure, 'low' | 'high' | 'unit'>): string;
  /** "680 to 920 kcal/day". */
  figureRange(low: number, high: number, unit: string): string;
  temperature(celsius: number): string;
  /** A limit of temperature, in whole degrees, rounded down. */
  temperatureLimit(celsius: number): string;
  /** A calendar day in the practice's format. */
  day(iso: string | null | undefined): string;
  /** A calendar day with its weekday, "Mon 03.02.2025". */
  weekdayDay(iso: string): string;
  /** A UTC instant as day and time of this machine, "03.02.2025, 14:05". */
  moment(instant: string): string;
  /** A sentence of core's with its marked amounts and its days as the practice reads them. */
  sentence(said: string): string;
  /** A reason or paragraph of core's, as `sentence` shows it. */
  says(of: Saying): string;
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** A number and its unit stay on one line. */
const BEFORE_UNIT = /(\d) (?=(?:%|°[CF]|(?:kg|lb|g|kcal|kJ|km|mi|cm|min|h)(?![\w.])))/g;

const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g;

/** Which dimension a unit in a core figure belongs to. */
const FIGURE_DIMENSIONS: Record<string, Dimension> = {
  kg: 'weight',
  kcal: 'energy',
  'kcal/day': 'energyPerDay',
  'kcal per day': 'energyPerDay',
  'kcal/100 g': 'energyPer100g',
  'kcal per 100 g': 'energyPer100g',
  'g/day': 'grams',
  g: 'grams',
  km: 'distance',
  cm: 'length',
  'min/km': 'pace',
};

export type ShownChoices = Pick<
  Practice,
  'weightUnit' | 'energyUnit' | 'distanceUnit' | 'temperatureUnit' | 'dayFormat'
>;

/** Units of a practice that has not been set up yet. */
export const DEFAULT_CHOICES: ShownChoices = {
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
  dayFormat: 'YYYY-MM-DD',
};

export function shownWith(choices: ShownChoices): Shown {
  const number = (value: number, unit: Unit, digits = unit.digits) =>
    unit.name.startsWith('min/') && digits === unit.digits
      ? minutesSeconds(fromBase(value, unit))
      : roundText(fromBase(value, unit), digits, unit.trimmed);

  const shown: Shown = {
    amount(dimension, value, digits) {
      if (value === null || value === undefined) return '–';
      const unit = unitsOf(dimension, choices)[0];
      return joined(number(value, unit, digits), unit.name);
    },
    bare: (dimension, value, digits) => number(value, unitsOf(dimension, choices)[0], digits),
    unitName: (dimension) => unitsOf(dimension, choices)[0].name,
    gap: (dimension, a, b) => gapText(unitsOf(dimension, choices)[0], a, b),
    change: (dimension, from, to) => changeText(unitsOf(dimension, choices)[0], from, to),
    figure(value, unit) {
      const dimension = FIGURE_DIMENSIONS[unit];
      if (dimension !== undefined) {
        const shownUnit = unitsOf(dimension, choices)[0];
        const text = number(value, shownUnit);
        return joined(text, unit === 'g/day' ? 'g/day' : shownUnit.name);
      }
      if (unit === '°C') return shown.temperature(value);
      return joined(plainNumber(value), unit);
    },
    figureRange(low, high, unit) {
      const dimension = FIGURE_DIMENSIONS[unit];
      const first =
        dimension === undefined ? plainNumber(low) : number(low, unitsOf(dimension, choices)[0]);
      return `${first} to ${shown.figure(high, unit)}`;
    },
    spread({ low, high, unit }) {
      if (low === undefined || high === undefined) return '';
      const ends = [shown.figure(low, unit), shown.figure(high, unit)];
      return ends[0] === ends[1] ? '' : shown.figureRange(low, high, unit);
    },
    temperature: (celsius) => shown.amount('temperature', celsius),
    temperatureLimit: (celsius) =>
      joined(
        roundText(wholeLimit(celsius, choices.temperatureUnit), 0),
        unitsOf('temperature', choices)[0].name,
      ),
    day: (iso) => (iso === null || iso === undefined ? '–' : dayText(iso, choices.dayFormat)),
    sentence: (said) =>
      inUnits(said, choices)
        .replaceAll(ISO_DAY, (iso) => dayText(iso, choices.dayFormat))
        .replaceAll(BEFORE_UNIT, '$1\u00a0'),
    says: ({ text, said = text }) => shown.sentence(said),
    moment: (instant) => momentText(instant, choices.dayFormat),
    weekdayDay: (iso) => `${weekdayName(iso)} ${dayText(iso, choices.dayFormat)}`,
  };
  return shown;
}

const two = (n: number): string => String(n).padStart(2, '0');

export function dayText(iso: string, format: ShownChoices['dayFormat']): string {
  return format
    .replace('YYYY', iso.slice(0, 4))
    .replace('MM', iso.slice(5, 7))
    .replace('DD', iso.slice(8, 10));
}

function weekdayName(iso: string): string {
  const sundayFirst = new Date(`${iso}T00:00:00Z`).getUTCDay();
  return WEEKDAYS[(sundayFirst + 6) % 7] ?? '';
}

function roundText(value: number, digits: number, trimmed = false): string {
  const fixed = value.toFixed(digits);
  const text = trimmed ? String(Number(fixed)) : fixed;
  return Number(text) === 0 ? (0).toFixed(digits) : grouped(text.replace('-', '−'));
}

/** The difference of two values as they are shown, in the unit they are shown in. */
function apart(from: number, to: number, unit: Unit): number {
  const rounded = (value: number) => Number(fromBase(value, unit).toFixed(unit.digits));
  return Number((rounded(to) - rounded(from)).toFixed(unit.digits));
}

const gapText = (unit: Unit, a: number, b: number): string =>
  joined(Math.abs(apart(a, b, unit)).toFixed(unit.digits), unit.name);

function changeText(unit: Unit, from: number, to: number): string {
  const by = apart(from, to, unit);
  const text = roundText(by, unit.digits);
  return by > 0 ? `+${text}` : text;
}

function momentText(instant: string, format: ShownChoices['dayFormat']): string {
  const at = new Date(instant);
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${dayText(day, format)}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** Minutes as "6:30". */
export function minutesSeconds(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** A number of no known dimension: whole from 100 on, else at most three figures. */
function plainNumber(value: number): string {
  if (Number.isInteger(value)) return roundText(value, 0);
  const size = Math.abs(value);
  const digits = size >= 100 ? 0 : size >= 10 ? 1 : 2;
  return grouped(String(Number(value.toFixed(digits))).replace('-', '−'));
}

function joined(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === '%' || unit.startsWith('°') ? `${text}${THIN}${unit}` : `${text}\u00a0${unit}`;
}
