import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../core/sources.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Figures are built in core; the sheets cite what they tell beside them. */
const code = ['core', 'templates']
  .flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && file !== 'sources.ts')
      .map((file) => readFileSync(join(root, folder, file), 'utf8')),
  )
  .join('\n');

describe('the register of sources', () => {
  // A work that stands behind no figure has no place among the references.
  it('holds no work that nothing cites', () => {
    const uncited = Object.keys(SOURCES).filter((id) => !code.includes(`'${id}'`));
    expect(uncited).toEqual([]);
  });
});
