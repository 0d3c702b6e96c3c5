import { describe, expect, it } from 'vitest';
import RunDaysFields from '../../../renderer/visits/RunDaysFields.vue';
import { WEEKDAYS, type PlanEntry } from '../../../renderer/visits/visitForm.ts';
import { mountField } from '../support/mountField.ts';

const PLAN: PlanEntry = {
  wanted: true,
  programme: 'running',
  walkMinutesNow: null,
  startDay: '2025-03-29',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goalKind: 'minutes',
  goal: { continuousMinutes: 30, distanceKm: null, paceMinPerKm: null },
  eventDay: null,
  capPercent: null,
  weekdays: [...WEEKDAYS],
  daysOut: [],
  climbM: null,
  ownerMinutes: null,
  paceMinPerKm: null,
  laterStages: [],
};

async function away(from: string, to: string) {
  const mounted = mountField(RunDaysFields, { plan: PLAN }, 'plan', {});
  const { wrapper } = mounted;
  await wrapper.get('#field-plan-awayFrom').setValue(from);
  if (to !== '') await wrapper.get('#field-plan-awayTo').setValue(to);
  await wrapper.get('button.button:not(.slim)').trigger('click');
  return mounted;
}

describe('the days of a plan', () => {
  it('leave a weekday out', async () => {
    const { wrapper, form } = mountField(RunDaysFields, { plan: PLAN }, 'plan', {});
    await wrapper.findAll('input[type=checkbox]')[6]!.setValue(false);
    expect(form.values.plan.weekdays).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('take days away as one stretch, and give them back', async () => {
    const { wrapper, form } = await away('2025-04-10', '2025-04-12');
    expect(form.values.plan.daysOut).toEqual(['2025-04-10', '2025-04-11', '2025-04-12']);
    expect(wrapper.get('.away').text()).toContain('2025-04-10 to 2025-04-12');
    await wrapper.get('.away button').trigger('click');
    expect(form.values.plan.daysOut).toEqual([]);
    expect(wrapper.text()).toContain('2025-04-10 to 2025-04-12 taken back.');
    const undo = wrapper.findAll('button').find((each) => each.text() === 'Undo')!;
    await undo.trigger('click');
    expect(form.values.plan.daysOut).toEqual(['2025-04-10', '2025-04-11', '2025-04-12']);
    expect(wrapper.text()).not.toContain('taken back');
  });

  it('take a single day', async () => {
    const { form } = await away('2025-04-10', '');
    expect(form.values.plan.daysOut).toEqual(['2025-04-10']);
  });

  it('refuse a stretch that ends before it begins', async () => {
    const { wrapper, form } = await away('2025-04-10', '2025-04-01');
    expect(form.values.plan.daysOut).toEqual([]);
    expect(wrapper.get('[role=alert]').text()).toContain('a later last day');
  });
});
