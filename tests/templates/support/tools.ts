import { execFileSync, spawnSync } from 'node:child_process';
import type { ReadPage, TextBox } from './readPdf.ts';

/** True when a reader is installed. In CI it must be, so there it counts as installed and fails. */
export function hasTool(name: string): boolean {
  if (process.env['CI']) return true;
  return spawnSync(name, ['-v']).error === undefined;
}

const run = (tool: string, ...values: string[]) =>
  execFileSync(tool, values, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

const attribute = (tag: string, name: string) =>
  Number(new RegExp(`${name}="([\\d.]+)"`).exec(tag)?.[1]);

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&apos;': "'",
};
const decode = (text: string) =>
  text.replace(/&(amp|lt|gt|quot|apos|#39);/g, (e) => ENTITIES[e] ?? e);

/**
 * Word boxes by poppler's `pdftotext -bbox`. Poppler gives a box the font's whole line height, so
 * it is trimmed to what letters fill.
 */
export function popplerPages(file: string): readonly ReadPage[] {
  const xml = run('pdftotext', '-bbox', file, '-');
  return xml
    .split('<page ')
    .slice(1)
    .map((page) => ({
      width: attribute(page, 'width'),
      height: attribute(page, 'height'),
      boxes: [...page.matchAll(/<word ([^>]*)>([^<]*)<\/word>/g)].map(([, tag = '', text = '']) =>
        trimmed(tag, decode(text)),
      ),
    }));
}

function trimmed(tag: string, text: string): TextBox {
  const [top, bottom] = [attribute(tag, 'yMin'), attribute(tag, 'yMax')];
  const height = bottom - top;
  return {
    text,
    left: attribute(tag, 'xMin'),
    right: attribute(tag, 'xMax'),
    top: top + height * 0.2,
    bottom: bottom - height * 0.12,
  };
}

/** Opens a file with a reader and gives what it has to say. */
export const opened = {
  qpdf: (file: string) => run('qpdf', '--check', file),
  mutool: (file: string) => run('mutool', 'info', file),
  pdfinfo: (file: string) => run('pdfinfo', file),
};
