import { mount } from '@vue/test-utils';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { blankVisit } from '../../../electron/contract/blank.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import { columnHead } from '../../../renderer/chart/table.ts';
import { changedWords, lamenessCourse, stretches } from '../../../renderer/gait/lamenessCourse.ts';
import { dayX, gradeY, lamenessLayout } from '../../../renderer/gait/lamenessLayout.ts';
import LamenessPart from '../../../renderer/gait/LamenessPart.vue';
import { lamenessTable } from '../../../renderer/gait/lamenessTable.ts';
import { LIMBS } from '../../../renderer/words.ts';
import { stored } from '../support/dogFile.ts';
import { appPlugins } from '../support/plugins.ts';

const NONE = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const visit = (day: string, facts: Partial<Visit> = {}): Visit => ({
  ...blankVisit('d', day),
  ...stored,
  id: day,
  author: '',
  lamenessWalk: NONE,
  lamenessTrot: NONE,
  ...facts,
});
/** Seen at trot alone; in May the dog was only weighed, in June the left fore was not looked at. */
const VISITS = [
  visit('2026-03-01', { weightKg: 26 }),
  visit('2026-04-01', { lamenessTrot: { ...SOUND, leftHind: 2 } }),
  visit('2026-05-01', { weightKg: 25 }),
  visit('2026-06-01', { lamenessTrot: { ...SOUND, leftFore: null, leftHind: 1 } }),
  visit('2026-07-01', { lamenessTrot: { ...SOUND, leftHind: 1, rightHind: 1 } }),
  visit('2026-08-01'),
];

afterEach(() => {
  document.body.innerHTML = '';
});

describe('the course of lameness', () => {
  it('is none before two visits had grades', () => {
    expect(lamenessCourse([])).toBeNull();
    expect(lamenessCourse(VISITS.slice(0, 3))).toBeNull();
    expect(lamenessCourse(VISITS.slice(0, 4))).not.toBeNull();
  });

  it('keeps visits without grades as gaps, never as a sound limb', () => {
    const course = lamenessCourse(VISITS)!;
    expect(course.days).toEqual(['2026-04-01', '2026-05-01', '2026-06-01', '2026-07-01']);
    const of = (limb: string) => course.limbs.find((it) => it.limb === limb)!.grades;
    expect(of('leftFore')).toEqual([0, null, null, 0]);
    expect(of('leftHind')).toEqual([2, null, 1, 1]);
    expect(stretches(of('leftFore'))).toEqual([[0], [3]]);
    expect(stretches(of('leftHind'))).toEqual([[0], [2, 3]]);
  });

  it('leaves out gaits at which no limb was ever looked at', () => {
    expect(lamenessCourse(VISITS)!.limbs.map(({ gait }) => gait)).toEqual(Array(4).fill('trot'));
  });

  it('tells what is other than the graded visit before, over one without grades', () => {
    const { changes } = lamenessCourse(VISITS)!;
    expect(changes.map(changedWords)).toEqual([
      [],
      [],
      [
        'Left fore at trot: not looked at this time, grade 0 before',
        'Left hind at trot: better, grade 2 to 1',
      ],
      [
        'Left fore at trot: not looked at the time before, grade 0',
        'Right hind at trot: worse, grade 0 to 1',
      ],
    ]);
  });

  it('joins two visits by a line exactly where both were graded and none lies between', () => {
    const grades = fc.array(fc.constantFrom(null, 0, 1, 5), { maxLength: 12 });
    fc.assert(
      fc.property(grades, (list) => {
        const joined = stretches(list).flatMap((run) => run.slice(1));
        const expected = list.flatMap((grade, index) =>
          index > 0 && grade !== null && list[index - 1] !== null ? [index] : [],
        );
        expect(joined).toEqual(expected);
        const drawn = stretches(list).flat();
        expect(drawn).toEqual(list.flatMap((grade, index) => (grade === null ? [] : [index])));
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe('the table of lameness', () => {
  it('has a line a visit, a column a limb, and what changed', () => {
    const table = lamenessTable(lamenessCourse(VISITS)!);
    expect(table.columns.map(columnHead)).toEqual([
      'Day',
      'Left fore at trot, of 5',
      'Right fore at trot, of 5',
      'Left hind at trot, of 5',
      'Right hind at trot, of 5',
      'Change',
    ]);
    expect(table.rows[0]).toEqual(['2026-04-01', 0, 0, 2, 0, '']);
    expect(table.rows[1]).toEqual(['2026-05-01', null, null, null, null, '']);
    expect(table.rows[2]).toEqual(['2026-06-01', null, 0, 1, 0, 'Left hind at trot better']);
  });
});

describe('the layout of the four limbs', () => {
  it('stands left beside right and fore before hind, inside the drawing at every width', () => {
    const days = ['2026-01-01', '2026-02-01', '2026-07-01'];
    for (let width = 280; width <= 1400; width += 20) {
      const { panels, height } = lamenessLayout(width);
      expect(panels.map(({ limb }) => limb)).toEqual(LIMBS);
      for (const panel of panels) {
        expect(panel.right, `${width}`).toBeLessThanOrEqual(width);
        expect(panel.right - panel.left, `${width}`).toBeGreaterThan(90);
        expect(gradeY(panel, 5)).toBeLessThan(gradeY(panel, 0));
        expect(gradeY(panel, 0)).toBeLessThan(height);
        const places = days.map((day) => dayX(panel, day, days));
        expect(places[0]).toBeGreaterThan(panel.left);
        expect(places.at(-1)).toBeLessThan(panel.right);
      }
    }
  });
});

function part(visits = VISITS) {
  return mount(LamenessPart, {
    props: { visits, name: 'Tib' },
    global: { plugins: appPlugins({ dayFormat: 'DD.MM.YYYY' }) },
    attachTo: document.body,
  });
}

describe('lameness on the dog’s page', () => {
  it('is not shown before two visits had grades', () => {
    expect(part(VISITS.slice(0, 3)).find('section').exists()).toBe(false);
  });

  it('says first what is other than the time before', () => {
    const text = part().text();
    expect(text).toContain('Other than the time before, on 01.07.2026:');
    expect(text).toContain('Right hind at trot: worse, grade 0 to 1.');
    expect(part([VISITS[1]!, { ...VISITS[1]!, day: '2026-05-01' }]).text()).toContain(
      'every limb was graded as the time before',
    );
  });

  it('folds the chart of a dog that was sound whenever it was looked at', () => {
    const sound = VISITS.map((it) => ({ ...it, lamenessTrot: { ...NONE, leftHind: 0 } }));
    const folded = part(sound).get('details');
    expect(folded.attributes('open')).toBeUndefined();
    expect(folded.get('summary').text()).toBe('Sound wherever it was looked at: the grades');
    expect(folded.find('svg.chart').exists()).toBe(true);
    expect(part().find('details').exists()).toBe(false);
  });

  it('reads every grade out with limb, gait, day, its words and the change', () => {
    const labels = part()
      .findAll('.point')
      .map((point) => point.attributes('aria-label'));
    expect(labels).toHaveLength(11);
    expect(labels).toContain(
      'Left hind at trot, 01.06.2026: grade 1 of 5, barely seen, comes and goes; better, grade 2 to 1',
    );
  });

  it('has the words of the grades on its axis, and a key for what is drawn', () => {
    const wrapper = part();
    const axis = wrapper.findAll('.tick text').map((text) => text.text());
    expect(axis).toContain('sound 0');
    expect(axis).toContain('limb not used 5');
    expect(wrapper.get('.key').text()).toBe('at trot');
    const walked = VISITS.map((it) => ({ ...it, lamenessWalk: it.lamenessTrot }));
    expect(part(walked).get('.key').text()).toMatch(/at trot\s*at walk/);
  });

  it('has one tab stop; left and right walk along a limb, up and down to another', async () => {
    const wrapper = part();
    const point = (key: string) => wrapper.get<SVGElement>(`[data-point="${key}"]`);
    expect(wrapper.findAll('.point[tabindex="0"]')).toHaveLength(1);
    await point('leftFore trot 0').trigger('keydown', { key: 'ArrowRight' });
    expect(document.activeElement).toBe(point('leftFore trot 3').element);
    await point('leftFore trot 3').trigger('keydown', { key: 'ArrowDown' });
    expect(document.activeElement).toBe(point('rightFore trot 2').element);
    await point('rightFore trot 2').trigger('keydown', { key: 'Home' });
    expect(document.activeElement).toBe(point('rightFore trot 0').element);
    await point('rightFore trot 0').trigger('keydown', { key: 'ArrowLeft' });
    expect(document.activeElement).toBe(point('rightFore trot 0').element);
    expect(wrapper.findAll('.point[tabindex="0"]')).toHaveLength(1);
    expect(wrapper.get('.reading').text()).toContain('Right fore at trot, 01.04.2026: grade 0');
  });

  it('draws visits of one day without numbers that are none', () => {
    const twice = [VISITS[1]!, { ...VISITS[3]!, day: VISITS[1]!.day }];
    expect(part(twice).html()).not.toMatch(/NaN|Infinity|undefined/);
  });
});
