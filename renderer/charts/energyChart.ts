import { assess, type Assessment } from '../../core/index.ts';
import { dayNumber } from '../../core/day.ts';
import { assessInput } from '../../electron/contract/visits/assessInput.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import type { ChartSpec } from '../chart/spec.ts';
import type { ChartTable } from '../chart/table.ts';
import { fromBase, type Unit } from '../units/dimensions.ts';
import type { Shown } from '../units/shown.ts';

/** What a dog ate and needed on the day of a visit, kcal/day. */
export interface EnergyPoint {
  readonly day: string;
  readonly eaten: number;
  readonly own: { readonly mid: number; readonly low: number; readonly high: number };
  readonly formula: number;
}

/** Visits looked at, the latest ones: each is a whole assessment (D). */
const MOST_VISITS = 40;

/** On the day of each visit, what the record said then. */
export function energyCourse(file: DogFile, rules: readonly RuleChange[]): readonly EnergyPoint[] {
  const days = [...new Set(file.visits.map(({ day }) => day))].slice(-MOST_VISITS);
  return days.flatMap((day) => {
    const found: Assessment | null = assess(assessInput(file, rules, day, null));
    if (found === null) return [];
    const { own, maintenance, intakeKcal } = found;
    return [{ day, eaten: intakeKcal, own, formula: maintenance.mid }];
  });
}

/** Eaten against the own need with its interval, and the formula. */
export function energyChart(points: readonly EnergyPoint[], unit: Unit, shown: Shown): ChartSpec {
  const inUnit = (kcal: number): number => fromBase(kcal, unit);
  const amount = (kcal: number): string => shown.amount('energyPerDay', kcal);
  return {
    label: 'Energy eaten and needed',
    title: '',
    heightPx: 280,
    x: { kind: 'day', format: (day) => shown.day(day) },
    y: { unit: unit.name, span: inUnit(200) },
    series: [
      {
        kind: 'line',
        name: 'eaten',
        ink: 'ink',
        line: 'steps',
        shape: 'diamond',
        points: points.map(({ day, eaten }) => ({
          x: dayNumber(day),
          y: eaten > 0 ? inUnit(eaten) : null,
          text: `${shown.day(day)}, eaten: ${amount(eaten)}`,
        })),
      },
      {
        kind: 'line',
        name: 'own need',
        ink: 'accent',
        line: 'solid',
        shape: 'dot',
        points: points.map(({ day, own }) => ({
          x: dayNumber(day),
          y: inUnit(own.mid),
          text: `${shown.day(day)}, own need: ${amount(own.mid)}, between ${amount(own.low)} and ${amount(own.high)}`,
        })),
      },
      {
        kind: 'line',
        name: 'the formula alone',
        ink: 'soft',
        line: 'dashes',
        shape: 'none',
        points: points.map(({ day, formula }) => ({
          x: dayNumber(day),
          y: inUnit(formula),
          text: '',
        })),
      },
      {
        kind: 'band',
        name: '90 % interval of the own need',
        ink: 'accent',
        points: points.map(({ day, own }) => ({
          x: dayNumber(day),
          low: inUnit(own.low),
          high: inUnit(own.high),
        })),
      },
    ],
  };
}

export function energyTable(points: readonly EnergyPoint[], unit: Unit): ChartTable {
  const inUnit = (kcal: number): number => fromBase(kcal, unit);
  const number = { unit: unit.name, kind: 'number', digits: unit.digits } as const;
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      { head: 'Eaten', ...number },
      { head: 'Own need', ...number },
      { head: '90 % interval', ...number, kind: 'range' },
      { head: 'Formula', ...number },
    ],
    rows: points.map(({ day, eaten, own, formula }) => [
      day,
      inUnit(eaten),
      inUnit(own.mid),
      [inUnit(own.low), inUnit(own.high)],
      inUnit(formula),
    ]),
  };
}
