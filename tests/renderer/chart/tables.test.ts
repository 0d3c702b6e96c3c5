import { describe, expect, it } from 'vitest';
import { buildRamp, weekSeries } from '../../../core/index.ts';
import { weightTable } from '../../../renderer/chart/weightTable.ts';
import { columnHead } from '../../../renderer/chart/table.ts';
import { trendScale, trendTable } from '../../../renderer/gait/trendTable.ts';
import { loadTable } from '../../../renderer/plans/loadChart.ts';
import { unitsOf } from '../../../renderer/units/dimensions.ts';
import { DEFAULT_CHOICES } from '../../../renderer/units/shown.ts';

const kg = unitsOf('weight', DEFAULT_CHOICES)[0];
const lb = unitsOf('weight', { ...DEFAULT_CHOICES, weightUnit: 'lb' })[0];

describe('the table of the weight chart', () => {
  const points = [
    { day: '2025-02-01', kg: 10, errorKg: 0.1, flag: '' },
    { day: '2025-02-01', kg: 10.2, errorKg: 0.2, flag: 'another scale' },
  ];
  const band = [
    { day: '2025-02-01', low: 9.8, mid: 10, high: 10.3 },
    { day: '2025-03-01', low: 9, mid: 9.4, high: 9.8 },
  ];

  const marks = [{ day: '2025-02-14', words: 'plan 2' }];

  it('has a line for every weighing, every day of a band and all that happened', () => {
    const table = weightTable({ points, trend: [], corridor: band, marks }, kg);
    expect(table.columns.map(columnHead)).toEqual([
      'Day',
      'Weight, kg',
      'Scale error, kg',
      'Planned corridor, kg',
      'Note',
    ]);
    expect(table.rows).toEqual([
      ['2025-02-01', 10, 0.1, [9.8, 10.3], null],
      ['2025-02-01', 10.2, 0.2, [9.8, 10.3], 'another scale'],
      ['2025-02-14', null, null, null, 'plan 2'],
      ['2025-03-01', null, null, [9, 9.8], null],
    ]);
  });

  it('is in pounds where the practice is', () => {
    const table = weightTable({ points, trend: [], corridor: [], marks: [] }, lb);
    expect(columnHead(table.columns[1]!)).toBe('Weight, lb');
    // 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959; M).
    expect(table.rows[0]![1]).toBeCloseTo(10 / 0.45359237, 9);
  });
});

describe('the table of the load', () => {
  const { weeks } = buildRamp({
    startDay: '2025-02-03',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 20 },
  });

  it('has a line for every week with what is planned, done and allowed', () => {
    const first = weeks[0]!;
    const table = loadTable(weekSeries(weeks, new Map([[first.startDay, 7]])), true);
    expect(table.rows).toHaveLength(weeks.length);
    expect(table.rows[0]!.slice(0, 5)).toEqual([
      1,
      first.startDay,
      first.runMinutes,
      7,
      first.capMinutes,
    ]);
    expect(table.rows[1]![3]).toBeNull();
    expect(table.rows.some((row) => row.at(-1) === 'easy week')).toBe(
      weeks.some(({ recovery }) => recovery),
    );
  });

  it('has no column of what was done before anything could be', () => {
    expect(loadTable(weekSeries(weeks), false).columns.map(({ head }) => head)).not.toContain(
      'Done',
    );
  });
});

describe('the table of a measurement’s course', () => {
  const trend = {
    key: 'k',
    label: 'Thigh girth, left',
    unit: 'cm',
    reference: null,
    error: null,
    points: [{ day: '2025-02-01', value: 25.4 }],
    verdict: '',
  };

  it('names the unit and keeps every value', () => {
    const table = trendTable(trend, trendScale('cm', DEFAULT_CHOICES));
    expect(columnHead(table.columns[1]!)).toBe('Thigh girth, left, cm');
    expect(table.rows).toEqual([['2025-02-01', 25.4]]);
  });

  it('leaves degrees as they are', () => {
    expect(trendScale('°', DEFAULT_CHOICES).of(42)).toBe(42);
  });
});
