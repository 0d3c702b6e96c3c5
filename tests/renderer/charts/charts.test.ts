import { describe, expect, it } from 'vitest';
import { addDays, leastDifference } from '../../../core/index.ts';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import { energyChart, energyCourse, energyTable } from '../../../renderer/charts/energyChart.ts';
import {
  questionnaireChart,
  totalCourses,
  totalTable,
} from '../../../renderer/charts/questionnaireChart.ts';
import { sideChart, sideCourses, sideTable } from '../../../renderer/charts/sideChart.ts';
import type { BandSeries, LineSeries } from '../../../renderer/chart/spec.ts';
import { unitsOf } from '../../../renderer/units/dimensions.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';
import { dogFile, stored } from '../support/dogFile.ts';

const shown = shownWith(DEFAULT_CHOICES);
const COUNTS = [1, 2, 12, 200];
const FIRST = '2024-01-01';

const visitAt = (index: number, facts: Partial<Visit>): Visit => {
  const day = addDays(FIRST, 7 * index);
  return {
    ...blankVisit('d', day),
    ...stored,
    id: `v${index}`,
    author: '',
    kind: 'follow-up',
    ...facts,
  };
};
const many = (count: number, facts: (index: number) => Partial<Visit>): Visit[] =>
  Array.from({ length: count }, (_, index) => visitAt(index, facts(index)));
const girth = (limb: 'leftHind' | 'rightHind', value: number) =>
  ({
    kind: 'thigh girth',
    limb,
    value,
    site: '',
    note: '',
  }) as unknown as Visit['measurements'][number];

describe('the sides over the visits', () => {
  it.each(COUNTS)('are drawn with %i points as they were measured', (count) => {
    const visits = many(count, (index) => ({
      measurements: [girth('leftHind', 38 + (index % 3)), girth('rightHind', 38)],
    }));
    const [course] = sideCourses(visits, []);
    const [left, right, band] = sideChart(course!, DEFAULT_CHOICES, shown).series as [
      LineSeries,
      LineSeries,
      BandSeries,
    ];
    expect(left.points.map(({ y }) => y)).toEqual(visits.map((_, index) => 38 + (index % 3)));
    expect(right.points.every(({ y }) => y === 38)).toBe(true);
    expect(band.points.length).toBeGreaterThanOrEqual(2);
    // The error of a girth is 1 cm by the rules: half to either side of the middle.
    expect(band.points[0]!.high - band.points[0]!.low).toBeCloseTo(1);
    expect(sideTable([course!], DEFAULT_CHOICES).rows).toHaveLength(count);
  });
});

describe('totals of owner questionnaires', () => {
  // Alves & Innes 2023, PLoS ONE 18(9):e0291881, abstract (S): -4 for the LOAD and -14 for the COI.
  it('know the published least important differences, and no other', () => {
    expect([leastDifference('LOAD'), leastDifference(' coi ')]).toEqual([4, 14]);
    expect([leastDifference('Our own'), leastDifference('constructor')]).toEqual([null, null]);
  });

  it.each(COUNTS)('are drawn with %i points, and say which change counts', (count) => {
    const totals = [20, 17, 16];
    const visits = many(count, (index) => ({
      questionnaires: [
        { name: 'LOAD', day: addDays(FIRST, 7 * index), total: totals[index] ?? 16 },
      ],
    }));
    const [course] = totalCourses(visits);
    const [line, band] = questionnaireChart(course!, shown).series as [LineSeries, BandSeries];
    expect(line.points).toHaveLength(count);
    expect(totalTable([course!]).rows).toHaveLength(count);
    const last = course!.points.at(-1)!.total;
    expect(band.points.every(({ low, high }) => low === last - 4 && high === last + 4)).toBe(true);
    if (count > 1) expect(line.points[1]!.text).toContain('no important change');
  });

  it('say better of a fall by the least difference, and worse of a rise', () => {
    const visits = many(3, (index) => ({
      questionnaires: [
        { name: 'LOAD', day: addDays(FIRST, 7 * index), total: [20, 16, 21][index]! },
      ],
    }));
    const [line] = questionnaireChart(totalCourses(visits)[0]!, shown).series as [LineSeries];
    expect(line.points[1]!.text).toContain('better, by an important difference');
    expect(line.points[2]!.text).toContain('worse, by an important difference');
  });
});

describe('energy over the visits', () => {
  it.each([1, 2, 12, 60])(
    'is drawn for the latest of %i visits, as the record said then',
    (count) => {
      const diet = [
        {
          name: 'Dry food',
          treat: false,
          kcalPer100g: 360,
          gramsPerDay: 250,
          gramsPerCup: null,
          fixedGrams: false,
          energyFrom: 'declared',
          label: null,
        },
      ] as Visit['diet'];
      const visits = many(count, () => ({ weightKg: 24, bcs: 5, diet }));
      const points = energyCourse(dogFile(visits), []);
      expect(points).toHaveLength(Math.min(count, 40));
      const unit = unitsOf('energyPerDay', DEFAULT_CHOICES)[0];
      const [eaten, own, , band] = energyChart(points, unit, shown).series as [
        LineSeries,
        LineSeries,
        LineSeries,
        BandSeries,
      ];
      expect(eaten.points.every(({ y }) => y === 900)).toBe(true);
      own.points.forEach(({ y }, index) => {
        expect(y!).toBeGreaterThan(band.points[index]!.low);
        expect(y!).toBeLessThan(band.points[index]!.high);
      });
      expect(energyTable(points, unit).rows).toHaveLength(points.length);
    },
  );
});
