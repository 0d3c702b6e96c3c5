// `npm run icons`: draws the program's icons from the one drawing, renderer/public/icon.svg, into
// electron/icons, or the folder named: pictures for Linux, and the containers of Windows and macOS.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import {
  icns,
  ICNS_SIZES,
  ico,
  ICO_SIZES,
  LINUX_SIZES,
  type Picture,
} from '../support/iconFiles.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FOLDER = resolve(process.argv[2] ?? join(ROOT, 'electron', 'icons'));

async function draw(sizes: readonly number[]): Promise<Map<number, Picture>> {
  const drawing = readFileSync(join(ROOT, 'renderer', 'public', 'icon.svg')).toString('base64');
  const executablePath = findChromium();
  if (executablePath === null)
    throw new Error('There is no Chromium on this machine to draw with.');
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  const page = await browser.newPage();
  const pictures = new Map<number, Picture>();
  for (const size of sizes) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(
      `<style>body{margin:0}img{display:block}</style><img width="${size}" height="${size}" src="data:image/svg+xml;base64,${drawing}">`,
    );
    const png = await page.screenshot({ omitBackground: true });
    pictures.set(size, { size, png });
  }
  await browser.close();
  return pictures;
}

const sizes = [...new Set([...LINUX_SIZES, ...ICO_SIZES, ...ICNS_SIZES])];
const pictures = await draw(sizes);
const of = (wanted: readonly number[]): Picture[] => wanted.map((size) => pictures.get(size)!);

mkdirSync(join(FOLDER, 'linux'), { recursive: true });
for (const { size, png } of of(LINUX_SIZES)) {
  writeFileSync(join(FOLDER, 'linux', `${size}x${size}.png`), png);
}
writeFileSync(join(FOLDER, 'icon.ico'), ico(of(ICO_SIZES)));
writeFileSync(join(FOLDER, 'icon.icns'), icns(of(ICNS_SIZES)));
console.log(`The icons are in ${FOLDER}`);
