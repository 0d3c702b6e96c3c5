// A process that starts the service on the folder it is given, and asks for the first list.
import { keepCompiled } from '../../electron/launch/compiled.mjs';

keepCompiled();
const { ask, startService } = await import('./service.ts');
const service = startService(process.argv[2]!);
await ask(service, 'dogs/list', { query: '' });
// Closing looks whether a backup is due, which is no part of a start.
process.exit(0);
