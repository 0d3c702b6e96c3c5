import { inRange, wholeInRange } from '../check.ts';
import { addDays, type IsoDay } from '../day.ts';
import { Z90 } from '../energy/maintenance.ts';
import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';
import { predict, type Filtered, type WeightState } from './weightState.ts';

/** Weeks looked ahead: two monthly weigh-ins. Beyond that the need is hardly known (D). */
export const WEEKS_AHEAD = 8;

/** The weight to expect on a day, with the 90 % interval of the dog's own weight, kg. */
export interface WeightAhead {
  readonly day: IsoDay;
  readonly kg: number;
  readonly low: number;
  readonly high: number;
}

export interface AheadInput {
  /** Weight and need as the record shows them on `day`. */
  readonly body: WeightState;
  readonly day: IsoDay;
  /** The ration, treats included, kcal/day. */
  readonly kcalPerDay: number;
  /** Planned running beyond the counted activity, kcal/day on average. */
  readonly runningKcalPerDay?: number;
  /** Default `WEEKS_AHEAD`. */
  readonly weeks?: number;
}

/**
 * What the next weeks look like on a ration: the balance of energy week by week, from the weight and
 * the need that the record shows, the need following the body by kg^0.75 and wandering a little. The
 * first point is today. The interval is that of the weight itself; a scale adds its own error.
 * @throws RangeError for a ration outside 1–20,000 kcal/day, running outside 0–20,000, weeks outside 1–26
 * @example weightAhead({ body: sample.body, day: '2026-03-02', kcalPerDay: 787 })[2]
 *   // => { day: '2026-03-16', kg: 24.8, low: 24.38, high: 25.22 }
 */
export function weightAhead(input: AheadInput): WeightAhead[] {
  const { body, day, kcalPerDay, runningKcalPerDay = 0, weeks = WEEKS_AHEAD } = input;
  inRange('kcalPerDay', kcalPerDay, 'kcal/day', { min: 1, max: 20_000 });
  inRange('runningKcalPerDay', runningKcalPerDay, 'kcal/day', { min: 0, max: 20_000 });
  wholeInRange('weeks', weeks, 'weeks', { min: 1, max: 26 });
  const states: Filtered[] = [
    { kg: body.kg, need: body.need, kk: body.kgSd ** 2, kn: body.kgNeed, nn: body.needSd ** 2 },
  ];
  for (let week = 1; week <= weeks; week += 1) {
    states.push(predict(states[week - 1]!, 7 * (kcalPerDay - runningKcalPerDay), 7));
  }
  return states.map(({ kg, kk }, week) => {
    const half = Z90 * Math.sqrt(kk);
    return { day: addDays(day, 7 * week), kg, low: Math.max(0.1, kg - half), high: kg + half };
  });
}

/**
 * The last weight of a look ahead, as a figure that explains itself.
 * @example aheadFigure({ body: sample.body, day: '2026-03-02', kcalPerDay: 787, weeks: 2 })
 *   // => { label: 'Weight in 2 weeks', value: 24.8, unit: 'kg', … }
 */
export function aheadFigure(input: AheadInput): Figure {
  const { body, kcalPerDay, runningKcalPerDay = 0, weeks = WEEKS_AHEAD } = input;
  const { kg, low, high } = weightAhead(input).at(-1)!;
  return {
    ...figure(kg, {
      id: 'weightAhead',
      label: `Weight in ${weeks} weeks`,
      unit: 'kg',
      formula: 'weight + (food − running − need) × days / 7920, the need following kg^0.75',
      inputs: [
        { label: 'Food', value: Math.round(kcalPerDay), unit: 'kcal/day' },
        { label: 'Running', value: Math.round(runningKcalPerDay), unit: 'kcal/day' },
        { label: 'Need by the record', value: Math.round(body.need), unit: 'kcal/day' },
        { label: 'Weight by the record', value: Math.round(10 * body.kg) / 10, unit: 'kg' },
      ],
      ...from('C', 'C', 'hand2010', 'ownDecision'),
      notes: [
        'It holds while the dog is fed so; the need is that of the food log, so food that is not told is inside it.',
      ],
      rangeMeaning: '90 % interval',
    }),
    low,
    high,
  };
}
