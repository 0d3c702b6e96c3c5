import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync, writeFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, type TestContext } from 'vitest';
import { temporaryFolder } from '../service/support/desk.ts';
import { start, wait } from '../survival/support/run.ts';
import { chance } from './support/chance.ts';
import { judge, noTally } from './support/claims.ts';
import { long } from '../support/form.ts';

// The records lie on a file system of their own, on a block device that is a file. At some moment the
// worker is halted and the device copied as it is: what the system still held in memory is lost, as
// when the current goes. Then the copy is mounted and looked at. The disk's own cache is not part of
// it: a disk that says "written" of what it has not written lies to every program.

const CUTS = Number(process.env['ATTACK_CUTS'] ?? (long ? 80 : 3));
const DEVICE_BYTES = 48 * 1024 * 1024;

const run = (program: string, ...args: string[]): void =>
  void execFileSync(program, args, { stdio: 'ignore' });

/** A file system in a file, or the test is skipped with the reason. */
function deviceOr(context: TestContext, folder: string): { image: string; place: string } {
  const [image, place] = [join(folder, 'device'), join(folder, 'mounted')];
  mkdirSync(place);
  writeFileSync(image, '');
  truncateSync(image, DEVICE_BYTES);
  try {
    run('mkfs.ext4', '-q', '-F', image);
    // Nothing is written by the passing of time alone while a test lasts.
    run('mount', '-o', 'loop,commit=600', image, place);
  } catch {
    context.skip('No block device can be made here: that takes root on Linux, and ext4.');
  }
  return { image, place };
}

/** What a worker said, and the records as the cut left them, mounted until `judged` is done. */
async function cutOff(seed: number, device: { image: string; place: string }, afterMs: number) {
  const records = join(device.place, 'records');
  const worker = start('anything', records, String(seed));
  await worker.said('ack');
  await wait(afterMs);
  worker.child.kill('SIGSTOP');
  const copy = `${device.image}.cut`;
  copyFileSync(device.image, copy);
  const lines = [...worker.lines];
  await worker.kill();
  return { copy, lines };
}

test(
  `the power cut ${CUTS} times, everything acknowledged is on the disk`,
  { timeout: (CUTS + 1) * 15_000 },
  async (context) => {
    const tally = noTally();
    const random = chance(9);
    for (let cut = 1; cut <= CUTS; cut++) {
      const folder = temporaryFolder();
      const device = deviceOr(context, folder);
      const looked = join(folder, 'looked at');
      mkdirSync(looked);
      try {
        const { copy, lines } = await cutOff(9_000 + cut, device, random() * 400);
        run('mount', '-o', 'loop', copy, looked);
        judge(join(looked, 'records'), lines, tally);
      } finally {
        for (const place of [looked, device.place]) {
          try {
            run('umount', '-l', place);
          } catch {
            // Never mounted.
          }
        }
        rmSync(folder, { recursive: true, force: true });
      }
    }
    console.log(
      `Power cut: ${CUTS} times; ${tally.acknowledged} acknowledged saves, ` +
        `${tally.lost} lost, ${tally.half} half, ${tally.faulty} integrity failures`,
    );
    expect(tally).toMatchObject({ lost: 0, half: 0, faulty: 0 });
    expect(tally.acknowledged).toBeGreaterThan(CUTS);
  },
);
