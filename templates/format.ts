import { weekday, type IsoDay } from '../core/day.ts';
import { wholeLimit } from '../core/heat/wholeLimit.ts';
import { shownMinutes } from '../core/ramp/shownMinutes.ts';
import { amountInUnits, grouped, inUnits, type Saying } from '../core/quantityText.ts';
import {
  fahrenheitFromCelsius,
  inchesFromCm,
  KM_PER_MILE,
  kjFromKcal,
  lbFromKg,
  milesFromKm,
} from '../core/units.ts';

/** How a practice wants its paper written. Same words as the practice's settings. */
export interface PrintSettings {
  readonly paper: 'A4' | 'LETTER';
  readonly dayFormat: 'YYYY-MM-DD' | 'DD.MM.YYYY' | 'DD/MM/YYYY' | 'MM/DD/YYYY';
  readonly weightUnit: 'kg' | 'lb';
  readonly energyUnit: 'kcal' | 'kJ';
  readonly distanceUnit: 'km' | 'mi';
  readonly temperatureUnit: 'C' | 'F';
}

/** What a language needs to write numbers and days. */
export interface NumberWords {
  /** The decimal mark. */
  readonly decimal: string;
  /** Between thousands: a comma in English, else a space (ISO 80000-1). */
  readonly thousands: string;
  /** Monday first. */
  readonly weekdays: readonly [string, string, string, string, string, string, string];
  /** "{low} to {high}" in the language. */
  readonly range: string;
}

type Params = Readonly<Record<string, string | number>>;

/**
 * Fills the `{name}` gaps of a wording.
 * @throws RangeError when a gap has no value: an unfilled gap must never reach paper.
 */
export function fill(text: string, params: Params): string {
  return text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = params[name];
    if (value === undefined) throw new RangeError(`wording "${text}" needs a value for ${name}`);
    return String(value);
  });
}

const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g;
const NBSP = '\u00a0';

/**
 * A number and its unit with a no-break space, so that a line never ends between them; the degree
 * sign of an angle stands close (SI Brochure, 9th edition, 5.4.3).
 */
export function withUnit(text: string, unit: string): string {
  return unit === '°' ? `${text}°` : `${text}${NBSP}${unit}`;
}

/** Writes numbers, days and amounts the way one practice and one language want them. */
export interface Format {
  /** Fixed decimals. */
  number(value: number, decimals?: number): string;
  /** Up to `most` decimals, without trailing zeros. */
  trimmed(value: number, most?: number): string;
  range(low: string, high: string): string;
  day(day: IsoDay): string;
  /** With the day of the week: "Mon 01.12.2025". */
  weekdayDay(day: IsoDay): string;
  /** Day and month with the day of the week: "Mon 01.12." */
  shortDay(day: IsoDay): string;
  /** The same on two lines, for a narrow column. */
  stackedDay(day: IsoDay): string;
  weight(kg: number): string;
  weightRange(lowKg: number, highKg: number): string;
  readonly weightUnit: string;
  energy(kcal: number): string;
  energyRange(lowKcal: number, highKcal: number): string;
  grams(grams: number): string;
  minutes(minutes: number): string;
  distance(km: number): string;
  /** "6:30 min/km", or per mile. */
  pace(minPerKm: number): string;
  height(cm: number): string;
  temperature(celsius: number): string;
  /** A limit of temperature, in whole degrees, rounded down. */
  temperatureLimit(celsius: number): string;
  /** A difference of temperatures. */
  degrees(celsius: number): string;
  percent(value: number, decimals?: number): string;
  /** An amount in a unit of core's ("kcal/day"), in the unit the practice reads. */
  inUnit(value: number, unit: string): { readonly value: number; readonly unit: string };
  /** A sentence of core's with its marked amounts and its days as the practice reads them. */
  sentence(said: string): string;
  /** A reason of core's, as `sentence` writes it. */
  says(reason: Saying): string;
}

const twoDigits = (day: IsoDay) => ({
  y: day.slice(0, 4),
  m: day.slice(5, 7),
  d: day.slice(8, 10),
});

function writeDay(day: IsoDay, format: PrintSettings['dayFormat']): string {
  const { y, m, d } = twoDigits(day);
  return format.replace('YYYY', y).replace('MM', m).replace('DD', d);
}

/** Day and month only, in the order and with the marks of the practice's format. */
function writeShortDay(day: IsoDay, format: PrintSettings['dayFormat']): string {
  const { m, d } = twoDigits(day);
  const short = { 'YYYY-MM-DD': 'MM-DD', 'DD.MM.YYYY': 'DD.MM.', 'DD/MM/YYYY': 'DD/MM' } as const;
  const pattern = format === 'MM/DD/YYYY' ? 'MM/DD' : short[format];
  return pattern.replace('MM', m).replace('DD', d);
}

/** Temperatures in the unit of the practice. */
function temperatures(
  unit: 'C' | 'F',
  number: (value: number) => string,
): Pick<Format, 'temperature' | 'temperatureLimit' | 'degrees'> {
  const fahrenheit = unit === 'F';
  const text = (value: number) => withUnit(number(value), `°${unit}`);
  return {
    temperature: (celsius) => text(fahrenheit ? fahrenheitFromCelsius(celsius) : celsius),
    temperatureLimit: (celsius) => text(wholeLimit(celsius, unit)),
    degrees: (celsius) => text(fahrenheit ? (celsius * 9) / 5 : celsius),
  };
}

/** Builds the writer for a practice's settings and a language. */
export function createFormat(settings: PrintSettings, words: NumberWords): Format {
  const written = (text: string) =>
    grouped(text.replace('.', words.decimal).replace('-', '\u2212'), words.thousands);
  const number = (value: number, decimals = 0) => written(value.toFixed(decimals));
  const trimmed = (value: number, most = 1) => {
    const power = 10 ** most;
    return written(String(Math.round(value * power) / power));
  };
  const range = (low: string, high: string) => fill(words.range, { low, high });
  const pounds = settings.weightUnit === 'lb';
  const weightText = (kg: number) => number(pounds ? lbFromKg(kg) : kg, 1);
  const kilojoules = settings.energyUnit === 'kJ';
  const energyText = (kcal: number) => number(kilojoules ? kjFromKcal(kcal) : kcal);
  const miles = settings.distanceUnit === 'mi';
  const sentence = (said: string) =>
    inUnits(said, settings).replaceAll(ISO_DAY, (day) => writeDay(day, settings.dayFormat));
  return {
    number,
    trimmed,
    range,
    day: (day) => writeDay(day, settings.dayFormat),
    weekdayDay: (day) =>
      `${words.weekdays[weekday(day)]}${NBSP}${writeDay(day, settings.dayFormat)}`,
    shortDay: (day) =>
      `${words.weekdays[weekday(day)]}${NBSP}${writeShortDay(day, settings.dayFormat)}`,
    stackedDay: (day) =>
      `${words.weekdays[weekday(day)]}\n${writeShortDay(day, settings.dayFormat)}`,
    weight: (kg) => withUnit(weightText(kg), settings.weightUnit),
    weightRange: (low, high) =>
      withUnit(range(weightText(low), weightText(high)), settings.weightUnit),
    weightUnit: settings.weightUnit,
    energy: (kcal) => withUnit(energyText(kcal), settings.energyUnit),
    energyRange: (low, high) =>
      withUnit(range(energyText(low), energyText(high)), settings.energyUnit),
    grams: (grams) => withUnit(number(grams), 'g'),
    minutes: (minutes) => withUnit(trimmed(shownMinutes(minutes), 1), 'min'),
    distance: (km) => withUnit(trimmed(miles ? milesFromKm(km) : km, 1), settings.distanceUnit),
    pace: (minPerKm) => {
      const seconds = Math.round((miles ? minPerKm * KM_PER_MILE : minPerKm) * 60);
      const rest = String(seconds % 60).padStart(2, '0');
      return withUnit(`${Math.floor(seconds / 60)}:${rest}`, `min/${settings.distanceUnit}`);
    },
    height: (cm) =>
      miles ? withUnit(number(inchesFromCm(cm), 1), 'in') : withUnit(number(cm), 'cm'),
    ...temperatures(settings.temperatureUnit, number),
    percent: (value, decimals = 0) => withUnit(number(value, decimals), '%'),
    inUnit: (value, unit) => amountInUnits(value, unit, settings),
    sentence,
    says: ({ text, said = text }) => sentence(said),
  };
}

/** Keeps a text that somebody typed to one line. */
export function shorten(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
}
