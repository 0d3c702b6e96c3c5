// `npm run attack`: the attacks of this folder, the kills of `tests/survival` and the files that come
// and go slowly, in their long form.
// `ATTACK_KILLS=1000` and `ATTACK_CUTS=…` ask for more of the two that are counted.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SOURCE_RUN_FLAGS } from '../support/runtimeFlags.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { status } = spawnSync(
  process.execPath,
  [
    ...SOURCE_RUN_FLAGS,
    join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    'tests/attack',
    'tests/survival',
    'tests/loopback/files.test.ts',
    ...process.argv.slice(2),
  ],
  { cwd: ROOT, stdio: 'inherit', env: { ...process.env, TESTS: 'long' } },
);
process.exit(status ?? 1);
