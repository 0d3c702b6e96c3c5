import { weightAhead, type AheadInput, type CorridorPoint } from '../../core/index.ts';
import { dayNumber } from '../../core/day.ts';
import type { BandSeries, ChartSpec, Ink, Series } from '../chart/spec.ts';
import type { Cell, ChartColumn, ChartTable } from '../chart/table.ts';
import { fromBase, type Unit } from '../units/dimensions.ts';
import type { Shown } from '../units/shown.ts';

/** A ration whose weeks are looked at. */
export interface RationAhead {
  readonly name: string;
  readonly kcalPerDay: number;
  readonly ink: Ink;
}

export interface FoodAheadFacts {
  /** All but the ration. */
  readonly from: Omit<AheadInput, 'kcalPerDay'>;
  readonly rations: readonly RationAhead[];
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
}

/** The weeks of one ration. */
export const weeksOf = ({ from }: Pick<FoodAheadFacts, 'from'>, { kcalPerDay }: RationAhead) =>
  weightAhead({ ...from, kcalPerDay });

/** The weight of the next weeks on each ration, with its interval, the corridor and the target. */
export function aheadChart(facts: FoodAheadFacts, unit: Unit, shown: Shown): ChartSpec {
  const inUnit = (kg: number) => fromBase(kg, unit);
  const days = facts.rations.flatMap((ration) => weeksOf(facts, ration).map(({ day }) => day));
  const [first = facts.from.day, last = facts.from.day] = [days[0], days.at(-1)];
  const inSight = facts.corridor.filter(({ day }) => day >= first && day <= last);
  return {
    label: 'Weight of the next weeks on each ration',
    title: '',
    heightPx: 300,
    x: { kind: 'day', format: (day) => shown.day(day) },
    y: { unit: unit.name, span: inUnit(1) },
    series: [
      ...facts.rations.map((ration) => lineOf(facts, ration, inUnit, shown)),
      ...facts.rations.map((ration) =>
        bandOf(weeksOf(facts, ration), inUnit, {
          name: `90 % interval, ${ration.name}`,
          ink: ration.ink,
        }),
      ),
      ...(inSight.length < 2
        ? []
        : [bandOf(inSight, inUnit, { name: 'planned corridor', ink: 'soft', planned: true })]),
      ...(facts.targetKg === null
        ? []
        : [
            targetOf(inUnit(facts.targetKg), [first, last], shown.amount('weight', facts.targetKg)),
          ]),
    ],
  };
}

type InUnit = (kg: number) => number;

function lineOf(facts: FoodAheadFacts, ration: RationAhead, inUnit: InUnit, shown: Shown): Series {
  return {
    kind: 'line',
    name: `${ration.name}, ${shown.amount('energyPerDay', ration.kcalPerDay)}`,
    ink: ration.ink,
    line: 'solid',
    shape: ration.ink === 'accent' ? 'dot' : 'diamond',
    points: weeksOf(facts, ration).map(({ day, kg, low, high }) => ({
      x: dayNumber(day),
      y: inUnit(kg),
      text: `${shown.day(day)}, ${ration.name}: ${shown.amount('weight', kg)}, between ${shown.bare('weight', low)} and ${shown.amount('weight', high)}`,
    })),
  };
}

function bandOf(
  points: readonly { readonly day: string; readonly low: number; readonly high: number }[],
  inUnit: InUnit,
  more: Omit<BandSeries, 'kind' | 'points'>,
): Series {
  const drawn = points.map(({ day, low, high }) => ({
    x: dayNumber(day),
    low: inUnit(low),
    high: inUnit(high),
  }));
  return { kind: 'band', points: drawn, ...more };
}

const targetOf = (y: number, days: readonly string[], amount: string): Series => ({
  kind: 'line',
  name: `target ${amount}`,
  ink: 'ink',
  line: 'dashes',
  shape: 'none',
  points: days.map((day) => ({ x: dayNumber(day), y, text: '' })),
});

export function aheadTable(facts: FoodAheadFacts, unit: Unit): ChartTable {
  const weeks = facts.rations.map((ration) => weeksOf(facts, ration));
  const inUnit = (kg: number) => fromBase(kg, unit);
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      ...facts.rations.flatMap(({ name }): ChartColumn[] => [
        { head: name, unit: unit.name, kind: 'number', digits: unit.digits },
        { head: `90 % interval, ${name}`, unit: unit.name, kind: 'range', digits: unit.digits },
      ]),
    ],
    rows: (weeks[0] ?? []).map(({ day }, index): readonly Cell[] => [
      day,
      ...weeks.flatMap((one): Cell[] => {
        const { kg, low, high } = one[index]!;
        return [inUnit(kg), [inUnit(low), inUnit(high)]];
      }),
    ]),
  };
}
