import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The part of package-lock.json (version 3) that is read here. */
export interface Lock {
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

export interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

/** A package that reaches the practitioner's machine, and by which way. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  /** Its folder in the lock, e.g. `node_modules/zod`. */
  readonly path: string;
  readonly by: ShippedBy;
  readonly license: string | null;
}

/** Beside the service, inside the page's bundle, or as the window's own runtime. */
export type ShippedBy = 'service' | 'page' | 'runtime';

const RUNTIME = 'electron';
const MODULES = 'node_modules/';

/** Where Node finds `name` for the package at `from`: the nearest folder upwards. Null for none. */
function resolved(lock: Lock, name: string, from: string): string | null {
  for (let at = from; ;) {
    const path = at === '' ? `${MODULES}${name}` : `${at}/${MODULES}${name}`;
    if (path in lock.packages) return path;
    if (at === '') return null;
    const cut = at.lastIndexOf(`/${MODULES}`);
    at = cut === -1 ? '' : at.slice(0, cut);
  }
}

/** The folders of these packages and of all they depend on. */
export function closure(lock: Lock, names: readonly string[], from = ''): Set<string> {
  const found = new Set<string>();
  const open = names.map((name): [string, string] => [name, from]);
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const path = resolved(lock, ...next);
    // An optional package of another system is in nobody's package.
    if (path === null || found.has(path)) continue;
    found.add(path);
    const { dependencies, optionalDependencies } = lock.packages[path]!;
    const needed = Object.keys({ ...dependencies, ...optionalDependencies });
    open.push(...needed.map((name): [string, string] => [name, path]));
  }
  return found;
}

const IMPORT = /(?:from|import|@import)\s*\(?\s*['"]([^'"./][^'"]*)['"]/g;

/** The packages that a source text imports, without what is inside them. */
export function importedPackages(source: string): string[] {
  const names = [...source.matchAll(IMPORT)].map(([, specifier]) => specifier!);
  return names.map((name) =>
    name
      .split('/')
      .slice(0, name.startsWith('@') ? 2 : 1)
      .join('/'),
  );
}

/** The packages that the page's sources name; its bundle carries them and what they need. */
function packagesOfThePage(root: string): string[] {
  const folder = join(root, 'renderer');
  const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|vue|css)$/.test(name))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  return [...new Set(sources.flatMap(importedPackages))].sort();
}

function licenseOf(root: string, path: string, locked: LockedPackage): string | null {
  const folder = join(root, path);
  const manifest = join(folder, 'package.json');
  if (!existsSync(manifest)) return locked.license ?? null;
  const { license } = JSON.parse(readFileSync(manifest, 'utf8')) as { license?: unknown };
  if (typeof license === 'string') return license;
  return locked.license ?? licenceOfTexts(folder);
}

/** For a package that names no licence but brings its text: MIT is told by its own words. */
function licenceOfTexts(folder: string): string | null {
  const names = readdirSync(folder).filter((name) => /^licen[cs]e(\.(md|txt))?$/i.test(name));
  const texts = names.map((name) => readFileSync(join(folder, name), 'utf8'));
  return texts.some(isMitText) ? 'MIT' : null;
}

/** The grant and the condition of the MIT licence, and no second licence beside it. */
export function isMitText(text: string): boolean {
  const words = text.replace(/\s+/g, ' ').trim();
  return (
    words.startsWith('MIT License') &&
    words.includes(
      'Permission is hereby granted, free of charge, to any person obtaining a copy',
    ) &&
    words.includes('The above copyright notice and this permission notice shall be included') &&
    words.endsWith('DEALINGS IN THE SOFTWARE.')
  );
}

/** Everything of package-lock.json that is shipped, in order of name. */
export function shippedPackages(root: string): ShippedPackage[] {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as Lock;
  const own = Object.keys(lock.packages['']?.dependencies ?? {});
  const ways: [ShippedBy, Iterable<string>][] = [
    // Only the runtime itself is packed, not what its installer needs.
    ['runtime', [`${MODULES}${RUNTIME}`]],
    ['page', closure(lock, packagesOfThePage(root))],
    ['service', closure(lock, own)],
  ];
  const byPath = new Map(ways.flatMap(([by, paths]) => [...paths].map((path) => [path, by])));
  return [...byPath]
    .map(([path, by]) => {
      const locked = lock.packages[path]!;
      return {
        name: path.slice(path.lastIndexOf(MODULES) + MODULES.length),
        version: locked.version ?? '',
        path,
        by,
        license: licenseOf(root, path, locked),
      };
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}
