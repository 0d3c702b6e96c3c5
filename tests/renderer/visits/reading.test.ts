import { afterEach, describe, expect, it } from 'vitest';
import type { VueWrapper } from '@vue/test-utils';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import VisitPage from '../../../renderer/pages/VisitPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, soundVisit } from '../../service/support/records.ts';
import { blankPlanRequest } from '../../../electron/contract/records/forms.ts';
import { deskClient, mountAtDesk, shows } from '../support/atDesk.ts';

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

const UNITS = { weightUnit: 'lb', dayFormat: 'DD.MM.YYYY' } as const;

/** A visit with these facts, open to be read; with signs nothing can be decided at it. */
async function reading(facts: Partial<VisitFacts> = {}) {
  const decides = facts.signs === undefined;
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const day = '2026-03-02';
  const { visit } = await desk.ok('visits/save', {
    id: null,
    visit: { ...soundVisit(dogId, day), ...facts },
    plan: decides
      ? { ...blankPlanRequest(day, 'unconditioned'), goal: { continuousMinutes: 20 } }
      : null,
    food: decides
      ? { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: 'Weigh the treats.' }
      : null,
  });
  const client = deskClient(desk);
  const props = { dogId, visitId: visit.id };
  const { wrapper } = await mountAtDesk(VisitPage, client, props, { settings: UNITS });
  open = wrapper;
  await shows(wrapper, 'Amend');
  /** Label and value of each row of a part, spaces plain. */
  const rows = (part: string): Record<string, string> => {
    const section = wrapper.findAll('section').find((one) => one.find('h2').text() === part);
    return Object.fromEntries(
      (section?.findAll('.line') ?? []).map((line) =>
        ['dt', 'dd'].map((tag) => line.get(tag).text().replaceAll(/\s/g, ' ')),
      ),
    ) as Record<string, string>;
  };
  const parts = () => wrapper.findAll('h2').map((heading) => heading.text());
  return { desk, wrapper, dogId, visit, rows, parts };
}

describe('a saved visit', () => {
  it('opens to be read: no field is on the page, and a way to the form', async () => {
    const { wrapper, dogId, visit } = await reading();
    expect(wrapper.get('h1').text()).toBe('Intake of Rusk, 02.03.2026');
    expect(wrapper.findAll('input, textarea')).toEqual([]);
    const amend = wrapper.findAll('a').find((link) => link.text() === 'Amend');
    expect(amend?.attributes('href')).toBe(`/dogs/${dogId}/visits/${visit.id}/amend`);
  });

  it('tells what was recorded in the parts of the form, in the practice’s units', async () => {
    const { rows, parts } = await reading({
      referral: 'Wants to run 5 km.',
      bcs: 5,
      signs: ['cough', 'collapse'],
      consent: { given: true, vet: 'Dr C. Vet', day: '2026-02-27', scope: '', expiryDay: null },
    });
    expect(parts().slice(0, 7)).toEqual([
      'Why it comes',
      'Weight and condition',
      'Gait and lameness',
      'Pain and signs',
      'History and consent',
      'Food',
      'Verdict and decisions',
    ]);
    expect(rows('Why it comes')).toEqual({ 'Reason for the referral': 'Wants to run 5 km.' });
    expect(rows('Weight and condition')).toMatchObject({
      'Body weight': '52.9 lb',
      'Body condition score': '5 of 9',
      'Target weight': '48.5 lb',
    });
    expect(rows('Gait and lameness')).toEqual({
      'Lameness at walk': '0 of 5: left fore, right fore, left hind, right hind',
      'Lameness at trot': '0 of 5: left fore, right fore, left hind, right hind',
    });
    expect(rows('Pain and signs')['Signs']).toMatch(/^Cough.*, Collapse/);
    expect(rows('History and consent')['Consent']).toBe('Vet: Dr C. Vet; given on: 27.02.2026');
    expect(rows('Food')['Dry food']).toBe('Energy: 360 kcal/100 g; amount: 280 g a day');
  });

  it('leaves out what nobody entered', async () => {
    const { rows, parts } = await reading({ walkBase: 'not tested', historyAsked: false });
    expect(parts()).not.toContain('Notes and photos');
    expect(Object.keys(rows('History and consent'))).toEqual([
      'Daily activity',
      'Condition for running',
    ]);
  });

  it('tells the verdict of then, and what was decided', async () => {
    const { rows } = await reading();
    const decided = rows('Verdict and decisions');
    expect(decided['Verdict']).toMatch(/^(Ready to start|Walking only|Vet first)/);
    expect(decided['Running plan']).toMatch(/^Version 1, made\. \d+ weeks?; /);
    expect(decided['Food']).toMatch(
      /kcal\/day, as proposed\. Weigh the treats\. Dry food: \d+ g a day$/,
    );
  });

  it('keeps its verdict when the dog is seen again and found lame', async () => {
    const first = await reading();
    const before = first.rows('Verdict and decisions')['Verdict'];
    expect(before).toMatch(/^Ready to start/);
    const { desk, dogId, visit } = first;
    desk.setDay('2026-04-06');
    const lame = { leftFore: 0, rightFore: 0, leftHind: 3, rightHind: 0 };
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(dogId, '2026-04-06'), kind: 'follow-up', lamenessTrot: lame },
      plan: null,
      food: null,
    });
    first.wrapper.unmount();
    const again = await mountAtDesk(VisitPage, deskClient(desk), { dogId, visitId: visit.id });
    open = again.wrapper;
    await shows(again.wrapper, 'Verdict and decisions');
    expect(again.wrapper.get('[data-outcome]').text()).toBe('Ready to start');
  });
});
