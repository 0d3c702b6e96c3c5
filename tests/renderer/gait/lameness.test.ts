import { mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import { columnHead } from '../../../renderer/chart/table.ts';
import { changedWords, lamenessCourse } from '../../../renderer/gait/lamenessCourse.ts';
import LamenessPart from '../../../renderer/gait/LamenessPart.vue';
import { lamenessTable } from '../../../renderer/gait/lamenessTable.ts';
import { stored } from '../support/dogFile.ts';
import { specsIn } from '../support/charts.ts';
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
    expect(folded.find('.drawing').exists()).toBe(true);
    expect(part().find('details').exists()).toBe(false);
  });

  it('draws a chart a limb in which a visit without a grade parts the line', () => {
    const specs = specsIn(part());
    expect(specs.map(({ title }) => title)).toEqual([
      'Left fore',
      'Right fore',
      'Left hind',
      'Right hind',
    ]);
    const grades = specs.map(({ series }) =>
      series.map(({ points }) => points.map((at) => 'y' in at && at.y)),
    );
    expect(grades).toEqual([
      [[0, null, null, 0]],
      [[0, null, 0, 0]],
      [[2, null, 1, 1]],
      [[0, null, 0, 1]],
    ]);
    expect(specs[0]!.y.words!(0)).toBe('sound 0');
    expect(specs[0]!.y.words!(5)).toBe('limb not used 5');
  });

  it('reads every grade out with limb, gait, day, its words and the change, walking over gaps', async () => {
    const drawing = part().findAll('[role="application"]')[2]!;
    const read = () => drawing.get('[role="status"]').text();
    await drawing.trigger('keydown', { key: 'End' });
    await drawing.trigger('keydown', { key: 'ArrowLeft' });
    expect(read()).toBe(
      'Left hind at trot, 01.06.2026: grade 1 of 5, barely seen, comes and goes; better, grade 2 to 1',
    );
    await drawing.trigger('keydown', { key: 'ArrowLeft' });
    expect(read()).toContain('01.04.2026: grade 2');
  });

  it('names walk and trot where both were looked at, and goes from one to the other', async () => {
    const walked = VISITS.map((it) => ({ ...it, lamenessWalk: it.lamenessTrot }));
    const wrapper = part(walked);
    const spec = specsIn(wrapper)[0]!;
    expect(spec.series.map(({ name }) => name)).toEqual(['at walk', 'at trot']);
    const drawing = wrapper.get('[role="application"]');
    await drawing.trigger('keydown', { key: 'ArrowDown' });
    await drawing.trigger('keydown', { key: 'ArrowDown' });
    expect(drawing.get('[role="status"]').text()).toContain('Left fore at trot');
  });
});
