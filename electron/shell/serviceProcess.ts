import type { CallName } from '../contract/contract.ts';
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
  const answer = await service.call(message.name as CallName, message.input as never);
  port.postMessage({ id: message.id, answer } satisfies FromService);
}
