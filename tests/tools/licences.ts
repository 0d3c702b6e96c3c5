// `npm run licences`: every package that is shipped, with its licence; fails on one that is not on
// the list. The fonts of the handouts carry their licence texts beside them.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isAllowed } from './dependencies/licence.ts';
import { shippedPackages } from './dependencies/shipped.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Families of fonts in `templates/fonts` without a licence text of their own. */
function fontsWithoutText(): string[] {
  const folder = join(ROOT, 'templates', 'fonts');
  const families = readdirSync(folder)
    .filter((name) => name.endsWith('.ttf'))
    .map((name) => name.split('-')[0]!);
  return [...new Set(families)].filter((name) => !existsSync(join(folder, `${name}-OFL.txt`)));
}

const shipped = shippedPackages(ROOT);
const width = Math.max(...shipped.map(({ name, version }) => `${name} ${version}`.length));
for (const { name, version, by, license } of shipped) {
  const verdict = isAllowed(license) ? '' : '  NOT ON THE LIST';
  console.log(
    `${`${name} ${version}`.padEnd(width)}  ${by.padEnd(7)}  ${license ?? 'none stated'}${verdict}`,
  );
}
const refused = shipped.filter(({ license }) => !isAllowed(license)).map(({ name }) => name);
const fonts = fontsWithoutText();
console.log(
  `${shipped.length} packages are shipped; ${refused.length} with a licence not on the list.`,
);
if (fonts.length > 0) console.log(`Fonts without a licence text: ${fonts.join(', ')}.`);
process.exitCode = refused.length + fonts.length === 0 ? 0 : 1;
