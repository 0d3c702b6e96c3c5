import { fahrenheitFromCelsius } from '../units.ts';

/** A tenth of a degree over a whole one is the whole one: nobody's thermometer shows it. */
const TENTH_C = 0.1;

/**
 * A limit in the whole degrees an owner reads, rounded down: 18.2 °C is 18 °C, 7 °C is 44 °F.
 * @example
 * wholeLimit(18.2, 'C') // => 18
 * wholeLimit(7, 'F') // => 44
 */
export function wholeLimit(celsius: number, unit: 'C' | 'F'): number {
  return unit === 'F'
    ? Math.floor(fahrenheitFromCelsius(celsius) + TENTH_C)
    : Math.floor(celsius + TENTH_C);
}
