import { describe, expect, it } from 'vitest';
import FilesSection from '../../../renderer/files/FilesSection.vue';
import UnfinishedPart from '../../../renderer/desk/UnfinishedPart.vue';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, soundVisit } from '../../service/support/records.ts';
import { pngOf, SMALL_PDF } from '../../support/pictures.ts';
import {
  comesTrue,
  deskClient,
  mountAtDesk,
  press,
  shows,
  type FileAtHand,
} from '../support/atDesk.ts';

/** The files of a dog's new visit, with a file at hand. */
async function newVisit() {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Odette Fenn', 'Bramble');
  let atHand: readonly FileAtHand[] = [];
  const client = deskClient(desk, () => atHand);
  const { wrapper: page, notice } = await mountAtDesk(FilesSection, client, {
    dogId,
    visitId: null,
  });
  return {
    desk,
    dogId,
    client,
    page,
    notice,
    async add(...files: readonly FileAtHand[]) {
      atHand = files;
      await press(page, 'Add files…');
      await comesTrue(async () => expect(page.text()).not.toContain('Adding…'));
    },
  };
}
const LETTER = { name: 'letter.pdf', content: SMALL_PDF };
const SCAN = { name: 'scan.png', content: pngOf(20, 10) };

describe('photos and letters of a visit that is not saved yet', () => {
  it('are chosen at once, with the sentence of what becomes of them', async () => {
    const { desk, dogId, page, notice, add } = await newVisit();
    await shows(page, 'Kept at once, and added when the visit is saved.');
    await add(LETTER);
    await shows(page, 'letter.pdf');
    expect(notice.text).toBe('letter.pdf is kept; it is added when the visit is saved.');
    await add(SCAN);
    await shows(page, 'scan.png');
    const { visit } = await desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dogId, '2026-03-01'),
      plan: null,
      food: null,
    });
    await page.setProps({ visitId: visit.id });
    await shows(page, 'Open letter.pdf');
    expect(page.text()).toContain('Open scan.png');
  });

  it('are there again when the visit is opened later', async () => {
    const { client, dogId, page, add } = await newVisit();
    await add(LETTER);
    page.unmount();
    const { wrapper: later } = await mountAtDesk(FilesSection, client, { dogId, visitId: null });
    await shows(later, 'letter.pdf');
  });

  it('can be left out and taken in again', async () => {
    const { desk, dogId, page, add } = await newVisit();
    await add(LETTER);
    await press(page, 'Leave out letter.pdf');
    await shows(page, 'left out: it goes for good when the visit is saved');
    await press(page, 'Take in again letter.pdf');
    await shows(page, 'Leave out letter.pdf');
    expect(await desk.ok('waiting/list', { dogId })).toMatchObject([{ leftOut: false }]);
  });

  it('are added each in turn when several are chosen; what is refused is named', async () => {
    const { desk, dogId, page, notice, add } = await newVisit();
    const program = { name: 'program.pdf', content: Buffer.from('MZ') };
    await add(SCAN, program, LETTER);
    await shows(page, 'letter.pdf');
    const waiting = await desk.ok('waiting/list', { dogId });
    expect(waiting.map(({ name }) => name)).toEqual(['scan.png', 'letter.pdf']);
    const problems = page.findAll('.problem').map((problem) => problem.text());
    expect(problems).toEqual([expect.stringMatching(/^program\.pdf: /)]);
    expect(notice.text).toBe('2 files are kept; they are added when the visit is saved.');
  });

  it('the same file twice is refused by name', async () => {
    const { page, add } = await newVisit();
    await add(LETTER);
    await add(LETTER);
    await shows(page, 'letter.pdf: This file waits for the visit already, as “letter.pdf”.');
  });

  it('stand among what is unfinished, to be let go of and taken back', async () => {
    const { desk, dogId, client, add } = await newVisit();
    await add(LETTER);
    const lines = await desk.ok('drafts/list', {});
    const { wrapper: part } = await mountAtDesk(UnfinishedPart, client, { lines });
    await shows(part, 'Files chosen for a new visit of Bramble');
    await press(part, 'Discard: Files chosen for a new visit of Bramble');
    await shows(part, 'discarded.');
    expect(await desk.ok('waiting/list', { dogId })).toMatchObject([{ leftOut: true }]);
    await press(part, 'Undo');
    await shows(part, 'Odette Fenn');
    expect(await desk.ok('waiting/list', { dogId })).toMatchObject([{ leftOut: false }]);
  });
});

describe('a file at a saved visit', () => {
  it('removed is brought back by the notice; both stand in its history', async () => {
    const { desk, dogId, page, notice, add } = await newVisit();
    await add(LETTER);
    const { visit } = await desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dogId, '2026-03-01'),
      plan: null,
      food: null,
    });
    await page.setProps({ visitId: visit.id });
    await press(page, 'Remove letter.pdf');
    await shows(page, 'Files removed or brought back: 1');
    expect(page.text()).not.toContain('Open letter.pdf');
    await notice.action!.run();
    await shows(page, 'Open letter.pdf');
    await shows(page, 'Files removed or brought back: 2');
  });
});
