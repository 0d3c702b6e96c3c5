import { afterEach, describe, expect, it, vi } from 'vitest';
import { loopbackFiles } from '../../../renderer/api/files.ts';
import ExportPart from '../../../renderer/exchange/ExportPart.vue';
import { openOwn } from '../../service/support/desk.ts';
import { deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

/** What the network brings, one answer after the other. */
function network(...answers: (() => Response)[]): void {
  vi.stubGlobal('fetch', async () => answers.shift()!());
}

const brokenOff = (): Response =>
  new Response(
    new ReadableStream({
      start(controller) {
        controller.enqueue(new Uint8Array(10));
        controller.error(new TypeError('network error'));
      },
    }),
  );

describe('a file that ends on its way to the browser', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is said not to be there, and is offered again without being made anew', async () => {
    const desk = await openOwn();
    const files = loopbackFiles({ key: 'key', onRefusedKey: () => undefined });
    const { wrapper: page } = await mountAtDesk(ExportPart, { ...deskClient(desk), files });
    network(brokenOff, () => new Response('whole'));
    await press(page, 'Export all records');
    await shows(page, 'did not arrive whole, so nothing was saved');
    await press(page, 'Save this archive again');
    await shows(page, 'is handed over for saving. It holds 0 dogs');
    expect(page.text()).not.toContain('Save this archive again');
  });

  it('is said to be gone when the service no longer has it', async () => {
    const desk = await openOwn();
    const files = loopbackFiles({ key: 'key', onRefusedKey: () => undefined });
    const { wrapper: page } = await mountAtDesk(ExportPart, { ...deskClient(desk), files });
    network(() => new Response(null, { status: 404 }));
    await press(page, 'Export all records');
    await shows(page, 'is no longer kept. Make it again.');
  });
});
