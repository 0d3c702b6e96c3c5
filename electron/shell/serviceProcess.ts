import { Readable } from 'node:stream';
import type { CallName } from '../contract/contract.ts';
import type { Answer } from '../contract/errors.ts';
import { createService } from '../service/service.ts';
import type { FromService, ServiceSettings, ToService } from './messages.ts';

// Entry of the utility process: the service, answering messages instead of requests.

const settings = JSON.parse(process.argv.at(-1)!) as ServiceSettings;
const service = createService({
  ...settings,
  clock: () => new Date(),
  log: (line) => console.error(line),
});

const port = process.parentPort;

port.on('message', ({ data }) => void receive(data as ToService));

async function receive(message: ToService): Promise<void> {
  if (message.kind === 'close') {
    await service.close();
    process.exit(0);
  }
  port.postMessage({ id: message.id, answer: await answer(message) } satisfies FromService);
}

function answer(message: Exclude<ToService, { kind: 'close' }>): Promise<Answer<unknown>> {
  if (message.kind === 'call') {
    return service.call(message.name as CallName, message.input as never);
  }
  if (message.kind === 'write-out') return service.writeOut(message.token, message.path);
  const { name, from, maxBytes } = message;
  return service.takeIn(name, typeof from === 'string' ? from : Readable.from([from]), maxBytes);
}
