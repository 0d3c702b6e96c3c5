import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { describe, expect, it } from 'vitest';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from './support/folders.ts';
import { readPdf } from './support/readPdf.ts';

const instant = new Date('2025-12-01T09:00:00Z');
const handout = (definition: TDocumentDefinitions) => ({
  definition: { defaultStyle: { font: 'Sans' }, ...definition },
  title: 'A sheet',
  author: 'Ines Marlow',
  subject: 'Test',
  language: 'en',
});
const render = (definition: TDocumentDefinitions, folder = fontsFolder) =>
  renderPdf(handout(definition), { fontsFolder: folder, instant });

describe('rendering', () => {
  it('counts the pages', async () => {
    const { pages } = await render({ content: ['one', { text: 'two', pageBreak: 'before' }] });
    expect(pages).toBe(2);
  });

  it('leaves the document it was given as it was', async () => {
    const definition: TDocumentDefinitions = { content: [{ text: 'same' }] };
    await render(definition);
    expect(definition).toEqual({ content: [{ text: 'same' }] });
  });

  it('reports characters that cannot be drawn, from the text and from the footer', async () => {
    const { missingCharacters, bytes } = await render({
      content: 'Bo 犬',
      footer: () => ({ text: 'x 🐕' }),
    });
    expect(missingCharacters).toEqual(['犬', '🐕']);
    expect((await readPdf(bytes)).text).toContain('Bo ■');
  });

  it('writes the instant it was given', async () => {
    const { bytes } = await render({ content: 'x' });
    expect((await readPdf(bytes)).info['CreationDate']).toBe('D:20251201090000Z');
  });
});

describe('what a document may not do', () => {
  it.each(['/etc/hostname', './package.json'])('read the file %s', async (image) => {
    await expect(render({ content: [{ image, width: 10 }] })).rejects.toThrow(/denied/);
  });

  it('fetch an address', async () => {
    const images = { far: 'http://127.0.0.1:9/x.png' };
    await expect(render({ content: [{ image: 'far' }], images })).rejects.toThrow(/denied/);
  });

  it('attach a file', async () => {
    const files = { secret: { src: '/etc/hostname', name: 'x' } };
    await expect(render({ content: 'x', files })).rejects.toThrow(/denied/);
  });
});

describe('fonts', () => {
  it('are named when their folder is missing, and looked for again next time', async () => {
    await expect(render({ content: 'x' }, '/no/such/folder')).rejects.toThrow(/ENOENT/);
    await expect(render({ content: 'x' }, '/no/such/folder')).rejects.toThrow(/ENOENT/);
  });

  it('that are not ours are refused', async () => {
    await expect(render({ content: { text: 'x', font: 'Roboto' } })).rejects.toThrow(/Roboto/);
  });
});
