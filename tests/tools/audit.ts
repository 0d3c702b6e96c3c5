// `npm run audit`: asks the registry, through npm, for known faults of what is shipped. Fails on a
// high or critical one; without an answer it says so and passes, since nothing is known then.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { readAudit, stops } from './dependencies/findings.ts';
import { shippedPackages } from './dependencies/shipped.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const LIMIT_MS = 120_000;

/** npm's report of everything; `--omit=dev` would leave out Electron and what the page bundles. */
function askNpm(): string {
  const { npm_execpath: script } = process.env;
  const [command, before] = script ? [process.execPath, [script]] : ['npm', []];
  const { stdout } = spawnSync(command, [...before, 'audit', '--json'], {
    cwd: ROOT,
    encoding: 'utf8',
    timeout: LIMIT_MS,
    stdio: ['ignore', 'pipe', 'ignore'],
    maxBuffer: 64 * 1024 * 1024,
  });
  return stdout ?? '';
}

const shipped = shippedPackages(ROOT);
const reading = readAudit(askNpm(), shipped);
if (reading.kind === 'no answer') {
  console.log(`The registry gave no audit report (${reading.why}); nothing was checked.`);
} else {
  for (const finding of reading.findings) {
    const where = finding.shipped ? 'shipped' : 'a tool, not shipped';
    console.log(`${finding.severity.padEnd(9)} ${finding.name} (${where})`);
  }
  const stopping = reading.findings.filter(stops);
  console.log(
    `${shipped.length} shipped packages checked: ${stopping.length} with a high or critical fault, ` +
      `${reading.findings.length} findings in all.`,
  );
  process.exitCode = stopping.length === 0 ? 0 : 1;
}
