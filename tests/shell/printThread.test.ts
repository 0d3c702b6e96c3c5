import { expect, test } from 'vitest';
import { createPrinter, threadFile } from '../../electron/service/handouts/printer.ts';
import { print } from '../../electron/service/handouts/print.ts';
import { KIT_SHEET } from '../support/printJob.ts';
import { demandBuild } from './support/boot.ts';

// The thread as built, beside the built service that starts it.
const built = threadFile(new URL('../../out/main/service.js', import.meta.url).href);

test('the built printing thread makes the file that the source makes', async () => {
  demandBuild();
  const printer = createPrinter(built);
  const printed = await printer.print(KIT_SHEET);
  await printer.close();
  expect(printed).toEqual(await print(KIT_SHEET));
});
