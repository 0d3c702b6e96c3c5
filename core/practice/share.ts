import { wholeInRange } from '../check.ts';
import { Z90 } from '../energy/maintenance.ts';
import { estimate, type Estimate } from '../figure.ts';
import { from } from '../origin.ts';

/**
 * The interval of a share that `count` of `of` trials stand for, by Wilson's score, without a
 * correction for continuity. It stays inside 0 to 1 and is honest for a handful of trials, where
 * the usual ± does neither. `z` is the normal deviate; 90 % where left out.
 * @throws RangeError for no trial, or more counted than there were
 * @example wilsonInterval(81, 263, 1.959964) // => { low: 0.2553, high: 0.3662 }
 * Source: Wilson 1927; method 3 of Newcombe 1998 (S).
 */
export function wilsonInterval(
  count: number,
  of: number,
  z: number = Z90,
): { readonly low: number; readonly high: number } {
  wholeInRange('of', of, '', { min: 1, max: 1_000_000 });
  wholeInRange('count', count, '', { min: 0, max: of });
  const share = count / of;
  const middle = share + (z * z) / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const whole = 1 + (z * z) / of;
  return {
    low: count === 0 ? 0 : (middle - half) / whole,
    high: count === of ? 1 : (middle + half) / whole,
  };
}

/**
 * A share of some dogs in %, with its 90 % interval; null where there are none.
 * @example
 * shareOf('Goals reached', 8, 10) // => { mid: 80, low: 54.1, high: 93.1, … }
 * shareOf('Goals reached', 0, 0) // => null
 */
export function shareOf(label: string, count: number, of: number): Estimate | null {
  if (of === 0) return null;
  const { low, high } = wilsonInterval(count, of);
  return estimate((100 * count) / of, 100 * low, 100 * high, {
    id: 'practiceShare',
    label,
    unit: '%',
    formula: '100 × counted / of; interval by Wilson’s score',
    inputs: [
      { label: 'Counted', value: count, unit: '' },
      { label: 'Of', value: of, unit: '' },
    ],
    ...from('C', 'S', 'wilson1927', 'newcombe1998'),
    notes: [
      'It says how far a share can be leaned on that rests on so few dogs, not how another practice would fare: these dogs came as they came.',
    ],
    rangeMeaning: '90 % interval',
  });
}
