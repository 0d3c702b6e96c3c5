import { flushPromises, type VueWrapper } from '@vue/test-utils';
import { describe, expect, it, vi } from 'vitest';
import { blankPlanRequest, blankPractice } from '../../../electron/contract/records/forms.ts';
import type { DogFile, SavedVisit } from '../../../electron/contract/contract.ts';
import type { Answer } from '../../../electron/contract/errors.ts';
import type { Client } from '../../../renderer/api/client.ts';
import VisitEditor from '../../../renderer/visits/VisitEditor.vue';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { dogOf, seenWithPlan, soundVisit } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

const TODAY = '2026-03-17';
/** A busy machine lays paper out slowly. */
const PRINTING_MS = 40_000;

/** The form of a follow-up two weeks into a plan, with the dog weighed and found sound. */
async function followUp(desk?: TestDesk) {
  const at = desk ?? (await openOwn());
  let dogId: string;
  if (desk === undefined) {
    ({ id: dogId } = await dogOf(at, 'Dana Owner', 'Rusk'));
    await seenWithPlan(at, dogId, '2026-03-02');
    at.setDay(TODAY);
  } else {
    dogId = (await at.ok('dogs/list', { query: '' }))[0]!.id;
  }
  const file = await at.ok('dogs/file', { dogId });
  const saves: Answer<SavedVisit>[] = [];
  const direct = deskClient(at);
  const client: Client = {
    ...direct,
    async call(name, input) {
      const answer = await direct.call(name, input);
      if (name === 'visits/save') saves.push(answer as Answer<SavedVisit>);
      return answer;
    },
  };
  const { wrapper } = await mountAtDesk(VisitEditor, client, { file, visitId: null });
  const read = (): Promise<DogFile> => at.ok('dogs/file', { dogId });
  return { desk: at, dogId, wrapper, saves, read };
}

async function weighAndLook(wrapper: VueWrapper): Promise<void> {
  await wrapper.get('#field-visit-weightKg').setValue('23.8');
  await line(wrapper, 'Sound at walk and trot').setValue(true);
}
const line = (wrapper: VueWrapper, normal: string) =>
  wrapper
    .findAll('label.choice')
    .find((each) => each.text().startsWith(normal))!
    .get('input');
async function limp(wrapper: VueWrapper): Promise<void> {
  await press(wrapper, 'Grade the limbs');
  await wrapper.get('input[aria-label^="grade 3"]').trigger('change');
}
const allDone = async (wrapper: VueWrapper) => {
  await wrapper.get('.results').trigger('keydown', { key: 'a' });
  await shows(wrapper, /\d+ sessions: done as planned/);
};
const partOn = (wrapper: VueWrapper, what: 'plan' | 'food') =>
  wrapper.findAll('fieldset').find((each) => each.text().includes(`Your decision on the ${what}`))!;
const planPart = (wrapper: VueWrapper) => partOn(wrapper, 'plan');
async function answer(wrapper: VueWrapper, what: 'plan' | 'food', label: string): Promise<void> {
  const choice = partOn(wrapper, what)
    .findAll('label.choice')
    .find((each) => each.text().startsWith(label))!;
  await choice.get('input').trigger('change');
}
const answerPlan = (wrapper: VueWrapper, label: string) => answer(wrapper, 'plan', label);
const answerFood = (wrapper: VueWrapper, label: string) => answer(wrapper, 'food', label);
const save = (wrapper: VueWrapper) => wrapper.get('form').trigger('submit');

describe('a visit whose day is set back', () => {
  const changeover = '#field-food-foodSwitch-startDay';
  const valueOf = (wrapper: VueWrapper) =>
    (wrapper.get(changeover).element as HTMLInputElement).value;

  it('takes the changeover to another food with it, until that is given a day of its own', async () => {
    const { wrapper } = await followUp();
    await press(wrapper, 'Replace by another food');
    expect(valueOf(wrapper)).toBe(TODAY);
    await wrapper
      .findAll('button')
      .find((button) => button.text().endsWith('day and kind of visit'))!
      .trigger('click');
    const day = wrapper.get('#field-visit-day');
    await day.setValue('');
    await day.setValue('2026-03-16');
    expect(valueOf(wrapper)).toBe('2026-03-16');
    await wrapper.get(changeover).setValue('2026-03-20');
    await day.setValue('2026-03-15');
    expect(valueOf(wrapper)).toBe('2026-03-20');
  });
});

describe('sessions told at a follow-up', () => {
  it('stay in the form until the visit is saved, and are kept with it', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await allDone(wrapper);
    expect((await read()).sessions).toEqual([]);
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    const { sessions } = await read();
    expect(sessions.length).toBeGreaterThan(3);
    expect(new Set(sessions.map(({ outcome }) => outcome))).toEqual(new Set(['done']));
    expect(sessions.every(({ day, nextDay }) => day < TODAY && nextDay === 'normal')).toBe(true);
  });

  it('are not asked for while the plan waited for the vet; what was run can be told', async () => {
    const desk = await openOwn();
    const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(dogId, '2026-03-02'), signs: ['cough'] },
      plan: { ...blankPlanRequest('2026-03-02', 'unconditioned'), goal: { continuousMinutes: 20 } },
      food: null,
    });
    desk.setDay(TODAY);
    const { wrapper } = await followUp(desk);
    expect(wrapper.text()).toContain('no session was asked of the owner');
    const rows = wrapper.findAll('li.session');
    expect(rows.length).toBeGreaterThan(3);
    const fold = rows[0]!.element.closest('details')!;
    expect(fold.open).toBe(false);
    expect(fold.textContent).toContain('ran all the same');
    expect(wrapper.text()).not.toMatch(/as missed|Nothing is told of/);
  });

  it('take no key that is pressed outside of their rows', async () => {
    const { wrapper } = await followUp();
    const before = wrapper.findAll('li.session').length;
    const all = wrapper.findAll('button').find((each) => each.text().startsWith('All done'))!;
    await all.trigger('keydown', { key: 'm' });
    await flushPromises();
    expect(wrapper.findAll('li.session')).toHaveLength(before);
    expect(wrapper.text()).not.toContain('Told so far');
  });

  it('are taken back together by one key', async () => {
    const { wrapper, read } = await followUp();
    await allDone(wrapper);
    await shows(wrapper, 'Told so far');
    await wrapper.get('.results').trigger('keydown', { key: 'u' });
    await shows(wrapper, 'taken back');
    expect(wrapper.text()).not.toContain('Told so far');
    expect((await read()).sessions).toEqual([]);
  });

  it('come back with the draft', async () => {
    const first = await followUp();
    await allDone(first.wrapper);
    first.wrapper.unmount();
    const { wrapper } = await followUp(first.desk);
    await shows(wrapper, 'is back');
    await shows(wrapper, 'Told so far');
  });

  it('hold the save back while one of them is half told', async () => {
    const { wrapper, saves } = await followUp();
    await wrapper.get('.results').trigger('keydown', { key: 'x' });
    await shows(wrapper, 'What the owner saw');
    await save(wrapper);
    await shows(wrapper, /Keep or close what is being told of/);
    expect(saves).toEqual([]);
    await press(wrapper, 'Close');
    await save(wrapper);
    await comesTrue(async () => expect(saves).toHaveLength(1));
  });

  it('change what is proposed at once: untold they count as missed', async () => {
    const { wrapper } = await followUp();
    await weighAndLook(wrapper);
    await shows(wrapper, /sessions have no result yet and count as missed/);
    await allDone(wrapper);
    await shows(wrapper, 'Go on as planned');
    expect(wrapper.text()).not.toContain('count as missed');
  });
});

describe('a goal too long for the dog', () => {
  it('is told below the goal, and once refused, beside its field instead', async () => {
    const desk = await openOwn();
    const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
    const visit = soundVisit(dogId, '2026-03-02');
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    desk.setDay(TODAY);
    const { wrapper } = await followUp(desk);
    await weighAndLook(wrapper);
    await wrapper.get('#field-plan-wanted').setValue(true);
    await wrapper.get('#field-plan-goal-continuousMinutes').setValue('40');
    await shows(wrapper, /A goal of at most 30 min/);
    const part = wrapper.get('#part-plan').element.closest('section')!;
    const said = () => part.textContent.split(/A goal of at most 30\smin/).length - 1;
    expect(said()).toBe(1);
    await save(wrapper);
    await shows(wrapper, /Not saved/);
    expect(said()).toBe(1);
    const field = wrapper.get('#field-plan-goal-continuousMinutes');
    expect(field.attributes('aria-invalid')).toBe('true');
  });
});

describe('the plan proposal of a follow-up', () => {
  it('stands below the verdict that stands beside the form', async () => {
    const { wrapper } = await followUp();
    const marks = () =>
      wrapper.findAll('[data-outcome]').map((mark) => mark.attributes('data-outcome'));
    // Nothing was looked at yet: a dog on a plan is not sent walking for that.
    const both = (outcome: string) =>
      comesTrue(async () => expect(marks()).toEqual([outcome, outcome]));
    await both('ready to start');
    await limp(wrapper);
    await both('vet first');
  });

  it('leaves the plan alone while nothing is decided', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    expect((await read()).plans).toHaveLength(1);
  });

  it('is kept as it was shown, when accepted, with the food for its running', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await allDone(wrapper);
    await answerPlan(wrapper, 'Accept');
    await answerFood(wrapper, 'Accept');
    const proposed = Number(/(\d+)\skcal/.exec(wrapper.get('.verdict').text())?.[1]);
    const shown = /As a new version, from .*/.exec(wrapper.text())?.[0] ?? 'none';
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    const { plans, foodDecisions } = await read();
    expect(Math.round(foodDecisions.at(-1)!.kcalPerDay)).toBe(proposed);
    const plan = plans.at(-1)!;
    expect(plan).toMatchObject({ version: 2, origin: 'reviewed', current: true });
    expect(plan.review?.decision).toBe('progress');
    expect(shown).toContain(`${plan.ramp.weeks.length} weeks`);
  });

  it('is accepted with the food by one button, once the dog was seen moving', async () => {
    const { wrapper, read, saves } = await followUp();
    const both = () =>
      wrapper.findAll('button').find((each) => each.text().startsWith('Accept plan and food'));
    await wrapper.get('#field-visit-weightKg').setValue('23.8');
    await allDone(wrapper);
    expect(both()).toBeUndefined();
    await line(wrapper, 'Sound at walk and trot').setValue(true);
    await both()!.trigger('click');
    await flushPromises();
    const proposed = Number(/(\d+)\skcal/.exec(wrapper.get('.verdict').text())?.[1]);
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    const { plans, foodDecisions } = await read();
    expect(plans.at(-1)).toMatchObject({ version: 2, current: true });
    // The food is for the running of the plan that was accepted with it.
    expect(Math.round(foodDecisions.at(-1)!.kcalPerDay)).toBe(proposed);
  });

  it('gives one’s own ration the proposed figure to begin with', async () => {
    const { wrapper } = await followUp();
    await weighAndLook(wrapper);
    const proposed = /(\d+)\skcal/.exec(wrapper.get('.verdict').text())?.[1];
    await answerFood(wrapper, 'Edit');
    const field = wrapper.get('#field-food-kcalPerDay').element as HTMLInputElement;
    expect(field.value).toBe(proposed);
  });

  it('follows one’s own ration as it is dragged, in the field and in the weeks ahead', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await answerFood(wrapper, 'Edit');
    const field = wrapper.get('#field-food-kcalPerDay');
    await field.setValue('900');
    const slider = wrapper.get('input[type=range]');
    const { min, max } = slider.attributes();
    const dragged = String(5 * Math.round((Number(min) + Number(max)) / 10 - 20));
    await slider.setValue(dragged);
    expect((field.element as HTMLInputElement).value).toBe(dragged);
    expect(slider.attributes('aria-valuetext')?.replace(/\s/g, ' ')).toBe(`${dragged} kcal/day`);
    await shows(wrapper, new RegExp(`${dragged}.kcal/day, your figure: in 8 weeks`));
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    expect((await read()).foodDecisions.at(-1)!.kcalPerDay).toBe(Number(dragged));
  });

  it('asks why it is declined, and keeps the reason with the visit', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await answerPlan(wrapper, 'Decline');
    await save(wrapper);
    await shows(wrapper, 'Reason for declining is needed');
    expect(saves).toEqual([]);
    // Accepting asks for none, and declining anew does.
    await answerPlan(wrapper, 'Accept');
    expect(wrapper.text()).not.toContain('Reason for declining is needed');
    await answerPlan(wrapper, 'Decline');
    await wrapper.get('#field-review-note').setValue('He was away; the owner ran on.');
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    const file = await read();
    expect(file.plans).toHaveLength(1);
    expect(file.visits.at(-1)?.notes).toMatch(
      /^Plan proposal declined \(.+\): He was away; the owner ran on\.$/,
    );
  });

  it('stops for lameness, warns before it is declined, and cannot be changed by hand', async () => {
    const { wrapper } = await followUp();
    await weighAndLook(wrapper);
    await limp(wrapper);
    await shows(wrapper, 'Stop: the vet first');
    expect(planPart(wrapper).text()).not.toContain('Edit');
    await answerPlan(wrapper, 'Decline');
    await shows(wrapper, 'A vet has to see the dog first');
  });

  it('keeps its answer once it is another one, and saves nothing until both were looked at', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await allDone(wrapper);
    await answerPlan(wrapper, 'Accept');
    const decided = () =>
      planPart(wrapper)
        .findAll('input')
        .findIndex(({ element }) => element.checked);
    expect(decided()).toBe(1);
    await limp(wrapper);
    await shows(wrapper, /You decided on: Go on as planned.*Now: Stop: the vet first/s);
    expect(decided()).toBe(1);
    await save(wrapper);
    await shows(wrapper, 'The plan proposal changed after you decided');
    expect(saves).toEqual([]);
    expect((await read()).plans).toHaveLength(1);
    await press(wrapper, 'My answer holds for the new one');
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    // A stop has no weeks.
    expect((await read()).plans.at(-1)!.ramp.weeks).toEqual([]);
  });

  it('needs a written reason for a rule that a change by hand breaks', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await allDone(wrapper);
    await answerPlan(wrapper, 'Edit');
    await shows(wrapper, 'Change the proposed plan by hand');
    const change = wrapper.findAll('button').find((each) => each.text() === 'Set the run-minutes')!;
    await change.trigger('click');
    await wrapper.get('[id^="field-week-"]').setValue('60');
    await press(wrapper, 'Set');
    await shows(wrapper, 'Breaks a rule');
    await save(wrapper);
    await shows(wrapper, 'A reason is needed');
    expect(saves).toEqual([]);
    for (const field of wrapper.findAll('[id^="field-kept-"]')) {
      if (field.element.tagName === 'INPUT') await field.setValue('Ran this far last summer.');
    }
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    const { plans } = await read();
    expect(plans.map(({ origin }) => origin)).toEqual(['built', 'reviewed', 'edited']);
    expect(plans.at(-1)?.keptBreaches[0]?.keptBecause).toBe('Ran this far last summer.');
  });

  it('gives way to a plan that is made anew', async () => {
    const { wrapper, read, saves } = await followUp();
    await weighAndLook(wrapper);
    await answerPlan(wrapper, 'Accept');
    await wrapper.get('#field-plan-wanted').setValue(true);
    await shows(wrapper, 'takes the place of version 1');
    await save(wrapper);
    await comesTrue(async () => expect(saves.at(-1)).toMatchObject({ ok: true }));
    expect((await read()).plans.at(-1)).toMatchObject({ version: 2, origin: 'built' });
  });
});

describe('saving and printing in one step', () => {
  it('stays with what was saved; sheets that fail can be printed again', async () => {
    const { desk, wrapper, read } = await followUp();
    await weighAndLook(wrapper);
    await answerFood(wrapper, 'Accept');
    const form = wrapper.get('form').element as HTMLFormElement;
    const submitter = wrapper.get<HTMLElement>('[data-then="print"]').element;
    form.dispatchEvent(new SubmitEvent('submit', { submitter, cancelable: true }));
    await flushPromises();
    await shows(wrapper, 'The visit of Rusk is saved');
    await shows(wrapper, /Food\s*Accepted: \d+\skcal\/day/);
    await shows(wrapper, /Running plan\s*Version 1 stays/);
    expect((await read()).visits).toHaveLength(2);
    await shows(wrapper, /Not printed\. Name the practice/);
    await desk.ok('practice/save', { ...blankPractice(), name: 'Mill Brook Canine Fitness' });
    await press(wrapper, 'Print the sheets');
    await vi.waitFor(() => expect(wrapper.text()).toMatch(/The sheets, \d+ pages/), PRINTING_MS);
    expect((await read()).visits).toHaveLength(2);
  }, 60_000);
});
