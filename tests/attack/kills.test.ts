import { beforeAll, expect, test } from 'vitest';
import { temporaryFolder, testService } from '../service/support/desk.ts';
import { start, wait } from '../survival/support/run.ts';
import { chance } from './support/chance.ts';
import { judge, noTally, type Tally } from './support/claims.ts';
import { long } from '../support/form.ts';

// A process that saves through the public calls is killed (SIGKILL) at random, again and again on the
// same records. Every save it acknowledged must be there, whole, and the records must open.

const KILLS = Number(process.env['ATTACK_KILLS'] ?? (long ? 300 : 12));

// Only a process that ends by itself leaves what it compiled to the next.
beforeAll(() => start('tryAll', temporaryFolder()).ended(), 60_000);

async function killAgainAndAgain(kills: number, seed: number, tally: Tally): Promise<void> {
  const folder = temporaryFolder();
  const random = chance(seed);
  for (let run = 1; run <= kills; run++) {
    const worker = start('anything', folder, String(seed * 10_000 + run));
    // Three of four have saved before; the fourth may be killed in its very first call.
    await worker.said(run % 4 === 0 ? 'ready' : 'ack');
    await wait(random() * 150);
    await worker.kill();
    judge(folder, worker.lines, tally);
    const refused = worker.lines.filter((line) => /^(refused|log)/.test(line));
    expect(refused).toEqual([]);
  }
  const after = testService(folder);
  expect((await after.ok('app/status', {})).trouble).toBeNull();
  await after.service.close();
}

test(
  `killed ${KILLS} times at random, it has kept whole all it acknowledged`,
  { timeout: KILLS * 8_000 },
  async () => {
    const tally = noTally();
    await Promise.all([1, 2].map((seed) => killAgainAndAgain(KILLS / 2, seed, tally)));
    console.log(
      `Killed at random: ${KILLS} times; ${tally.acknowledged} acknowledged saves, ` +
        `${tally.lost} lost, ${tally.half} half, ${tally.faulty} integrity failures`,
    );
    expect(tally).toMatchObject({ lost: 0, half: 0, faulty: 0 });
    expect(tally.acknowledged).toBeGreaterThan(KILLS);
  },
);
