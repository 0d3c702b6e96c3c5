import { describe, expect, it } from 'vitest';
import { reactive } from 'vue';
import { electronTransport } from '../../../renderer/api/electronTransport.ts';
import type { Bridge } from '../../../renderer/api/bridge.ts';

function bridgeWith(call: (input: unknown) => unknown): Bridge {
  const calls = { 'dogs/list': call } as unknown as Bridge['calls'];
  const unused = () => Promise.reject(new Error('unused'));
  return {
    calls,
    saveFile: unused,
    chooseFile: unused,
    chooseFiles: unused,
    dropFile: unused,
    saveProduced: unused,
    onLeave: () => undefined,
  };
}

describe('the transport of the Electron window', () => {
  it('sends plain data, since a reactive object cannot cross the bridge', async () => {
    const transport = electronTransport(
      bridgeWith(async (input) => ({ ok: true, value: structuredClone(input) })),
    );
    const input = reactive({ query: 'Bramble' });
    expect(await transport.call('dogs/list', input)).toEqual({
      ok: true,
      value: { query: 'Bramble' },
    });
  });

  it('answers with a value when the bridge breaks', async () => {
    const transport = electronTransport(bridgeWith(() => Promise.reject(new Error('gone'))));
    const answer = await transport.call('dogs/list', { query: '' });
    expect(answer).toMatchObject({ ok: false, error: { kind: 'unreachable' } });
  });
});
