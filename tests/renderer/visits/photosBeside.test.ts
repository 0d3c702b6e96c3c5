import { Readable } from 'node:stream';
import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { AttachmentKind } from '../../../electron/contract/files/attachment.ts';
import TwoVisitsPage from '../../../renderer/pages/TwoVisitsPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, soundVisit } from '../../service/support/records.ts';
import { pngOf, SMALL_PDF } from '../../support/pictures.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

/** Two visits, the first with photos from the left and from behind, the second from the left too. */
async function photographedTwice() {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const save = async (day: string): Promise<string> => {
    desk.setDay(day);
    const visit = soundVisit(dogId, day);
    return (await desk.ok('visits/save', { id: null, visit, plan: null, food: null })).visit.id;
  };
  const add = async (visitId: string, name: string, kind: AttachmentKind, bytes: Buffer) => {
    const taken = await desk.service.takeIn(name, Readable.from([bytes]), 1e6);
    if (!taken.ok) expect.fail(taken.error.message);
    const { token } = taken.value;
    await desk.ok('attachments/add', { visitId, token, kind, name, thumbnail: null });
  };
  const first = await save('2026-03-02');
  const second = await save('2026-03-16');
  await add(first, 'behind.png', 'photo from behind', pngOf(30, 20));
  await add(first, 'before.png', 'photo from the left', pngOf(40, 20));
  await add(second, 'after.png', 'photo from the left', pngOf(50, 20));
  await add(second, 'letter.pdf', 'letter of the vet', SMALL_PDF);
  const props = { dogId, visitId: first, besideId: second };
  const { wrapper } = await mountAtDesk(TwoVisitsPage, deskClient(desk), props);
  open = wrapper;
  await shows(wrapper, 'Photos and letters');
  const rows = () =>
    wrapper
      .get('section.files')
      .findAll('.line')
      .map((line) => [
        line.get('dt').text(),
        ...line.findAll('dd').map((cell) => cell.findAll('figcaption').map((one) => one.text())),
      ]);
  return { wrapper, rows };
}

describe('photos of two visits', () => {
  it('stand side by side where they were taken from the same side, each under its day', async () => {
    const { rows, wrapper } = await photographedTwice();
    expect(rows()).toEqual([
      ['Photo from the left', ['before.png'], ['after.png']],
      ['Photo from behind', ['behind.png'], []],
      ['Letter of the vet', [], ['letter.pdf']],
    ]);
    const cells = wrapper.get('section.files').findAll('dd');
    expect(cells[0]!.text()).toContain('2026-03-02');
    expect(cells[1]!.text()).toContain('2026-03-16');
  });

  it('are shown as they are kept, not as their small pictures', async () => {
    const { wrapper } = await photographedTwice();
    await comesTrue(async () => expect(wrapper.findAll('figure img')).toHaveLength(3));
    for (const image of wrapper.findAll('figure img')) {
      expect(image.attributes('src')).toMatch(/^data:image\/png;base64,/);
    }
  });

  it('open large on a press', async () => {
    const { wrapper } = await photographedTwice();
    await press(wrapper, 'Open after.png: Photo from the left, less than 0.1 MB');
    await comesTrue(async () =>
      expect(document.querySelector('[role=dialog] h2')?.textContent).toBe('after.png'),
    );
  });
});
