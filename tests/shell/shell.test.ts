import {
  existsSync,
  mkdtempSync,
  readdirSync,
  linkSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { boot, ROOT } from './support/boot.ts';

let folder: string;
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a report in JSON, asserted below
let seen: any;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-shell-'));
  writeFileSync(join(folder, 'weights.csv'), 'day;kg');
  // Another name of the same file shows whether what lay there is written over or replaced.
  writeFileSync(join(folder, 'saved.pdf'), 'an older sheet');
  linkSync(join(folder, 'saved.pdf'), join(folder, 'older.pdf'));
  seen = boot({
    TROTWELL_DATA: join(folder, 'data'),
    STAND_IN_SAVE: join(folder, 'saved.pdf'),
    STAND_IN_CHOOSE: join(folder, 'weights.csv'),
  });
}, 90_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The built main bundle, booted against a stand-in of the `electron` module, with the built preload
// and the built service in a process of its own. Electron's runtime itself is not run here.
describe('the Electron shell', () => {
  test('opens a sandboxed, isolated window without Node on our own scheme', () => {
    expect(seen.sandboxed).toBe(true);
    expect(seen.url).toBe('trotwell://app/index.html');
    expect(seen.preferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
    });
    expect(seen.preferences.enableBlinkFeatures).toBeUndefined();
    const [{ scheme, privileges }] = seen.schemes;
    expect(scheme).toBe('trotwell');
    expect(privileges.bypassCSP ?? false).toBe(false);
    expect(privileges.corsEnabled ?? false).toBe(false);
  });

  test('denies navigation, windows, webviews and permissions, all but copying', () => {
    expect(Object.values(seen.prevented)).toEqual([true, true, true, true]);
    expect(seen.windowOpen).toEqual(Array(4).fill({ action: 'deny' }));
    expect(seen.openedOutside).toEqual([]);
    const none = { request: false, check: false, device: false };
    const { others, copying, copyingInFrame, copyingElsewhere } = seen.permissions;
    expect(new Set(others.map((one: object) => JSON.stringify(one)))).toEqual(
      new Set([JSON.stringify(none)]),
    );
    // But our own page may put text into the clipboard.
    expect(copying).toEqual({ request: true, check: true, device: false });
    expect([copyingInFrame, copyingElsewhere]).toEqual([none, none]);
  });

  test('serves only the front end, with the strict policy', () => {
    expect(seen.index.status).toBe(200);
    expect(seen.index.body).toContain('<!doctype html>');
    for (const reply of [seen.index, seen.outside, seen.other]) {
      const policy = reply.headers['content-security-policy'];
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      expect(reply.headers['x-content-type-options']).toBe('nosniff');
    }
    expect(seen.outside.status).toBe(404);
    expect(seen.other.status).toBe(404);
  });

  test('gives the page one function per contract call, the five about files and the one about leaving, no more', () => {
    expect(seen.bridgeName).toBe('trotwell');
    expect(seen.bridge.top.sort()).toEqual([
      'calls',
      'chooseFile',
      'chooseFiles',
      'dropFile',
      'onLeave',
      'saveFile',
      'saveProduced',
    ]);
    expect(seen.bridge.calls.sort()).toEqual([...CALL_NAMES].sort());
    expect(seen.channels).toHaveLength(CALL_NAMES.length + 6);
  });

  test('answers every contract call from the page, through preload, main and service', () => {
    expect(seen.page.first).toMatchObject({ ok: true, value: { open: null } });
    for (const name of CALL_NAMES) {
      const answer = seen.page.answers[name];
      if (!answer.ok) expect(['input', 'no-practice']).toContain(answer.error.kind);
    }
    expect(seen.page.answers['app/status'].ok).toBe(true);
    expect(seen.page.opened).toMatchObject({ ok: true, value: { open: 'own' } });
  });

  test('answers no stranger', () => {
    expect(seen.page.strangers).toHaveLength(6);
    for (const answer of seen.page.strangers) {
      expect(answer).toMatchObject({
        ok: false,
        error: { message: expect.stringContaining('may not ask') },
      });
    }
    expect(seen.page.savedByStrangers).toEqual(Array(6).fill(false));
  });

  test('saves a file where the dialogue says, whatever the page suggests', () => {
    expect(seen.saving.written).toBe(true);
    expect(seen.saving.suggested).toEqual(['plan.pdf', 'xLöwe plan.pdf', 'weight.csv']);
    expect(readFileSync(join(folder, 'saved.pdf'), 'utf8')).toBe('%PDF-');
  });

  test('writes it beside what lay there, which is whole until the new file is', () => {
    expect(readFileSync(join(folder, 'older.pdf'), 'utf8')).toBe('an older sheet');
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  test('saves the kinds of file it knows, each under its own ending', () => {
    expect(seen.saving.otherKinds).toEqual(Array(5).fill(false));
    expect(seen.saving.filters).toEqual([
      [{ name: 'PDF', extensions: ['pdf'] }],
      [{ name: 'PDF', extensions: ['pdf'] }],
      [{ name: 'Table of numbers', extensions: ['csv'] }],
    ]);
  });

  test('does not call a cancelled or failed saving saved, and says why it failed', () => {
    expect(seen.saving).toMatchObject({ cancelled: false, notText: false, refused: false });
    expect(seen.messages).toEqual(['The file could not be written.']);
  });

  test('hands over chosen and dropped files as tokens, and no path in either direction', () => {
    const { files } = seen;
    expect(files.cancelled).toEqual({ ok: true, value: null });
    expect(files.chosen).toEqual({
      ok: true,
      value: { token: expect.any(String), name: 'weights.csv', bytes: 6 },
    });
    expect(files.filters).toEqual([{ name: 'Table (CSV)', extensions: ['csv', 'txt'] }]);
    // One that cannot be read stops none of the others.
    expect(files.several).toEqual({
      ok: true,
      value: [
        { name: 'weights.csv.missing', taken: expect.objectContaining({ ok: false }) },
        { name: 'weights.csv', taken: expect.objectContaining({ ok: true }) },
      ],
    });
    expect(files.dropped).toMatchObject({ ok: true, value: { name: 'x.pdf', bytes: 3 } });
    expect(JSON.stringify(files)).not.toContain(folder);
    expect(files.missing.error.message).toBe('The file cannot be read. Choose it again.');
    for (const refused of [files.noPurpose, files.path]) {
      expect(refused.ok).toBe(false);
    }
    expect(files.unknown).toBe(false);
    expect(files.strangers).toHaveLength(24);
    for (const answer of files.strangers) expect(answer.ok).toBe(false);
  });

  test('brings its one window to the front at a second start', () => {
    expect(seen.windows).toBe(1);
  });

  test('keeps its own files apart from the records, and closes the service when it quits', () => {
    expect(seen.paths).toEqual({
      userData: join(folder, 'data'),
      sessionData: join(folder, 'data', 'window'),
    });
    expect(seen.serviceEnded).toBe(0);
    expect(readdirSync(join(folder, 'data')).sort()).toEqual([
      'backups',
      'running',
      'trotwell.sqlite',
      'window',
    ]);
    expect(seen.afterQuit).toMatchObject({ ok: false, error: { kind: 'unreachable' } });
  });

  test.skipIf(process.platform === 'win32')('keeps the folder of records to its user', () => {
    expect(statSync(join(folder, 'data')).mode & 0o077).toBe(0);
  });

  test('never starts without the lock of its folder, and says so where nobody holds the records', () => {
    const second = join(folder, 'second');
    expect(boot({ TROTWELL_DATA: second, STAND_IN_SECOND: '1' })).toEqual({
      quit: false,
      exitCode: 1,
      lockAsked: 2,
      messages: [expect.stringContaining('cannot be taken')],
      windows: 0,
    });
    expect(existsSync(join(second, 'trotwell.sqlite'))).toBe(false);
  });

  test('says so when the folder of records cannot be made', () => {
    const file = join(folder, 'a-file');
    writeFileSync(file, '');
    expect(boot({ TROTWELL_DATA: join(file, 'data') })).toMatchObject({
      exitCode: 1,
      messages: [expect.stringContaining('cannot be made')],
      windows: 0,
    });
  });

  test('carries no schema library in its preload, and no way to listen or send but for leaving', () => {
    const preload = readFileSync(join(ROOT, 'out', 'preload', 'preload.cjs'), 'utf8');
    expect(preload.length).toBeLessThan(10_000);
    expect(preload).not.toMatch(/\bipcRenderer\.(once|send|sendSync|postMessage)\b/);
    expect(preload.match(/\bipcRenderer\.on\b/g)).toHaveLength(1);
  });
});
