import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const at = (name: string): string => join(ROOT, 'tests', 'shell', 'standIn', name);

let folder: string;
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a report in JSON, asserted below
let seen: any;

function boot(env: Record<string, string>): unknown {
  const output = execFileSync(process.execPath, ['--import', at('register.mjs'), at('probe.mjs')], {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    timeout: 60_000,
  });
  return JSON.parse(output.trim().split('\n').at(-1)!);
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-shell-'));
  seen = boot({ TROTWELL_DATA: join(folder, 'data'), STAND_IN_SAVE: join(folder, 'saved.pdf') });
}, 90_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The built main bundle, booted against a stand-in of the `electron` module: the runtime itself is
// not run here.
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
    expect(seen.preloadExists).toBe(true);
  });

  test('denies navigation, windows, webviews and permissions', () => {
    expect(Object.values(seen.prevented)).toEqual([true, true, true, true]);
    expect(seen.windowOpen).toEqual([{ action: 'deny' }, { action: 'deny' }, { action: 'deny' }]);
    expect(seen.openedOutside).toEqual(['https://elsewhere.example/']);
    expect(seen.permissions).toEqual({ request: false, check: false, device: false });
  });

  test('serves only the front end, with the strict policy', () => {
    expect(seen.index.status).toBe(200);
    expect(seen.index.body).toContain('<!doctype html>');
    expect(seen.index.headers['content-security-policy']).toContain("default-src 'none'");
    expect(seen.index.headers['x-content-type-options']).toBe('nosniff');
    expect(seen.outside.status).toBe(404);
    expect(seen.other.status).toBe(404);
  });

  test('registers every contract call, and each answers', () => {
    expect(Object.keys(seen.answers).sort()).toEqual([...CALL_NAMES].sort());
    for (const answer of Object.values(seen.answers)) {
      expect(typeof (answer as { ok: unknown }).ok).toBe('boolean');
    }
    expect(seen.answers['app/status']).toMatchObject({ ok: true, value: { open: null } });
    expect(seen.opened).toMatchObject({ ok: true, value: { open: 'own' } });
  });

  test('answers no stranger', () => {
    expect(seen.strangers).toHaveLength(6);
    for (const answer of seen.strangers) expect(answer.ok).toBe(false);
    expect(seen.savedByStranger).toBe(false);
  });

  test('saves a file where the dialogue says, whatever the page suggests', () => {
    expect(seen.saved).toBe(true);
    expect(seen.suggested).not.toContain('/');
    expect(readFileSync(join(folder, 'saved.pdf'), 'utf8')).toBe('%PDF-');
  });

  test('keeps its own files out of the folder of records and closes the service when it quits', () => {
    expect(seen.paths.sessionData).toBe(join(folder, 'data', 'window'));
    expect(seen.serviceEnded).toBe(0);
    expect(readdirSync(join(folder, 'data'))).toEqual(['trotwell.sqlite']);
  });

  test('gives way to a first instance', () => {
    expect(boot({ TROTWELL_DATA: join(folder, 'second'), STAND_IN_SECOND: '1' })).toEqual({
      quit: true,
      lockAsked: true,
      windows: 0,
    });
    expect(existsSync(join(folder, 'second'))).toBe(false);
  });

  test('carries no schema library in its preload', () => {
    const preload = readFileSync(join(ROOT, 'out', 'preload', 'preload.cjs'), 'utf8');
    expect(preload.length).toBeLessThan(10_000);
    expect(preload).toContain('exposeInMainWorld');
    expect(preload).not.toMatch(/\bipcRenderer\.(on|send)\b/);
  });
});
