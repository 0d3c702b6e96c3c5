import { describe, expect, it } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import DogPage from '../../../renderer/pages/DogPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

/** A dog without a visit that was weighed every other week, lighter each time. */
async function unseenDog(kilograms: readonly number[]) {
  const desk = await openOwn(undefined, '2026-05-01');
  const { id: dogId } = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Zoë Example' },
    dog: { ...blankDog('female'), name: 'Bess', birthDay: '2022-04-01' },
  });
  for (const [index, weightKg] of kilograms.entries()) {
    const day = `2026-0${1 + Math.floor(index / 2)}-${index % 2 === 0 ? '05' : '19'}`;
    const weighing = { day, weightKg, weighingMethod: 'same scale', scaleStepKg: 0.1, note: '' };
    await desk.ok('weighings/save', { dogId, weighing: weighing as never });
  }
  const { wrapper } = await mountAtDesk(DogPage, deskClient(desk), { dogId });
  await shows(wrapper, 'Zoë Example');
  return wrapper;
}

describe('the page of a dog that was never seen at a visit', () => {
  it('shows its weighings as chart, table and trend, and what an assessment is missing', async () => {
    const page = await unseenDog([26, 25.6, 25.2, 24.8, 24.4]);
    await shows(page, 'weighed 5 times, last 24.4');
    await shows(page, /not been seen at a visit yet/);
    await shows(page, /the intake is still missing/);
    await shows(page, /% a week/);
    expect(page.findAll('.ledger tbody tr').length).toBeGreaterThanOrEqual(5);
    expect(page.findAll('[role="application"]')).toHaveLength(1);
    // No corridor and no target before a visit.
    expect(page.text()).not.toContain('planned corridor');
    expect(page.text()).not.toContain('Running plan');
  });

  it('says of a single weighing that there is no rate yet', async () => {
    const page = await unseenDog([26]);
    await shows(page, 'weighed once');
    expect(page.text()).not.toContain('a week');
    expect(page.findAll('table')[0]!.text()).toContain('26.0');
  });

  it('offers to enter or import weights where there are none', async () => {
    const page = await unseenDog([]);
    await shows(page, 'has not been seen yet');
    await shows(page, 'Import weights…');
    await press(page, 'Add a weighing');
    await shows(page, 'Keep the weighing');
  });
});
