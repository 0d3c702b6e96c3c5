import { mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import {
  buildRamp,
  type PresentProgramme,
  type Ramp,
  type RampRequest,
} from '../../../core/index.ts';
import type { Plan } from '../../../electron/contract/contract.ts';
import PlanPart from '../../../renderer/dogs/PlanPart.vue';
import { outcomeOnly } from '../../../renderer/plans/timeline.ts';
import { dogFile, stored } from '../support/dogFile.ts';
import { appPlugins } from '../support/plugins.ts';

const plain = (text = '') => text.replaceAll(/[\u00a0\u202f]/g, ' ');
const START = '2025-03-03';

function planOf(asked: Partial<RampRequest> = {}): Plan {
  const ramp: Ramp = buildRamp({
    startDay: START,
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 20 },
    ...asked,
  });
  return {
    ...stored,
    dogId: 'd',
    visitId: null,
    version: 1,
    madeOn: START,
    origin: 'built',
    current: true,
    request: {} as Plan['request'],
    ramp,
    review: null,
    keptBreaches: [],
    note: '',
    author: '',
  };
}
const goingOn = (plan: Plan): PresentProgramme<Plan> => ({
  kind: 'running',
  plan,
  week: plan.ramp.weeks[1]!,
  lastWeek: plan.ramp.weeks.length,
  next: null,
});

function part(plan: Plan, programme: PresentProgramme<Plan>) {
  const [first] = plan.ramp.weeks[0]!.sessions;
  const told = { ...stored, dogId: 'd', author: '', ...outcomeOnly(first!.day, 'done') };
  const file = { ...dogFile([]), plans: [plan], sessions: [told as never] };
  return mount(PlanPart, {
    props: { file, plan, programme, today: START },
    global: { plugins: appPlugins() },
    attachTo: document.body,
  });
}
/** The load is drawn once it is asked for. */
async function unfolded(wrapper: ReturnType<typeof part>) {
  const fold = wrapper.get('details');
  (fold.element as HTMLDetailsElement).open = true;
  await fold.trigger('toggle');
  return wrapper.get('figure');
}
afterEach(() => (document.body.innerHTML = ''));

describe('the plan on the page of a dog', () => {
  it('draws the load of all its weeks, each read out by arrow keys as the table has it', async () => {
    const plan = planOf();
    const { weeks } = plan.ramp;
    const wrapper = part(plan, goingOn(plan));
    expect(wrapper.find('figure').exists()).toBe(false);
    const chart = await unfolded(wrapper);
    expect(chart.get('h3').text()).toBe('Running, minutes a week');
    const drawing = chart.get('[role="application"]');
    await drawing.trigger('keydown', { key: 'Home' });
    await drawing.trigger('keydown', { key: 'Home' });
    const run = (minutes: number) =>
      `${Number.isInteger(minutes) ? minutes : minutes.toFixed(1)} min`;
    const [first] = weeks;
    expect(plain(chart.get('[role="status"]').text())).toBe(
      `Week 1, from ${START}: ${run(first!.runMinutes)} planned, ${run(first!.sessions[0]!.runMinutes)} done; at most ${run(first!.capMinutes)}`,
    );
    await chart
      .findAll('button')
      .find((button) => button.text() === 'As a table')!
      .trigger('click');
    const rows = chart
      .findAll('tbody tr')
      .map((row) => row.findAll('th, td').map((cell) => cell.text()));
    expect(rows).toHaveLength(weeks.length);
    expect(rows.map((cells) => Number(cells[2]))).toEqual(
      weeks.map(({ runMinutes }) => runMinutes),
    );
    expect(Number(rows[0]![3])).toBe(first!.sessions[0]!.runMinutes);
  });

  it('of brisk walks speaks of walking, and of no limit', async () => {
    const plan = planOf({ programme: 'walking', start: 'unconditioned', walkMinutesNow: 15 });
    const chart = await unfolded(part(plan, { ...goingOn(plan), kind: 'walking' } as never));
    expect(chart.get('h3').text()).toBe('Walking, minutes a week');
    const drawing = chart.get('[role="application"]');
    await drawing.trigger('keydown', { key: 'Home' });
    expect(plain(chart.get('[role="status"]').text())).toMatch(/^Week \d+, from .* planned/);
    expect(chart.get('[role="status"]').text()).not.toContain('at most');
  });

  it('names the next outing, and none for a plan that waits', () => {
    const plan = planOf();
    const next = plan.ramp.weeks[1]!.sessions[0]!;
    const { kind, week, lastWeek } = goingOn(plan) as never;
    const going = part(plan, { kind, plan, week, lastWeek, next }).text();
    expect(plain(going)).toMatch(/^Week 2 of \d+ of the plan\. Next outing .*: .*run/);
    const waits = part(plan, { kind: 'waiting', for: 'vet', plan, reasons: [] }).text();
    expect(plain(waits)).toContain('The plan waits for the vet.');
    expect(waits).not.toContain('Next outing');
  });

  it('draws none while the plan waits or is over', () => {
    const plan = planOf();
    const waiting = { kind: 'waiting', for: 'vet', plan, reasons: [] } as const;
    expect(part(plan, waiting).find('details').exists()).toBe(false);
    expect(part(plan, { kind: 'finished', plan }).find('details').exists()).toBe(false);
  });
});
