import { fahrenheitFromCelsius, inchesFromCm, kjFromKcal, lbFromKg, milesFromKm } from './units.ts';

// A sentence of core's marks each amount a practice may read in another unit, with braces:
//
//   {920 kcal} a day · {28.0 to 30.1 kg} · {4.5 km} · {0.5 cm} · {18 °C}
//   {3 °C lower} · {1 °C off} (differences of temperatures)
//
// the number or range, one space, the unit; thousands are set apart where it is shown. What stands
// outside of braces is never converted: formulas keep the units they were published in, and so do
// the texts of old records, which mark nothing.

/** The units a practice reads. */
export interface UnitChoices {
  readonly weightUnit: 'kg' | 'lb';
  readonly energyUnit: 'kcal' | 'kJ';
  readonly distanceUnit: 'km' | 'mi';
  readonly temperatureUnit: 'C' | 'F';
}

interface Conversion {
  readonly unit: string;
  readonly digits: number;
  readonly of: (value: number) => number;
}

const UNITS = 'kg|kcal|km|cm|°C lower|°C off|°C';
const AMOUNT = new RegExp(`\\{([^{}]+) (${UNITS})\\}`, 'g');
const NUMBER = /[−-]?\d+(?:\.\d+)?/g;
/** The part of a unit that has a counterpart in other practices: the "kcal" of "kcal a day". */
const CONVERTIBLE = new RegExp(`^(?:${UNITS})(?=[ /]|$)`);

const SI: UnitChoices = {
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
};

/** A sentence, plain in SI, and as core wrote it where amounts are marked in it. */
export interface Saying {
  readonly text: string;
  readonly said?: string;
}

/** How to convert from a unit of core's; undefined where the practice reads it as it is. */
function conversionFrom(unit: string, choices: UnitChoices): Conversion | undefined {
  const fahrenheit = choices.temperatureUnit === 'F';
  if (unit === 'kg' && choices.weightUnit === 'lb') return { unit: 'lb', digits: 1, of: lbFromKg };
  if (unit === 'kcal' && choices.energyUnit === 'kJ') {
    return { unit: 'kJ', digits: 0, of: kjFromKcal };
  }
  if (unit === 'km' && choices.distanceUnit === 'mi') {
    return { unit: 'mi', digits: 1, of: milesFromKm };
  }
  // Who runs in miles measures in inches.
  if (unit === 'cm' && choices.distanceUnit === 'mi') {
    return { unit: 'in', digits: 1, of: inchesFromCm };
  }
  if (unit === '°C' && fahrenheit) return { unit: '°F', digits: 0, of: fahrenheitFromCelsius };
  if (unit.startsWith('°C ') && fahrenheit) {
    return { unit: unit.replace('C', 'F'), digits: 1, of: (celsius) => (celsius * 9) / 5 };
  }
  return undefined;
}

/**
 * A number as it is shown, with its thousands set apart: every count and amount on screen and paper
 * goes through here. Years and chip numbers stay as they
 * are, and so does what is typed, the range of a field with it: "1,200" can be read two ways.
 * @param mark by the language; a comma in English
 * @example
 * grouped(5000) // => '5,000'
 * grouped('−1234.5678') // => '−1,234.5678'
 */
export function grouped(number: number | string, mark = ','): string {
  return String(number).replace(
    /^([−-]?)(\d{4,})/,
    (_, sign: string, whole: string) => sign + whole.replace(/\B(?=(?:\d{3})+$)/g, mark),
  );
}

/**
 * A sentence of core's with its marked amounts in the units a practice reads (SI unless told),
 * rounded for display and with their thousands set apart.
 * @example
 * inUnits('Below {920 kcal} a day.', sample.units) // => 'Below 3,849 kJ a day.'
 * inUnits('Below {1020 kcal} a day.') // => 'Below 1,020 kcal a day.'
 */
export const inUnits = (said: string, choices: UnitChoices = SI): string =>
  said.replace(AMOUNT, (_, amount: string, unit: string) => {
    const conversion = conversionFrom(unit, choices);
    const shown = amount.replace(NUMBER, (number) =>
      grouped(conversion === undefined ? number : converted(number, conversion)),
    );
    return `${shown} ${conversion?.unit ?? unit}`;
  });

/**
 * What a reason or paragraph holds of a sentence: `said` only where it marks an amount.
 * @example
 * saying('Over {50 kg}.') // => { text: 'Over 50 kg.', said: 'Over {50 kg}.' }
 * saying('Senior dog.') // => { text: 'Senior dog.' }
 */
export function saying(said: string): Saying {
  const text = inUnits(said);
  return text === said ? { text } : { text, said };
}

/**
 * An amount as a sentence spells it, marked where its unit has a counterpart in other practices.
 * @example
 * marked('1 to 150', 'kg') // => '{1 to 150 kg}'
 * marked(3, 'bouts a session') // => '3 bouts a session'
 */
export const marked = (amount: number | string, unit: string): string =>
  CONVERTIBLE.test(unit)
    ? `{${amount} ${unit.replace(CONVERTIBLE, '$&}')}`
    : `${amount} ${unit}`.trimEnd();

/**
 * An amount in a unit of a core figure ("kg", "kcal/day"), in the unit the practice reads.
 * @example amountInUnits(10, 'kg', sample.units) // => { value: 22.05, unit: 'lb' }
 */
export function amountInUnits(
  value: number,
  unit: string,
  choices: UnitChoices,
): { readonly value: number; readonly unit: string } {
  const [base = '', ...per] = unit.split(/(?=\/| per )/);
  const conversion = conversionFrom(base, choices);
  if (conversion === undefined) return { value, unit };
  return { value: conversion.of(value), unit: `${conversion.unit}${per.join('')}` };
}

function converted(number: string, { of, digits }: Conversion): string {
  const value = of(Number(number.replace('−', '-')));
  // A small amount keeps a second digit: 0.2 km are not 0.1 mi.
  const kept = digits > 0 && Math.abs(value) < 1 ? digits + 1 : digits;
  return String(Number(value.toFixed(kept))).replace('-', '−');
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/**
 * Powers as paper and a terminal set them: `70 × kg^0.75` is `70 × kg⁰·⁷⁵`.
 * @example raised('70 × kg^0.75') // => '70 × kg⁰·⁷⁵'
 */
export const raised = (text: string): string =>
  text.replace(/\^(\d+)(?:\.(\d+))?/g, (_, whole: string, part?: string) =>
    (part === undefined ? whole : `${whole}·${part}`).replace(
      /\d/g,
      (digit) => RAISED[Number(digit)]!,
    ),
  );
