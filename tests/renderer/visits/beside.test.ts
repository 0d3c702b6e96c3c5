import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import TwoVisitsPage from '../../../renderer/pages/TwoVisitsPage.vue';
import VisitPage from '../../../renderer/pages/VisitPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, soundVisit } from '../../service/support/records.ts';
import { deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

const FIRST = '2026-03-02';
const SECOND = '2026-03-16';

/** A dog seen twice, the second time with these facts. */
async function seenTwice(facts: Partial<VisitFacts>) {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const save = async (visit: VisitFacts): Promise<string> =>
    (await desk.ok('visits/save', { id: null, visit, plan: null, food: null })).visit.id;
  const first = await save(soundVisit(dogId, FIRST));
  desk.setDay(SECOND);
  const second = await save({ ...soundVisit(dogId, SECOND), kind: 'follow-up', ...facts });
  return { desk, dogId, first, second };
}

/** Both visits on the page, the later one named first. */
async function beside(facts: Partial<VisitFacts>) {
  const { desk, dogId, first, second } = await seenTwice(facts);
  const props = { dogId, visitId: second, besideId: first };
  const { wrapper } = await mountAtDesk(TwoVisitsPage, deskClient(desk), props);
  open = wrapper;
  await shows(wrapper, 'Verdict and decisions');
  const labels = (selector: string) =>
    wrapper.findAll(selector).map((line) => line.get('dt').text().split(/\s+≠/)[0]);
  const cells = (label: string) =>
    wrapper
      .findAll('.line')
      .find((line) => line.get('dt').text().startsWith(label))
      ?.findAll('dd')
      .map((cell) => cell.text().replaceAll(/\s/g, ' '));
  return { wrapper, labels, cells };
}

describe('two visits side by side', () => {
  it('stand in the order of their days, each value with its visit', async () => {
    const { cells } = await beside({ weightKg: 23.1 });
    expect(cells('Body weight')).toEqual([
      'Intake, 2026-03-02: 24.0 kg',
      'Follow-up, 2026-03-16: 23.1 kg',
    ]);
  });

  it('mark what differs by a sign and in words, and nothing else', async () => {
    const { labels, wrapper } = await beside({ weightKg: 23.1, signs: ['cough'], muscle: null });
    expect(labels('.line.differs')).toEqual([
      'Body weight',
      'Muscle condition',
      'Signs',
      'Verdict',
    ]);
    for (const line of wrapper.findAll('.line')) {
      const text = line.get('dt').text();
      expect(text.includes('≠') && text.includes('differs')).toBe(
        line.classes().includes('differs'),
      );
    }
  });

  it('say where one of them has nothing', async () => {
    const { cells } = await beside({ signs: ['cough'] });
    expect(cells('Signs')?.[0]).toBe('Intake, 2026-03-02: not noted');
    expect(cells('Signs')?.[1]).toMatch(/cough/i);
  });

  it('leave out on request what reads the same', async () => {
    const { labels, wrapper } = await beside({ weightKg: 23.1 });
    expect(labels('.line')).toContain('Muscle condition');
    await press(wrapper, 'Only what differs');
    expect(labels('.line')).toEqual(['Body weight']);
  });
});

describe('a visit that is read', () => {
  it('leads to the visit before beside it', async () => {
    const { desk, dogId, first, second } = await seenTwice({});
    const props = { dogId, visitId: second };
    const { wrapper, router } = await mountAtDesk(VisitPage, deskClient(desk), props);
    open = wrapper;
    await shows(wrapper, 'Show side by side');
    await wrapper.get('form').trigger('submit');
    await router.isReady();
    await expect
      .poll(() => router.currentRoute.value.path)
      .toBe(`/dogs/${dogId}/visits/${second}/beside/${first}`);
  });
});
