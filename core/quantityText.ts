import { fahrenheitFromCelsius, inchesFromCm, kjFromKcal, lbFromKg, milesFromKm } from './units.ts';

// Core's sentences spell a quantity in one way only, so that it can be found again and shown in a
// practice's units, in sentences kept in old records as well:
//
//   920 kcal a day · 700 to 920 kcal · 98 ± 29 kcal/kg^0.75 · 28.0 to 30.1 kg · 4.5 km · 0.5 cm · 18 °C
//   3 °C lower (a difference of temperatures)
//
// the number or range, one space, the unit; thousands are set apart where it is shown. Every number
// carries its unit or stands in such a range. Formulas keep the units they were published in.

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

const NUMBER = '[−-]?(?:\\d{1,3}(?:,\\d{3})+|\\d+)(?:\\.\\d+)?';
const QUANTITY = new RegExp(
  `(?<![\\w.^])(${NUMBER})(?:( to |–| ± )(${NUMBER}))?([ \\u00a0])(kg|kcal|km|cm|°C lower|°C)(?![\\w^])`,
  'g',
);

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
  if (unit === '°C lower' && fahrenheit) {
    return { unit: '°F lower', digits: 1, of: (celsius) => (celsius * 9) / 5 };
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
 * A sentence of core's with every quantity in the units a practice reads, rounded for display and
 * with its thousands set apart.
 * @example inUnits('Below 920 kcal a day.', sample.units) // => 'Below 3,849 kJ a day.'
 */
export function inUnits(text: string, choices: UnitChoices): string {
  return text.replace(
    QUANTITY,
    (_, low: string, join: string | undefined, high: string, space: string, unit: string) => {
      const conversion = conversionFrom(unit, choices);
      const shown = (number: string) =>
        grouped(conversion === undefined ? number : converted(number, conversion));
      const range = join === undefined ? shown(low) : `${shown(low)}${join}${shown(high)}`;
      return `${range}${space}${conversion?.unit ?? unit}`;
    },
  );
}

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
  const value = of(Number(number.replace('−', '-').replaceAll(',', '')));
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
