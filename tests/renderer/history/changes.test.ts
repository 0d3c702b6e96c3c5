import type { VueWrapper } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import { sessionFactsOf } from '../../../electron/contract/records/facts.ts';
import DogPage from '../../../renderer/pages/DogPage.vue';
import PlanPage from '../../../renderer/pages/PlanPage.vue';
import { openOwn, testService, type TestDesk } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

/** The demonstration's dog with a plan, told sessions and several decisions on its food. */
async function demoDog() {
  const desk = testService();
  await desk.ok('app/open', { which: 'demo' });
  const dogs = await desk.ok('dogs/list', { query: 'Bramble' });
  const dogId = dogs[0]!.id;
  const file = await desk.ok('dogs/file', { dogId });
  return {
    desk,
    dogId,
    file,
    session: file.sessions.findLast(({ outcome }) => outcome === 'done')!,
  };
}
/** The part of the page that tells what was done to records since they were kept. */
function changes(page: VueWrapper, title: string): string {
  const found = page.findAll('details').find((each) => each.text().startsWith(title));
  return found?.text() ?? '';
}
const TITLE = 'Changed or removed since they were told';

describe('the history of sessions on the plan’s page', () => {
  it('is not there before anything was changed', async () => {
    const { desk, dogId } = await demoDog();
    const { wrapper: page } = await mountAtDesk(PlanPage, deskClient(desk), { dogId });
    await shows(page, 'Told so far');
    expect(changes(page, TITLE)).toBe('');
  });

  it('tells when a result was changed, by whom, what it was, and why', async () => {
    const { desk, dogId, session } = await demoDog();
    await desk.ok('sessions/save', {
      dogId,
      session: { ...sessionFactsOf(session), outcome: 'shortened', note: 'Stopped at the gate.' },
      reason: 'The owner had mixed up two days.',
    });
    const { wrapper: page } = await mountAtDesk(PlanPage, deskClient(desk), { dogId });
    await comesTrue(async () => expect(changes(page, TITLE)).toContain(`${TITLE}: 1`));
    expect(changes(page, TITLE)).toMatch(
      /Amended on .*Reason: The owner had mixed up two days\..*Outcome.*Done.*Shortened/s,
    );
  });

  it('follows a change made on the page, with its reason; removing and undoing too', async () => {
    const { desk, dogId, session } = await demoDog();
    const { wrapper: page } = await mountAtDesk(PlanPage, deskClient(desk), { dogId });
    await shows(page, 'Told so far');
    const label = page
      .findAll('.told button')
      .map((each) => each.attributes('aria-label') ?? '')
      .find((words) => words.startsWith('Change ') && words.includes(session.day.slice(8)))!;
    await press(page, label);
    await shows(page, 'Reason for the change');
    const note = page.findAll('input, textarea').find((each) => each.element.id.endsWith('-note'))!;
    await note.setValue('Two minutes less.');
    const reason = page
      .findAll('input, textarea')
      .find((each) => each.element.id.endsWith('-reason'))!;
    await reason.setValue('Asked again.');
    await press(page, 'Keep');
    await comesTrue(async () => expect(changes(page, TITLE)).toContain('Reason: Asked again.'));
    await press(page, label.replace('Change', 'Remove'));
    await comesTrue(async () => expect(changes(page, TITLE)).toContain('Removed on'));
    await press(page, 'Undo the last change');
    await comesTrue(async () => expect(changes(page, TITLE)).toContain('Brought back on'));
    const { sessions } = await desk.ok('dogs/file', { dogId });
    expect(sessions.find(({ day }) => day === session.day)).toMatchObject({
      outcome: 'done',
      note: 'Two minutes less.',
    });
    // Beside the session itself as well.
    await press(page, label);
    await shows(page, 'Changed since it was told: 3');
  });
});

describe('the history of the food on the dog’s page', () => {
  it('lists every earlier decision with its days and its grounds', async () => {
    const { desk, dogId, file } = await demoDog();
    expect(file.foodDecisions.length).toBeGreaterThan(1);
    const { wrapper: page } = await mountAtDesk(DogPage, deskClient(desk), { dogId });
    const earlier = file.foodDecisions.slice(0, -1);
    await shows(page, `Earlier decisions on the food: ${earlier.length}`);
    const part = changes(page, 'Earlier decisions').replaceAll(/\s/g, '');
    for (const { kcalPerDay, decidedOn } of earlier) {
      expect(part).toContain(decidedOn);
      expect(part).toContain(`${Math.round(kcalPerDay)}kcal`);
    }
  });
});

describe('the history of weighings on the dog’s page', () => {
  async function weighedDog() {
    const desk = await openOwn();
    const { id: dogId } = await desk.ok('dogs/saveWithOwner', {
      client: { ...blankClient(), name: 'Zoë Example' },
      dog: { ...blankDog('female'), name: 'Bess', birthDay: '2022-04-01' },
    });
    await desk.ok('weighings/save', {
      dogId,
      weighing: {
        day: '2026-02-09',
        weightKg: 24,
        weighingMethod: 'same scale',
        scaleStepKg: 0.1,
        note: '',
      },
    });
    const { wrapper: page, notice } = await mountAtDesk(DogPage, deskClient(desk), { dogId });
    await press(page, 'Remove the weighing of 2026-02-09');
    await shows(page, 'has not been seen yet');
    return { desk, dogId, page, notice };
  }
  const count = async (desk: TestDesk, dogId: string) =>
    (await desk.ok('dogs/file', { dogId })).weighings.length;

  it('the only weighing removed by mistake is brought back by the notice', async () => {
    const { desk, dogId, notice } = await weighedDog();
    expect(await count(desk, dogId)).toBe(0);
    expect(notice.text).toBe('The weighing of 2026-02-09 is removed.');
    await notice.action!.run();
    expect(await count(desk, dogId)).toBe(1);
  });

  it('or any time later from the history', async () => {
    const { desk, dogId, page } = await weighedDog();
    await shows(page, 'Weighings changed or removed since they were kept: 1');
    await press(page, 'Bring this weighing back');
    await shows(page, 'weighed once');
    expect(await count(desk, dogId)).toBe(1);
    await shows(page, 'Weighings changed or removed since they were kept: 2');
    expect(page.text()).not.toContain('Bring this weighing back');
  });
});
