import { randomUUID } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import {
  createPrinter,
  threadFile,
  type Printer,
} from '../../../electron/service/handouts/printer.ts';
import { print, type PrintJob } from '../../../electron/service/handouts/print.ts';
import { KIT_SHEET } from '../../support/printJob.ts';
import { temporaryFolder, testService } from '../support/desk.ts';

const open: Printer[] = [];
afterEach(async () => {
  for (const made of open.splice(0)) await made.close();
});

const printer = (file?: URL): Printer => {
  const made = createPrinter(file);
  open.push(made);
  return made;
};

/** A thread that prints nothing and says as the number of pages which job it was. */
function counting(): URL {
  const file = join(temporaryFolder(), 'counts.mjs');
  writeFileSync(
    file,
    `import { parentPort } from 'node:worker_threads';
     let pages = 0;
     parentPort.on('message', ({ id }) =>
       parentPort.postMessage({ kind: 'printed', id, printed: { base64: '', pages: ++pages } }));
     parentPort.postMessage({ kind: 'ready' });`,
  );
  return pathToFileURL(file);
}

describe('the printer', () => {
  test('makes in its thread the file that is made without one', async () => {
    const { print: printIt } = printer();
    const printed = await printIt(KIT_SHEET);
    expect(printed).toEqual(await print(KIT_SHEET));
    expect(Buffer.from(printed.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('says what is wrong and prints the next one', async () => {
    const { print: printIt } = printer();
    await expect(printIt({ ...KIT_SHEET, fontsFolder: '/nowhere' })).rejects.toThrow(
      'no such file',
    );
    expect((await printIt(KIT_SHEET)).pages).toBeGreaterThan(0);
  });

  test('prints without a thread where none starts', async () => {
    const { print: printIt } = printer(pathToFileURL(join(temporaryFolder(), 'missing.js')));
    expect(await printIt(KIT_SHEET)).toEqual(await print(KIT_SHEET));
  });

  test('does not print twice what made its thread end, and starts another', async () => {
    const file = join(temporaryFolder(), 'ends.mjs');
    writeFileSync(
      file,
      `import { parentPort } from 'node:worker_threads';
       parentPort.on('message', () => process.exit(1));
       parentPort.postMessage({ kind: 'ready' });`,
    );
    const { print: printIt } = printer(pathToFileURL(file));
    await expect(printIt(KIT_SHEET)).rejects.toThrow('ended');
    await expect(printIt(KIT_SHEET)).rejects.toThrow('ended');
  });

  test('prints the same once, until something else is printed or it is to be forgotten', async () => {
    const { print: printIt, forget } = printer(counting());
    const letter: PrintJob = { ...KIT_SHEET, language: 'fr' };
    const first = printIt(KIT_SHEET);
    expect([await first, await printIt(KIT_SHEET)]).toMatchObject([{ pages: 1 }, { pages: 1 }]);
    expect([await printIt(letter), await printIt(KIT_SHEET)]).toMatchObject([
      { pages: 2 },
      { pages: 3 },
    ]);
    forget();
    expect(await printIt(KIT_SHEET)).toMatchObject({ pages: 4 });
  });

  test('lets a print under way finish when it closes', async () => {
    const closing = createPrinter();
    const printing = closing.print(KIT_SHEET);
    await closing.close();
    expect((await printing).pages).toBeGreaterThan(0);
  });

  test('finds its thread beside itself, as source and built', () => {
    expect(threadFile('file:///app/handouts/printer.ts').pathname).toBe(
      '/app/handouts/printThread.ts',
    );
    expect(threadFile('file:///app/out/main/service.js').pathname).toBe(
      '/app/out/main/printThread.js',
    );
  });
});

test('the service answers while it prints', async () => {
  const desk = testService();
  await desk.ok('app/open', { which: 'demo' });
  const [dog] = await desk.ok('dogs/list', { query: 'Bramble' });
  const order: string[] = [];
  const printing = desk
    .ok('handouts/bundle', {
      dogId: dog!.id,
      paper: null,
      kinds: ['running-plan', 'feeding-sheet', 'progress-report', 'vet-letter'],
    })
    .then(({ pages }) => {
      order.push('paper');
      return pages;
    });
  await desk.ok('dogs/list', { query: '' });
  order.push('list');
  expect(await printing).toBeGreaterThanOrEqual(4);
  expect(order).toEqual(['list', 'paper']);
});

test('the service prints ahead once after a start, and refuses a dog it does not have', async () => {
  const desk = testService(temporaryFolder(), '2026-03-02', printer(counting()));
  await desk.ok('app/open', { which: 'demo' });
  const [dog, other] = await desk.ok('dogs/list', { query: '' });
  const unknown = await desk.service.call('handouts/warmUp', { dogId: randomUUID() });
  expect(unknown).toMatchObject({ ok: false, error: { kind: 'not-found' } });
  await desk.ok('handouts/warmUp', { dogId: dog!.id });
  await desk.ok('handouts/warmUp', { dogId: other!.id });
  const asked = { kinds: null, paper: null };
  const pagesOf = async (dogId: string) =>
    (await desk.ok('handouts/bundle', { dogId, ...asked })).pages;
  // The thread says as the number of pages which job it was; what was printed last is kept.
  expect([await pagesOf(dog!.id), await pagesOf(other!.id)]).toEqual([1, 2]);
});
