import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readAudit, stops } from './dependencies/findings.ts';
import { isAllowed } from './dependencies/licence.ts';
import {
  closure,
  importedPackages,
  isMitText,
  shippedPackages,
  type Lock,
  type ShippedPackage,
} from './dependencies/shipped.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const LOCK: Lock = {
  packages: {
    '': { dependencies: { a: '1' }, devDependencies: { tool: '1' } },
    'node_modules/a': { dependencies: { b: '1' }, optionalDependencies: { 'not-here': '1' } },
    'node_modules/a/node_modules/b': { dependencies: { c: '1', a: '1' } },
    'node_modules/b': { dependencies: { tool: '1' } },
    'node_modules/c': {},
    'node_modules/@x/y': {},
    'node_modules/tool': {},
  },
};

describe('what is shipped', () => {
  test('is what the packages need, found as Node finds it, round in circles too', () => {
    expect([...closure(LOCK, ['a'])].sort()).toEqual([
      'node_modules/a',
      'node_modules/a/node_modules/b',
      'node_modules/c',
    ]);
  });

  test('includes what the page imports, whatever list it stands in', () => {
    const source = `
      import { ref } from 'vue';
      import './own.ts';
      import type { X } from "@x/y/deep";
      const late = await import('pdfjs-dist/legacy/build/pdf.mjs');
      @import '@fontsource/z/400.css';`;
    expect(importedPackages(source)).toEqual(['vue', '@x/y', 'pdfjs-dist', '@fontsource/z']);
  });

  test('comes with a hash of everything, the Node it runs on too, and no script fetches more', () => {
    const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { integrity?: string; hasInstallScript?: true; version?: string }>;
    };
    const { '': _own, ...fetched } = packages;
    const names = Object.keys(fetched);
    expect(names.filter((name) => !/^sha512-/.test(fetched[name]!.integrity ?? ''))).toEqual([]);
    const { allowScripts, optionalDependencies } = JSON.parse(
      readFileSync(join(ROOT, 'package.json'), 'utf8'),
    ) as Record<string, Record<string, unknown>>;
    const scripted = names.filter((name) => fetched[name]!.hasInstallScript === true);
    expect(scripted.map((name) => allowScripts![name.replace('node_modules/', '')])).toEqual(
      scripted.map(() => false),
    );
    for (const [name, version] of Object.entries(optionalDependencies!)) {
      expect(fetched[`node_modules/${name}`]?.version).toBe(version);
      expect(version).toMatch(/^24\./);
    }
  });

  test('holds every dependency of ours, the framework of the page, and Electron', () => {
    const shipped = shippedPackages(ROOT);
    const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    const by = (name: string) => shipped.find((one) => one.name === name)?.by;
    for (const name of Object.keys(dependencies)) expect(by(name), name).toBe('service');
    for (const name of ['vue', 'vue-router', 'pinia', 'pdfjs-dist', 'reka-ui']) {
      expect(by(name), name).toBe('page');
    }
    expect(by('electron')).toBe('runtime');
    for (const name of ['vitest', 'electron-builder', 'fast-check', 'eslint']) {
      expect(by(name), name).toBeUndefined();
    }
  });
});

// Expressions as SPDX 2.3, annex D, writes them (M).
describe('a licence', () => {
  test.each([
    'MIT',
    '(MIT)',
    'MIT OR GPL-3.0-only',
    '(GPL-2.0-only OR MIT) AND Zlib',
    'GPL-3.0-only AND MIT OR ISC',
    '(MIT AND Zlib)',
  ])('%s is allowed', (expression) => expect(isAllowed(expression)).toBe(true));

  test.each([
    null,
    '',
    'GPL-3.0-only',
    'MIT AND GPL-3.0-only',
    'MIT AND (GPL-3.0-only OR AGPL-3.0-only)',
    'GPL-2.0-only WITH Classpath-exception-2.0',
    'SEE LICENSE IN LICENSE.txt',
    'UNLICENSED',
    'MIT OR',
    '(MIT',
    'MIT)',
    'MIT ISC',
    'mit',
    '__proto__',
  ])('%j is not', (expression) => expect(isAllowed(expression)).toBe(false));

  test('that is only a text is MIT when it is all of MIT', () => {
    const text = readFileSync(join(ROOT, 'node_modules', 'png-js', 'LICENSE'), 'utf8');
    expect(isMitText(text)).toBe(true);
    expect(isMitText(`${text}\nNot for commercial use.`)).toBe(false);
    expect(isMitText(text.replace('free of charge', 'for a fee'))).toBe(false);
    expect(isMitText('MIT License')).toBe(false);
  });

  test('is on the list for everything that is shipped', () => {
    const { status, stdout } = run('licences');
    expect(stdout).toMatch(/\d+ packages are shipped; 0 with a licence not on the list\.\n$/);
    expect(status).toBe(0);
  });
});

const SHIPPED: ShippedPackage[] = [
  { name: 'a', version: '1', path: 'node_modules/a', by: 'service', license: 'MIT' },
];

const report = (vulnerabilities: unknown): string =>
  JSON.stringify({ auditReportVersion: 2, vulnerabilities });

describe('an audit report', () => {
  test.each(['high', 'critical'])('stops at a %s fault of what is shipped', (severity) => {
    const reading = readAudit(report({ a: { severity, nodes: ['node_modules/a'] } }), SHIPPED);
    expect(reading).toEqual({
      kind: 'findings',
      findings: [{ name: 'a', severity, shipped: true }],
    });
    expect(reading.kind === 'findings' && reading.findings.some(stops)).toBe(true);
  });

  test.each([
    ['a moderate fault', 'moderate', ['node_modules/a']],
    ['a fault of a tool', 'critical', ['node_modules/tool']],
    ['the same name elsewhere', 'critical', ['node_modules/tool/node_modules/a']],
  ])('names %s and goes on', (_what, severity, nodes) => {
    const reading = readAudit(report({ a: { severity, nodes } }), SHIPPED);
    expect(reading.kind === 'findings' && reading.findings.map(stops)).toEqual([false]);
  });

  test('without findings is clean', () => {
    expect(readAudit(report({}), SHIPPED)).toEqual({ kind: 'findings', findings: [] });
  });

  // What npm 11 printed for a registry that does not answer the question, and for no network.
  test.each([
    [
      {
        message: '405 Method Not Allowed - POST https://registry.example/x',
        error: { summary: '' },
      },
      '405 Method Not Allowed',
    ],
    [{ error: { code: 'ENOTFOUND', summary: 'request failed' } }, 'request failed'],
    [{ error: {} }, 'no reason given'],
  ])('that is none is told from a clean one: %j', (printed, why) => {
    expect(readAudit(JSON.stringify(printed), SHIPPED)).toEqual({ kind: 'no answer', why });
  });

  test('that is no JSON at all is none', () => {
    expect(readAudit('', SHIPPED)).toMatchObject({ kind: 'no answer' });
    expect(readAudit('npm error', SHIPPED)).toMatchObject({ kind: 'no answer' });
  });

  test('is asked for, and a missing answer is said and passes', () => {
    const { status, stdout } = run('audit');
    if (status === 0)
      expect(stdout).toMatch(/nothing was checked|: 0 with a high or critical fault/);
    else expect(stdout).toMatch(/[1-9]\d* with a high or critical fault/);
  });
});

const run = (tool: string) =>
  spawnSync(process.execPath, [join(ROOT, 'tests', 'tools', `${tool}.ts`)], {
    encoding: 'utf8',
    timeout: 150_000,
  });
