import { readdirSync } from 'node:fs';
import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { blankPractice } from '../../../electron/contract/records/forms.ts';
import { clientFactsOf } from '../../../electron/contract/records/facts.ts';
import type { Track } from '../../../core/index.ts';
import { boutLegs, walked } from '../../core/track/walker.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { exported, imported } from '../exchange/support/bundle.ts';
import { dogOf, seenWithPlan, soundVisit } from '../support/records.ts';
import { gpxOf } from './gpx.ts';

async function planned() {
  const desk = await openOwn();
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { plan } = await seenWithPlan(desk, dogId, '2026-03-02');
  return { desk, dogId, sessions: plan!.ramp.weeks.flatMap((week) => week.sessions) };
}
async function tokenOf(desk: TestDesk, name: string, content: string): Promise<string> {
  const taken = await desk.service.takeIn(name, Readable.from([Buffer.from(content)]), 1e8);
  if (!taken.ok) expect.fail(taken.error.message);
  return taken.value.token;
}
const outing = (day: string, seed: number): Track => {
  const walk = { walkMps: 1.4, runMps: 2.6, errorM: 3, jitterM: 0.3, everyS: 1, seed };
  const startS = new Date(`${day}T07:30:00`).getTime() / 1000;
  return walked({ ...walk, legs: boutLegs(6, 1, 2) }, startS).track;
};

describe('a track that comes back', () => {
  test('is figures of its day, without the place, and nothing is kept', async () => {
    const { desk, dogId } = await planned();
    const token = await tokenOf(desk, 'run.gpx', gpxOf(outing('2026-03-05', 1)));
    const { outings } = await desk.ok('runs/read', { dogId, token });
    expect(outings).toHaveLength(1);
    const [read] = outings;
    expect(read).toMatchObject({ day: '2026-03-05', startsAt: '07:30' });
    expect(read!.outing.runMinutes).toBeCloseTo(6, 0);
    expect(read!.speeds.mps.length).toBeLessThanOrEqual(360);
    expect(JSON.stringify(read)).not.toMatch(/latDeg|lonDeg|elevation/);
    expect((await desk.ok('dogs/file', { dogId })).sessions).toEqual([]);
    const again = await desk.refused('runs/read', { dogId, token });
    expect(again.kind).toBe('not-found');
  });

  test('of two days is an outing of each', async () => {
    const { desk, dogId } = await planned();
    const both = [outing('2026-03-05', 1), outing('2026-03-07', 2)];
    const segments = both.flatMap((track) => track.segments);
    const token = await tokenOf(desk, 'week.gpx', gpxOf({ segments }));
    const { outings } = await desk.ok('runs/read', { dogId, token });
    expect(outings.map(({ day }) => day)).toEqual(['2026-03-05', '2026-03-07']);
  });

  test.each([
    ['no times', gpxOf(outing('2026-03-05', 1)).replaceAll(/<time>[^<]*<.time>/g, ''), 'no times'],
    [
      'entities of its own',
      `<!DOCTYPE gpx [<!ENTITY a "b">]>${gpxOf({ segments: [] })}`,
      'entities',
    ],
    [
      'a clock gone wrong',
      gpxOf({
        segments: [
          Array.from({ length: 60 }, (_, at) => ({
            timeS: 1.77e9 + at * 3000,
            latDeg: 50,
            lonDeg: 8 + at / 1000,
            elevationM: null,
          })),
        ],
      }),
      'more than 24 hours',
    ],
  ])('with %s is refused in a sentence', async (_, content, words) => {
    const { desk, dogId } = await planned();
    const error = await desk.refused('runs/read', {
      dogId,
      token: await tokenOf(desk, 'run.gpx', content),
    });
    expect(error.message).toContain(words);
  });
});

describe('the recording of a run', () => {
  const GPX = gpxOf(outing('2026-03-05', 1));
  async function asked() {
    const made = await planned();
    const { desk, dogId } = made;
    const { client } = await desk.ok('dogs/file', { dogId });
    const { id, revision, ...facts } = client;
    const kept = { ...clientFactsOf(facts), keepRecordings: true };
    await desk.ok('clients/save', { id, basedOn: revision, client: kept });
    return { ...made, client };
  }
  async function taken({ desk, dogId }: Awaited<ReturnType<typeof planned>>) {
    const token = await tokenOf(desk, 'run.gpx', GPX);
    return { token, ...(await desk.ok('runs/read', { dogId, token })) };
  }
  const saved = (desk: TestDesk, dogId: string) =>
    desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dogId, '2026-03-09'),
      plan: null,
      food: null,
    });

  test('is not kept unless the owner’s record asks for it', async () => {
    const made = await planned();
    const { desk, dogId } = made;
    expect((await taken(made)).waits).toBe(false);
    const token = await tokenOf(desk, 'run.gpx', GPX);
    const refused = await desk.refused('runs/keep', { dogId, token });
    expect(refused.message).toContain('does not ask');
    expect(await desk.ok('waiting/list', { dogId })).toEqual([]);
  });

  test('is kept with the next visit, as it came, goes through a bundle and with its owner', async () => {
    const made = await asked();
    const { desk, dogId, client } = made;
    desk.setDay('2026-03-09');
    const { token, waits } = await taken(made);
    expect(waits).toBe(true);
    await desk.ok('runs/keep', { dogId, token });
    // A second file of the same run is no matter.
    await desk.ok('runs/keep', { dogId, token: (await taken(made)).token });
    const { visit } = await saved(desk, dogId);
    const [file, ...others] = await desk.ok('attachments/list', { dogId });
    expect(others).toEqual([]);
    expect(file).toMatchObject({
      visitId: visit.id,
      name: 'run.gpx',
      mediaType: 'application/gpx+xml',
      thumbnail: null,
    });
    const shown = await desk.ok('attachments/show', { id: file!.id });
    expect(Buffer.from(shown.base64, 'base64').toString()).toBe(GPX);

    const there = await openOwn();
    there.setDay('2026-03-09');
    await imported(there, await exported(desk));
    const [brought] = await there.ok('attachments/list', { dogId });
    const again = await there.ok('attachments/show', { id: brought!.id });
    expect(again.base64).toBe(shown.base64);

    await desk.ok('clients/erase', {
      clientId: client.id,
      confirmName: client.name,
      ground: 'asked by the owner',
      insideRetentionConfirmed: true,
    });
    const left = readdirSync(desk.folder, { recursive: true, encoding: 'utf8' });
    expect(left.filter((name) => name.startsWith('files/') && /[0-9a-f]{64}/.test(name))).toEqual(
      [],
    );
  });

  test('is let go of where it is left out', async () => {
    const made = await asked();
    const { desk, dogId } = made;
    const { token } = await taken(made);
    await desk.ok('runs/leave', { dogId, token });
    expect((await desk.refused('runs/keep', { dogId, token })).kind).toBe('not-found');
  });

  test('comes in no other way, and no other file comes in as one', async () => {
    const made = await asked();
    const { desk, dogId } = made;
    const token = await tokenOf(desk, 'run.gpx', GPX);
    const other = { dogId, kind: 'other', name: 'run.gpx', thumbnail: null } as const;
    expect((await desk.refused('waiting/add', { ...other, token })).message).toContain('JPEG');
    const broken = await tokenOf(desk, 'run.gpx', GPX.slice(0, -20));
    const refused = await desk.refused('runs/keep', { dogId, token: broken });
    expect(refused.message).toContain('not well-formed');
  });
});

describe('the table to fill in', () => {
  test('goes out in the owner’s language and comes back as results', async () => {
    const { desk, dogId, sessions } = await planned();
    const made = await desk.ok('runs/table', { dogId, language: 'de' });
    expect(made.fileName).toBe('Rusk-runs-2026-03-02.csv');
    const lines = Buffer.from(made.base64, 'base64').toString().trim().split('\r\n');
    expect(lines).toHaveLength(sessions.length + 1);
    // As a spreadsheet of the country writes it: semicolons, days of its own.
    const filled = [
      lines[0]!.replaceAll(',', ';'),
      `${sessions[0]!.day};x;ja;;1;nass`,
      `${sessions[1]!.day};x;teils;4,5;6;`,
      `${sessions[2]!.day};x;;;;`,
      `${sessions[0]!.day};x;constructor;;;`,
      `morgen;x;ja;;;`,
    ].join('\n');
    desk.setDay('2026-04-01');
    const token = await tokenOf(desk, 'runs.csv', filled);
    const { rows } = await desk.ok('runs/read', { dogId, token });
    expect(rows.map(({ told }) => told)).toMatchObject([
      { day: sessions[0]!.day, outcome: 'done', nextDay: 'normal', runMinutes: null, note: 'nass' },
      { day: sessions[1]!.day, outcome: 'shortened', runMinutes: 4.5, signs: ['lameness'] },
      null,
      null,
    ]);
    expect(rows[2]!.problem).toContain('Done must be');
    expect(rows[3]!.problem).toContain('The day must be written');
  });
});
